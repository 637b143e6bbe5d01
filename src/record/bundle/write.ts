import { strToU8, type Zippable, zipSync } from 'fflate';
import { canonicalLine, type RawEntry } from '../../job/index.js';
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
  pictureName,
  sha256Of,
} from './form.js';

export interface Bundle {
  readonly entries: readonly RawEntry[];
  readonly pictures: readonly BundledPicture[];
}

/**
 * The log and its pictures as one ZIP, its lines in the order in which they are handed over: that in which the store took
 * them in, by which they can be shown to be the ones that were kept. The same log gives the same bytes, in whatever order
 * its pictures come and however often an entry was sent.
 * Throws RecordError for a picture whose bytes are not what its hash says: nobody could read such a bundle back.
 */
export async function writeBundle({ entries, pictures }: Bundle): Promise<Uint8Array> {
  const unique = [...new Map(entries.map((entry) => [entry.id, entry])).values()];
  const log = strToU8(unique.map((entry) => `${canonicalLine(entry)}\n`).join(''));
  const kept = new Map(pictures.map((picture) => [pictureName(picture), picture]));
  await requireHashes([...kept.values()]);
  const sounds = [...kept.values()].filter(isSound).length;
  const about: About = {
    format: bundleFormat,
    version: bundleVersion,
    entries: unique.length,
    pictures: kept.size - sounds,
    ...(sounds > 0 && { sounds }),
    logSha256: await sha256Of(log),
    digest: await jobDigest(unique),
  };
  const files: Zippable = { [aboutName]: strToU8(`${JSON.stringify(about, null, 2)}\n`), [logName]: log };
  // pictures are compressed already, and sound hardly gives way; storing them keeps a large bundle quick
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
