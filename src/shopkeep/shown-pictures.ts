import { fold, type RawEntry } from '../job/index.js';

/** Hashes of the pictures that these entries of one job show, struck ones too: a strike takes nothing away. */
export function shownPictures(job: string, entries: readonly RawEntry[]): ReadonlySet<string> {
  const shown = new Set<string>();
  for (const { known } of fold(job, entries).log) {
    if (known?.kind === 'photograph' && known.body.picture) shown.add(known.body.picture.sha256);
  }
  return shown;
}
