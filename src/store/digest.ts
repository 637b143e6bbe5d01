import { hash } from 'node:crypto';
import { canonical, canonicalLine } from '../job/index.js';
import type { EntryRow, NoteRow, PictureRow } from './tables.js';

/** What the first line of a store follows. */
export const noLine = '';

type Line = Omit<EntryRow, 'seq' | 'digest'> & { readonly seq: number };

/**
 * The digest of a line: SHA-256, lower-case hex, over the digest of the line before it in this store, and over all that
 * is kept of this one. Who changes, takes out or puts in a line would have to change every digest after it.
 * @throws SyntaxError when the body is not JSON any more
 */
export function lineDigest(before: string, line: Line): string {
  const { rank, spoken, ...rest } = line;
  // absent also where a log is read that was written before lines had a rank or a mark
  const said = canonicalLine({
    ...rest,
    ...(typeof rank === 'number' && { rank }),
    ...(spoken === 1 && { spoken: true as const }),
    body: JSON.parse(line.body),
  });
  return hash('sha256', `${before}\n${line.seq}\n${line.received}\n${said}`);
}

/** Over what is said of a picture; its bytes are held by their own hash. */
export function pictureDigest({
  digest: _,
  ...row
}: Omit<PictureRow, 'digest'> & { digest?: string }): string {
  return hash('sha256', canonical(row));
}

type MadeNote = Omit<NoteRow, 'first' | 'last' | 'count' | 'digest'>;

/** Over what was made of a job's lines; where they lie is counted again by whoever verifies. */
export function noteDigest(note: { readonly [field in keyof MadeNote]: string | number }): string {
  const { job, made, by, tag, open, invented, words, summary, lesson } = note;
  return hash('sha256', canonical({ job, made, by, tag, open, invented, words, summary, lesson }));
}
