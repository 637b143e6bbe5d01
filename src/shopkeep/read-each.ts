import { EntryError, type RawEntry, readEntry } from '../job/index.js';
import { ShopkeepError } from './error.js';

/**
 * Takes lines that came from outside, each by itself.
 * @throws ShopkeepError that says which of the entries it is, and which of its fields
 */
export const readEach = (given: readonly unknown[]): RawEntry[] =>
  given.map((entry, i) => numbered(i, () => readEntry(entry)));

/** What is wrong with an entry, told with its number. */
export function numbered(index: number, read: () => RawEntry): RawEntry {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof EntryError)) throw error;
    const field = ['entries', index, error.field].filter((part) => part !== undefined).join('.');
    throw new ShopkeepError('bad-entry', `Entry ${index + 1}: ${error.message}. Nothing was stored.`, field);
  }
}
