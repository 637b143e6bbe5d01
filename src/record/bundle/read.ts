import { type UnzipFileInfo, unzipSync } from 'fflate';
import { z } from 'zod';
import { RecordError } from '../error.js';
import {
  type About,
  aboutName,
  type BundledPicture,
  bundleFormat,
  bundleVersion,
  logName,
  readPictureName,
  sha256Of,
} from './form.js';

export interface BundleLimits {
  /** bytes of all files together, unpacked */
  readonly totalBytes: number;
  readonly logBytes: number;
  readonly pictureBytes: number;
  readonly files: number;
}

/** Far above a shop's log of years, far below what a machine cannot hold. */
export const standardBundleLimits: BundleLimits = {
  totalBytes: 1_500_000_000,
  logBytes: 256_000_000,
  pictureBytes: 64_000_000,
  files: 20_000,
};

export interface ReadBundle {
  /** as they came, one a line; the caller takes each through `readEntry` */
  readonly entries: readonly unknown[];
  readonly pictures: readonly BundledPicture[];
}

/**
 * The log and the pictures of a bundle. Nothing is believed: every name must be one a bundle has, every size is
 * checked before it is unpacked, every picture and the log must have the hash that is stated.
 * Throws RecordError saying what is wrong with the file; nothing of it has then been taken.
 */
export async function readBundle(
  bytes: Uint8Array,
  limits: BundleLimits = standardBundleLimits,
): Promise<ReadBundle> {
  const files = unpacked(bytes, limits);
  const about = readAbout(files);
  const log = fileOf(files, logName);
  if ((await sha256Of(log)) !== about.logSha256)
    throw new RecordError(
      'The log in this bundle is damaged: it does not have the hash that is stated for it.',
      logName,
    );
  const entries = readLines(log);
  requireCount(about.entries, entries.length, 'entries', logName);
  const pictures = await readPictures(files);
  requireCount(about.pictures, pictures.length, 'pictures', aboutName);
  return { entries, pictures };
}

function unpacked(bytes: Uint8Array, limits: BundleLimits): ReadonlyMap<string, Uint8Array> {
  if (!(bytes[0] === 0x50 && bytes[1] === 0x4b))
    throw new RecordError('This file is not a ZIP, so it is not a bundle.');
  const admit = doorkeeper(limits);
  try {
    return new Map(Object.entries(unzipSync(bytes, { filter: admit })));
  } catch (error) {
    if (error instanceof RecordError) throw error;
    throw new RecordError(
      `This ZIP cannot be unpacked: ${error instanceof Error ? error.message : String(error)}.`,
    );
  }
}

/** Looks at each file's name and stated size before a byte of it is unpacked; the unpacked size cannot exceed it. */
function doorkeeper(limits: BundleLimits): (file: UnzipFileInfo) => boolean {
  const seen = new Set<string>();
  let total = 0;
  return ({ name, originalSize }) => {
    if (name === 'pictures/') return false;
    requireKnownName(name);
    if (seen.has(name)) throw new RecordError(`This bundle holds “${name}” twice.`, name);
    seen.add(name);
    total += originalSize;
    requireSize(name, originalSize, name === logName ? limits.logBytes : limits.pictureBytes);
    requireSize('the whole bundle', total, limits.totalBytes);
    if (seen.size > limits.files) throw new RecordError(`This bundle holds more than ${limits.files} files.`);
    return true;
  };
}

function requireKnownName(name: string): void {
  if (name === aboutName || name === logName || readPictureName(name)) return;
  throw new RecordError(
    `“${name}” has no place in a bundle; only ${aboutName}, ${logName} and pictures named by their hash have.`,
    name,
  );
}

function requireSize(what: string, size: number, most: number): void {
  if (size > most)
    throw new RecordError(`“${what}” would unpack to ${size} bytes; at most ${most} are taken.`, what);
}

function fileOf(files: ReadonlyMap<string, Uint8Array>, name: string): Uint8Array {
  const file = files.get(name);
  if (!file) throw new RecordError(`This ZIP holds no ${name}, so it is not a bundle.`, name);
  return file;
}

const aboutSchema = z.object({
  format: z.literal(bundleFormat),
  version: z.number().int().min(1),
  entries: z.number().int().min(0),
  pictures: z.number().int().min(0),
  logSha256: z.string(),
});

function readAbout(files: ReadonlyMap<string, Uint8Array>): About {
  const read = aboutSchema.safeParse(parsedJson(fileOf(files, aboutName), aboutName));
  if (!read.success) throw new RecordError(`${aboutName} does not say that this is a bundle.`, aboutName);
  if (read.data.version !== bundleVersion) {
    throw new RecordError(
      `This bundle is of version ${read.data.version}; this program reads version ${bundleVersion}.`,
      aboutName,
    );
  }
  return read.data;
}

function readLines(log: Uint8Array): unknown[] {
  const lines = text(log, logName).split('\n');
  return lines.flatMap((line, i) => (line.trim() === '' ? [] : [parsedLine(line, i + 1)]));
}

function parsedLine(line: string, number: number): unknown {
  try {
    return JSON.parse(line);
  } catch {
    throw new RecordError(`Line ${number} of ${logName} is not JSON.`, `${logName}:${number}`);
  }
}

function parsedJson(bytes: Uint8Array, name: string): unknown {
  try {
    return JSON.parse(text(bytes, name));
  } catch {
    throw new RecordError(`${name} is not JSON.`, name);
  }
}

function text(bytes: Uint8Array, name: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new RecordError(`${name} is not text in UTF-8.`, name);
  }
}

async function readPictures(files: ReadonlyMap<string, Uint8Array>): Promise<BundledPicture[]> {
  const pictures: BundledPicture[] = [];
  for (const [name, bytes] of files) {
    const stated = readPictureName(name);
    if (!stated) continue;
    if ((await sha256Of(bytes)) !== stated.sha256)
      throw new RecordError(
        `The picture “${name}” is damaged: its bytes do not have the hash in its name.`,
        name,
      );
    pictures.push({ ...stated, bytes });
  }
  return pictures;
}

function requireCount(stated: number, found: number, what: string, name: string): void {
  if (stated !== found)
    throw new RecordError(`This bundle should hold ${stated} ${what}, but holds ${found}.`, name);
}
