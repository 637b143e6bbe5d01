import { type Decision, decide } from '../../gauge/index.js';
import type { From, Job, Shop } from '../job.js';

/**
 * A reading against its limit, with the uncertainty of the shop's instrument. Without a named instrument the
 * comparison is exact and says so: an unknown uncertainty is not a small one.
 */
export interface LimitAnswer {
  readonly measurement: From<'measurement'>;
  readonly decision?: Decision;
  /** standard uncertainty taken, SI unit */
  readonly u: number;
  readonly instrument?: From<'instrument'>;
}

export function limitAnswer(m: From<'measurement'>, shop?: Shop): LimitAnswer {
  const instrument = shop?.instruments.find((i) => i.tool === m.instrument);
  const u = instrument ? instrument.uncertainty.si / 2 : 0;
  const { min, max } = m.limit ?? {};
  const base = { measurement: m, u, ...(instrument && { instrument }) };
  if (!min && !max) return base;
  const limit = { ...(min && { min: min.si }), ...(max && { max: max.si }) };
  return { ...base, decision: decide({ value: m.value.si, u, limit }) };
}

/** Readings that stand outside their limit, the latest of each measure only. */
export function outsideLimit(job: Job): From<'measurement'>[] {
  const latest = new Map(
    job.measurements.map((m) => [`${m.measure} ${m.place ?? ''} ${m.direction ?? ''}`, m]),
  );
  return [...latest.values()].filter((m) => {
    const { min, max } = m.limit ?? {};
    return (min !== undefined && m.value.si < min.si) || (max !== undefined && m.value.si > max.si);
  });
}
