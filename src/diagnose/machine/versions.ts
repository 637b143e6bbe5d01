import { type Catalog, judgementOf } from '../../catalog/index.js';
import type { Network } from '../../infer/index.js';
import type { Repair } from './case.js';

/** The names that repaired faults go by, one more after each repair. */
export class Versions {
  private readonly repairs: readonly Repair[];

  constructor(
    private readonly catalog: Catalog,
    repairs: readonly Repair[],
  ) {
    this.repairs = [...repairs].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  }

  /** How many repairs had been made by then that touch any of these faults, as the place of the last one; 0 for none. */
  timeFor(faults: ReadonlySet<string>, at: string | undefined): number {
    const before = (r: Repair) => faults.has(r.fault) && (at === undefined || r.at <= at);
    return this.repairs.findLastIndex(before) + 1;
  }

  /** The place of the last repair before this. */
  timeAt(at: string): number {
    return this.repairs.findLastIndex((r) => r.at <= at) + 1;
  }

  /** Of a time, given as the place of a repair: the last repair up to then that touches any of these faults. */
  timeWithin(faults: Iterable<string>, time: number): number {
    const touched = new Set(faults);
    return this.repairs.slice(0, time).findLastIndex((r) => touched.has(r.fault)) + 1;
  }

  /** Every repair so far. */
  get last(): number {
    return this.repairs.length;
  }

  suffix(time: number): string {
    return time === 0 ? '' : `@${time}`;
  }

  nameAt(fault: string, time: number): string {
    const count = this.repairs.slice(0, time).filter((r) => r.fault === fault).length;
    return versionName(fault, count);
  }

  now(fault: string): string {
    return this.nameAt(fault, this.repairs.length);
  }

  faults(): { id: string; prior: number }[] {
    const prior = judgementOf(this.catalog, 'comes-anew');
    return this.numbered().map(({ fault, count }) => ({ id: versionName(fault, count), prior }));
  }

  links(): Network['links'] {
    const p = judgementOf(this.catalog, 'repair-fails');
    return this.numbered().map(({ fault, count }) => ({
      from: versionName(fault, count - 1),
      to: versionName(fault, count),
      p,
    }));
  }

  private numbered(): { fault: string; count: number }[] {
    return this.repairs.map(({ fault }, i) => ({
      fault,
      count: this.repairs.slice(0, i + 1).filter((r) => r.fault === fault).length,
    }));
  }
}

const versionName = (fault: string, count: number): string => (count === 0 ? fault : `${fault}@${count}`);
