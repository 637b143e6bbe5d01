import { type Decision, decide } from '../../gauge/index.js';
import { findUnit, to } from '../../quantity/index.js';
import type { Written } from '../entry.js';
import { type From, type Job, quantityOf, type Shop } from '../job.js';

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
  const u = instrument ? standardUncertainty(instrument.uncertainty) : 0;
  const base = { measurement: m, u, ...(instrument && { instrument }) };
  const { min, max } = m.limit ?? {};
  if (!min && !max) return base;
  const { unit } = m.value;
  const inUnit = (w: Written) => to(quantityOf(w), unit);
  const limit = { ...(min && { min: inUnit(min) }), ...(max && { max: inUnit(max) }) };
  const decision = decide({ value: inUnit(m.value), u: u / findUnit(unit).factor, limit, unit });
  return { ...base, decision };
}

/** Half of the expanded uncertainty (k = 2), as a difference: a scale's zero point (°F, °C) plays no part. */
function standardUncertainty(expanded: Written): number {
  return (to(quantityOf(expanded), expanded.unit) * findUnit(expanded.unit).factor) / 2;
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
