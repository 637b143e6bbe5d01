import { RecordError } from './error.js';

/** A document states when it was printed, and the program has no clock of its own. */
export function requireTime(iso: string): void {
  if (Number.isNaN(Date.parse(iso)))
    throw new RecordError(`“${iso}” is not a time; ISO 8601 is wanted.`, 'printedAt');
}
