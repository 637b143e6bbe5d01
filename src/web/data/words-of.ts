import { lineWords, type RawEntry, understand } from '../../job/index.js';

/** What a line says, in the words of the log. */
export function wordsOfLine(entry: RawEntry) {
  const known = understand(entry);
  return lineWords({ entry, ...(known && { known }) });
}
