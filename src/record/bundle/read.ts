import { z } from 'zod';
import type { RawEntry } from '../../job/index.js';
import { RecordError } from '../error.js';
import { jobDigest } from './chain.js';
import {
  type About,
  aboutName,
  type BundledPicture,
  bundleFormat,
  bundleVersion,
  isSound,
  logName,
  readPictureName,
  sha256Of,
} from './form.js';
import { nestingOf } from './nesting.js';
import { type BundleSource, directoryOf, inMemory, unzipped, type ZippedFile } from './zip.js';

export interface BundleLimits {
  /** bytes of all files together, unpacked */
  readonly totalBytes: number;
  readonly logBytes: number;
  /** of one line of the log */
  readonly lineBytes: number;
  readonly lines: number;
  /** how deep a line may be nested */
  readonly depth: number;
  readonly pictureBytes: number;
  readonly files: number;
}

/** Far above a job of years, far below what a machine cannot hold. A line as the server takes it has 2 MB at most. */
export const standardBundleLimits: BundleLimits = {
  totalBytes: 1_500_000_000,
  logBytes: 32_000_000,
  lineBytes: 2_200_000,
  lines: 100_000,
  depth: 64,
  pictureBytes: 32_000_000,
  files: 20_000,
};

export interface ReadBundle {
  /** as they came, one a line; the caller takes each through `readEntry` */
  readonly entries: readonly unknown[];
  /** those in it, each looked at: its bytes are what its name says */
  readonly pictures: readonly Pick<BundledPicture, 'sha256' | 'mime'>[];
  /** of its lines, see `jobDigest` */
  readonly digest: string;
  /** the bytes of one of its pictures */
  readonly picture: (sha256: string) => Promise<Uint8Array>;
}

interface Reading {
  readonly source: BundleSource;
  readonly files: ReadonlyMap<string, ZippedFile>;
  readonly limits: BundleLimits;
}

/**
 * The log and the pictures of a bundle. Nothing is believed: every name must be one a bundle has, every size is
 * checked before it is unpacked, every picture and the log must have the hash that is stated. One file of it lies in
 * memory at a time. It takes the whole of its thread: whoever has others to serve gives it one of its own.
 * Throws RecordError saying what is wrong with the file; nothing of it has then been taken.
 */
export async function readBundle(
  given: Uint8Array | BundleSource,
  limits: BundleLimits = standardBundleLimits,
): Promise<ReadBundle> {
  const source = given instanceof Uint8Array ? inMemory(given) : given;
  const [p, k] = await source.slice(0, 2);
  if (!(p === 0x50 && k === 0x4b)) throw new RecordError('This file is not a ZIP, so it is not a bundle.');
  const files = admitted(await directoryOf(source, limits.files), limits);
  const reading = { source, files, limits };
  const about = readAbout(await fileOf(reading, aboutName));
  const log = await fileOf(reading, logName);
  if ((await sha256Of(log)) !== about.logSha256)
    throw new RecordError(
      'The log in this bundle is damaged: it does not have the hash that is stated for it.',
      logName,
    );
  const entries = readLines(log, limits);
  requireCount(about.entries, entries.length, 'entries', logName);
  const digest = await jobDigest(entries as RawEntry[]);
  if (about.digest !== undefined && about.digest !== digest)
    throw new RecordError(
      'The lines in this bundle do not have the digest that is stated for them.',
      aboutName,
    );
  const pictures = await lookAtPictures(reading);
  const sounds = pictures.filter(isSound).length;
  requireCount(about.pictures, pictures.length - sounds, 'pictures', aboutName);
  requireCount(about.sounds ?? 0, sounds, 'sounds', aboutName);
  const names = new Map(pictures.map(({ sha256, name }) => [sha256, name]));
  return {
    entries,
    pictures: pictures.map(({ sha256, mime }) => ({ sha256, mime })),
    digest,
    picture: (sha256) => fileOf(reading, names.get(sha256) ?? sha256),
  };
}

/** Looks at each file's name and stated size before a byte of it is unpacked; the unpacked size cannot exceed it. */
function admitted(files: readonly ZippedFile[], limits: BundleLimits): ReadonlyMap<string, ZippedFile> {
  const seen = new Map<string, ZippedFile>();
  let total = 0;
  for (const file of files) {
    const { name, size } = file;
    if (name === 'pictures/' || name === 'sounds/') continue;
    requireKnownName(name);
    if (seen.has(name)) throw new RecordError(`This bundle holds “${name}” twice.`, name);
    seen.set(name, file);
    total += size;
    requireSize(name, size, name === logName ? limits.logBytes : limits.pictureBytes);
    requireSize('the whole bundle', total, limits.totalBytes);
  }
  return seen;
}

function requireKnownName(name: string): void {
  if (name === aboutName || name === logName || readPictureName(name)) return;
  throw new RecordError(
    `“${name}” has no place in a bundle; only ${aboutName}, ${logName} and pictures and sounds named by their hash have.`,
    name,
  );
}

function requireSize(what: string, size: number, most: number): void {
  if (size > most)
    throw new RecordError(`“${what}” would unpack to ${size} bytes; at most ${most} are taken.`, what);
}

async function fileOf({ source, files }: Reading, name: string): Promise<Uint8Array> {
  const file = files.get(name);
  if (!file) throw new RecordError(`This ZIP holds no ${name}, so it is not a bundle.`, name);
  return unzipped(source, file);
}

const aboutSchema = z.object({
  format: z.literal(bundleFormat),
  version: z.number().int().min(1),
  entries: z.number().int().min(0),
  pictures: z.number().int().min(0),
  sounds: z.number().int().min(0).optional(),
  logSha256: z.string(),
  digest: z.string().optional(),
});

function readAbout(bytes: Uint8Array): About {
  const read = aboutSchema.safeParse(parsedJson(bytes, aboutName));
  if (!read.success) throw new RecordError(`${aboutName} does not say that this is a bundle.`, aboutName);
  if (read.data.version !== bundleVersion) {
    throw new RecordError(
      `This bundle is of version ${read.data.version}; this program reads version ${bundleVersion}.`,
      aboutName,
    );
  }
  return read.data;
}

function readLines(log: Uint8Array, limits: BundleLimits): unknown[] {
  const entries: unknown[] = [];
  let number = 0;
  for (let from = 0; from < log.length; ) {
    const feed = log.indexOf(0x0a, from);
    const to = feed < 0 ? log.length : feed;
    number += 1;
    if (to - from > limits.lineBytes)
      throw new RecordError(
        `Line ${number} of ${logName} has ${to - from} bytes; at most ${limits.lineBytes} are taken.`,
        `${logName}:${number}`,
      );
    const line = text(log.subarray(from, to), logName);
    if (line.trim() !== '') entries.push(parsedLine(line, number, limits.depth));
    if (entries.length > limits.lines)
      throw new RecordError(`This bundle holds more than ${limits.lines} lines.`, logName);
    from = to + 1;
  }
  return entries;
}

function parsedLine(line: string, number: number, deepest: number): unknown {
  if (nestingOf(line, deepest) > deepest)
    throw new RecordError(
      `Line ${number} of ${logName} is nested deeper than ${deepest} levels.`,
      `${logName}:${number}`,
    );
  const value = parsed(line);
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) return value;
  const what = value === undefined ? 'is not JSON' : 'is no line of a log';
  throw new RecordError(`Line ${number} of ${logName} ${what}.`, `${logName}:${number}`);
}

function parsed(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
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

/** Each in turn, so that never more than one lies in memory. */
async function lookAtPictures(
  reading: Reading,
): Promise<(Pick<BundledPicture, 'sha256' | 'mime'> & { readonly name: string })[]> {
  const pictures: (Pick<BundledPicture, 'sha256' | 'mime'> & { readonly name: string })[] = [];
  for (const name of reading.files.keys()) {
    const stated = readPictureName(name);
    if (!stated) continue;
    if ((await sha256Of(await fileOf(reading, name))) !== stated.sha256)
      throw new RecordError(
        `The picture “${name}” is damaged: its bytes do not have the hash in its name.`,
        name,
      );
    pictures.push({ ...stated, name });
  }
  return pictures;
}

function requireCount(stated: number, found: number, what: string, name: string): void {
  if (stated !== found)
    throw new RecordError(`This bundle should hold ${stated} ${what}, but holds ${found}.`, name);
}
