import { EntryError, type RawEntry, readEntry } from '../job/index.js';
import { ShopkeepError } from './error.js';

/** @throws ShopkeepError that says which of the entries it is, and which of its fields */
export function readNumbered(entry: unknown, index: number): RawEntry {
  try {
    return readEntry(entry);
  } catch (error) {
    if (!(error instanceof EntryError)) throw error;
    const field = ['entries', index, error.field].filter((part) => part !== undefined).join('.');
    throw new ShopkeepError('bad-entry', `Entry ${index + 1}: ${error.message}. Nothing was stored.`, field);
  }
}
