import { attachedTo, fold, type RawEntry } from '../job/index.js';

/** Hashes of the pictures and sounds that these entries of one job show or play, struck ones too: a strike takes nothing away. */
export function shownPictures(job: string, entries: readonly RawEntry[]): ReadonlySet<string> {
  const lines = fold(job, entries).log.flatMap(({ known }) => known ?? []);
  return new Set(lines.map(attachedTo).filter((sha256) => sha256 !== undefined));
}
