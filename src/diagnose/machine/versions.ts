import type { Network } from '../network.js';
import type { Repair } from './case.js';

/** A repair that did not take. Trade judgement, no source. */
const repairFails = 0.05;
/** A repaired fault that comes again by itself before hand-over. Trade judgement, no source. */
const comesAnew = 0.01;

/** The names that repaired faults go by, one more after each repair. */
export class Versions {
  private readonly repairs: readonly Repair[];

  constructor(repairs: readonly Repair[]) {
    this.repairs = [...repairs].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  }

  /** How many repairs had been made by then that touch any of these faults, as the place of the last one; 0 for none. */
  timeFor(faults: ReadonlySet<string>, at: string | undefined): number {
    const before = (r: Repair) => faults.has(r.fault) && (at === undefined || r.at <= at);
    return this.repairs.findLastIndex(before) + 1;
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
    return this.numbered().map(({ fault, count }) => ({ id: versionName(fault, count), prior: comesAnew }));
  }

  links(): Network['links'] {
    return this.numbered().map(({ fault, count }) => ({
      from: versionName(fault, count - 1),
      to: versionName(fault, count),
      p: repairFails,
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
