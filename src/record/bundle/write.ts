import { strToU8, type Zippable, zipSync } from 'fflate';
import { inOrder, type RawEntry } from '../../job/index.js';
import { RecordError } from '../error.js';
import {
  type About,
  aboutName,
  type BundledPicture,
  bundleFormat,
  bundleVersion,
  logName,
  pictureName,
  sha256Of,
} from './form.js';

export interface Bundle {
  readonly entries: readonly RawEntry[];
  readonly pictures: readonly BundledPicture[];
}

/**
 * The log and its pictures as one ZIP. The same log gives the same bytes, in whatever order its entries and pictures
 * are handed over and however often an entry was sent.
 * Throws RecordError for a picture whose bytes are not what its hash says: nobody could read such a bundle back.
 */
export async function writeBundle({ entries, pictures }: Bundle): Promise<Uint8Array> {
  const unique = inOrder([...new Map(entries.map((entry) => [entry.id, entry])).values()]);
  const log = strToU8(unique.map((entry) => `${canonical(envelope(entry))}\n`).join(''));
  const kept = new Map(pictures.map((picture) => [pictureName(picture), picture]));
  await requireHashes([...kept.values()]);
  const about: About = {
    format: bundleFormat,
    version: bundleVersion,
    entries: unique.length,
    pictures: kept.size,
    logSha256: await sha256Of(log),
  };
  const files: Zippable = { [aboutName]: strToU8(`${JSON.stringify(about, null, 2)}\n`), [logName]: log };
  // pictures are compressed already; storing them keeps a large bundle quick
  for (const name of [...kept.keys()].sort()) files[name] = [kept.get(name)!.bytes, { level: 0 }];
  return zipSync(files, { level: 6, mtime: beginningOfZip(), os: 0 });
}

/**
 * The earliest time a ZIP can state. It stores local time, so the local midnight is the same bytes everywhere;
 * a UTC instant would differ from one time zone to the next.
 */
const beginningOfZip = () => new Date(1980, 0, 1);

async function requireHashes(pictures: readonly BundledPicture[]): Promise<void> {
  for (const { sha256, bytes } of pictures) {
    if ((await sha256Of(bytes)) !== sha256) {
      throw new RecordError(`Picture ${sha256} holds other bytes than its hash says.`, sha256);
    }
  }
}

/** Only what an entry is: a store may hand over its own row numbers beside it. */
function envelope({ id, job, at, rank, by, kind, v, body }: RawEntry): RawEntry {
  return { id, job, at, ...(rank !== undefined && { rank }), by, kind, v, body };
}

/** JSON with the keys of every object in one order: a database may give them back in another. */
function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) => (isPlainObject(inner) ? sorted(inner) : inner));
}

function isPlainObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function sorted(object: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(object).sort(([a], [b]) => (a < b ? -1 : 1)));
}
