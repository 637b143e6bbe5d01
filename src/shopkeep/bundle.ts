import { type BundledPicture, jobDigest, writeBundle } from '../record/index.js';
import type { Store } from '../store/index.js';
import { entriesOf } from './job-entries.js';
import { asKeptType } from './picture.js';
import { shownPictures } from './shown-pictures.js';

export interface Exported {
  readonly bytes: Uint8Array;
  /** hashes of pictures and sounds that the log shows or plays and the store does not have; the bundle is without them */
  readonly missing: readonly string[];
  readonly lines: number;
  /** of its lines in the order in which they were taken in, see `jobDigest` */
  readonly digest: string;
}

/** One job with its pictures, struck lines and all, as a file that another shop's store can take in. */
export async function exportJob(store: Store, job: string): Promise<Exported> {
  const entries = await entriesOf(store, job);
  const pictures: BundledPicture[] = [];
  const missing: string[] = [];
  for (const sha256 of shownPictures(job, entries)) {
    const picture = await store.picture(sha256);
    if (picture) pictures.push({ sha256, mime: asKeptType(picture.mime), bytes: picture.bytes });
    else missing.push(sha256);
  }
  const bytes = await writeBundle({ entries, pictures });
  return { bytes, missing, lines: entries.length, digest: await jobDigest(entries) };
}
