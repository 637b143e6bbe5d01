import { EntryError, type RawEntry, readEntry } from '../job/index.js';
import { ApiError } from './error.js';

/** @throws ApiError 422 that says which of the entries it is, and which of its fields */
export function readNumbered(entry: unknown, index: number): RawEntry {
  try {
    return readEntry(entry);
  } catch (error) {
    if (!(error instanceof EntryError)) throw error;
    const field = ['entries', index, error.field].filter((part) => part !== undefined).join('.');
    throw new ApiError(422, 'bad-entry', `Entry ${index + 1}: ${error.message}. Nothing was stored.`, field);
  }
}
