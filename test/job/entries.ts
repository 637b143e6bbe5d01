import { type Body, type EntryKind, entryVersion, type RawEntry, written } from '../../src/job/index.js';

/** Builds logs for tests: each line a minute after the one before, ids in order. */
export const jobId = '01900000-0000-7000-8000-000000000001';

export function log(): { add: <K extends EntryKind>(kind: K, body: Body<K>) => RawEntry; lines: RawEntry[] } {
  const lines: RawEntry[] = [];
  const add = <K extends EntryKind>(kind: K, body: Body<K>): RawEntry => {
    const n = lines.length + 1;
    const entry: RawEntry = {
      id: `01900000-0000-7000-8000-1${String(n).padStart(11, '0')}`,
      job: jobId,
      at: new Date(Date.UTC(2026, 2, 1, 9, n)).toISOString().replace('Z', '+00:00'),
      by: 'bench',
      kind,
      v: entryVersion,
      body,
    };
    lines.push(entry);
    return entry;
  };
  return { add, lines };
}

export const torque = (text: string) => written(text, 'torque');
export const length = (text: string) => written(text, 'length');
