import type { RawEntry } from '../job/index.js';
import { nothingStored, StoreError } from './error.js';
import type { EntryRow } from './tables.js';

export type FreshRow = Omit<EntryRow, 'seq' | 'received' | 'digest'>;

/** A PostgreSQL index holds keys up to about 2.7 kB; both databases shall refuse the same. */
const longestKey = 200;
const greatestV = 2 ** 31 - 1;

/**
 * The entry as a row. The store knows no kinds; it refuses only what one of the databases could not give back
 * unchanged: NUL and half characters in a text, numbers that JSON has no word for, a `v` beyond 31 bits.
 */
export function checkEntry(entry: RawEntry): FreshRow {
  return {
    id: key(entry, 'id'),
    job: key(entry, 'job'),
    at: key(entry, 'at'),
    rank: entry.rank === undefined ? null : wholeNumber(entry, 'rank', Number.MAX_SAFE_INTEGER),
    spoken: spokenMark(entry),
    by: text(entry, 'by'),
    kind: key(entry, 'kind'),
    v: wholeNumber(entry, 'v', greatestV),
    body: bodyText(entry),
  };
}

function text(entry: RawEntry, field: 'id' | 'job' | 'at' | 'by' | 'kind'): string {
  const value: unknown = entry[field];
  if (typeof value !== 'string') throw bad(entry, field, `must be text, not ${typeof value}`);
  if (/[\0\p{Surrogate}]/u.test(value)) throw bad(entry, field, 'holds a character that is none');
  return value;
}

function key(entry: RawEntry, field: 'id' | 'job' | 'at' | 'kind'): string {
  const value = text(entry, field);
  if (value.length < 1 || value.length > longestKey) {
    throw bad(entry, field, `has ${value.length} characters; 1 to ${longestKey} are possible`);
  }
  return value;
}

function wholeNumber(entry: RawEntry, field: 'v' | 'rank', greatest: number): number {
  const value: unknown = entry[field];
  const least = field === 'v' ? 1 : 0;
  if (typeof value === 'number' && Number.isInteger(value) && value >= least && value <= greatest)
    return value;
  throw bad(entry, field, `is ${String(value)}; a whole number from ${least} to ${greatest} is possible`);
}

function spokenMark(entry: RawEntry): 1 | null {
  const spoken: unknown = entry.spoken;
  if (spoken === undefined || spoken === true) return spoken ? 1 : null;
  throw bad(entry, 'spoken', `is ${String(spoken)}; true, or nothing, is possible`);
}

function bodyText(entry: RawEntry): string {
  const json = JSON.stringify(entry.body, function (this: Record<string, unknown>, name, value) {
    // `this[name]` is the value before toJSON: a Date would otherwise turn into text unseen
    if (!jsonCan(this[name]))
      throw bad(entry, 'body', `holds ${String(this[name])} under "${name}", which JSON cannot`);
    return value;
  });
  if (json === undefined) throw bad(entry, 'body', 'is missing');
  return json;
}

/** A field that is `undefined` is a field left out, as in JSON itself. */
function jsonCan(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value === 'object') return !(value instanceof Date || ArrayBuffer.isView(value));
  return typeof value === 'string' || typeof value === 'boolean' || value === undefined;
}

function bad(entry: RawEntry, field: string, why: string): StoreError {
  return new StoreError(
    'bad-entry',
    `Entry ${String(entry.id).slice(0, longestKey)}: its ${field} ${why}.`,
    nothingStored,
    'Correct the entry and send it again.',
  );
}
