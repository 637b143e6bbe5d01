import { type BundledPicture, readBundle, writeBundle } from '../record/index.js';
import type { Store } from '../store/index.js';
import { entriesOf } from './job-entries.js';
import { keepPicture } from './keep-picture.js';
import { asPictureType } from './picture.js';
import { readLines } from './read-lines.js';
import { shownPictures } from './shown-pictures.js';

export interface Exported {
  readonly bytes: Uint8Array;
  /** hashes of pictures that the log shows and the store does not have; the bundle is without them */
  readonly missing: readonly string[];
}

/** One job with its pictures, struck lines and all, as a file that another shop's store can take in. */
export async function exportJob(store: Store, job: string): Promise<Exported> {
  const entries = await entriesOf(store, job);
  const pictures: BundledPicture[] = [];
  const missing: string[] = [];
  for (const sha256 of shownPictures(job, entries)) {
    const picture = await store.picture(sha256);
    if (picture) pictures.push({ sha256, mime: asPictureType(picture.mime), bytes: picture.bytes });
    else missing.push(sha256);
  }
  const raw = entries.map(({ seq: _seq, received: _received, ...line }) => line);
  return { bytes: await writeBundle({ entries: raw, pictures }), missing };
}

export interface Imported {
  readonly jobs: readonly string[];
  readonly stored: readonly string[];
  readonly already: readonly string[];
  readonly pictures: number;
}

/**
 * Takes a bundle into the store. Everything in it is looked at before anything is kept; the pictures are kept before
 * the entries that show them, so that a cut in between leaves no entry without its picture.
 */
export async function importBundle(store: Store, bytes: Uint8Array): Promise<Imported> {
  const bundle = await readBundle(bytes);
  const entries = await readLines(store, bundle.entries);
  for (const picture of bundle.pictures) await keepPicture(store, picture.bytes);
  const { stored, already } = await store.append(entries);
  return {
    jobs: [...new Set(entries.map((entry) => entry.job))],
    stored,
    already,
    pictures: bundle.pictures.length,
  };
}
