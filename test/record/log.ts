import {
  type Body,
  type EntryKind,
  fold,
  foldShop,
  type Job,
  type RawEntry,
  readEntry,
  type Shop,
  shopLog,
  written,
} from '../../src/job/index.js';
import type { Kind } from '../../src/quantity/index.js';

export const jobId = '0198f000-0000-7000-8000-000000000017';

/** Writes entries as a device would, each read by `readEntry`, so that a fixture cannot hold what a log cannot. */
export class Log {
  readonly entries: RawEntry[] = [];

  constructor(
    private readonly job: string = jobId,
    private readonly day = '2025-11-03',
    private readonly by = 'Robin',
  ) {}

  add<K extends EntryKind>(kind: K, body: Body<K>, by = this.by): string {
    const count = this.entries.length + 1;
    const clock = new Date(Date.parse(`${this.day}T08:00:00Z`) + count * 240_000).toISOString().slice(0, 19);
    const id = `0198f000-0000-7000-${this.job === shopLog ? '9' : '8'}000-${String(count).padStart(12, '0')}`;
    const entry = { id, job: this.job, at: `${clock}-05:00`, by, kind, v: 1, body };
    this.entries.push(readEntry(entry));
    return id;
  }

  fold(): Job {
    return fold(this.job, this.entries);
  }

  shop(): Shop {
    return foldShop(this.entries);
  }
}

export const w = (text: string, kind: Kind) => written(text, kind);
export const length = (text: string) => w(text, 'length');
export const torque = (text: string) => w(text, 'torque');
