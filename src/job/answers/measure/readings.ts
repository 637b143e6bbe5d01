import { type Instrument, pool, repeats } from '../../../gauge/index.js';
import { findUnit, of, type Quantity, to } from '../../../quantity/index.js';
import type { Written } from '../../entry.js';
import { type From, type Job, quantityOf, type Shop } from '../../job.js';

type Measurement = From<'measurement'>;

/** Repeats of one thing at one place with one instrument, taken together. */
export interface ReadingGroup {
  /** at least one, in the order taken */
  readonly readings: readonly Measurement[];
  readonly last: Measurement;
  /** the shop's instrument, when it is on the list and measures this kind */
  readonly instrument?: From<'instrument'>;
  /** the mean, less the instrument's zero error, at 20 °C where temperature and material are written down */
  readonly quantity: Quantity;
  /** standard uncertainty, SI unit; 0 when nothing is known of the instrument, which is not the same as small */
  readonly u: number;
  readonly degreesOfFreedom: number;
  /** standard deviation of the repeats, SI unit */
  readonly scatter: number;
  /** the repeats differ by more than the instrument explains */
  readonly suspicious: boolean;
  /** what zero error and temperature added to the plain mean, SI unit */
  readonly correction: number;
}

/**
 * Every group of repeats, in the order of their first readings.
 *
 * A decision about the measure ends a group: what is read after the stem was ground is no repeat of what was read before.
 */
export function readingGroups(job: Job, shop?: Shop): ReadingGroup[] {
  const groups: Measurement[][] = [];
  const open = new Map<string, Measurement[]>();
  for (const m of job.measurements) {
    const key = JSON.stringify([thingOf(m), m.instrument ?? '']);
    const group = open.get(key);
    if (group && !decidedBetween(job, group.at(-1)!, m)) group.push(m);
    else {
      const begun = [m];
      open.set(key, begun);
      groups.push(begun);
    }
  }
  return groups.map((readings) => poolReadings(readings, shop));
}

/** What was measured and where: a later group of the same thing takes the place of an earlier one. */
function thingOf({ measure, title, place, direction, spot, phase }: Measurement): string {
  return JSON.stringify([measure, title, place ?? '', direction ?? '', spot ?? '', phase === 'after']);
}

/** The groups that no later one takes the place of. */
export function standingGroups(groups: readonly ReadingGroup[]): ReadingGroup[] {
  const latest = new Map<string, ReadingGroup>();
  for (const group of groups) {
    const before = latest.get(thingOf(group.last));
    if (!before || isAfter(group.last, before.last)) latest.set(thingOf(group.last), group);
  }
  return groups.filter((group) => latest.get(thingOf(group.last)) === group);
}

function decidedBetween(job: Job, before: Measurement, after: Measurement): boolean {
  return job.decisions.some(
    (d) =>
      d.about === 'measurement' && isAbout(d.which, after.measure) && isAfter(d, before) && isAfter(after, d),
  );
}

/** A decision names the measure, or the measure and its place: "valve-clearance-side-valve.exhaust". */
function isAbout(which: string | undefined, measure: string): boolean {
  return which === measure || (which?.startsWith(`${measure}.`) ?? false);
}

type Timed = Pick<Measurement, 'at' | 'entry'>;

function isAfter(a: Timed, b: Timed): boolean {
  const [x, y] = [Date.parse(a.at), Date.parse(b.at)];
  return x === y ? a.entry > b.entry : x > y;
}

/** Repeats taken together. With an instrument of the shop by its budget; without one, the plain mean. */
export function poolReadings(readings: readonly Measurement[], shop?: Shop): ReadingGroup {
  const last = readings.at(-1)!;
  const plain = repeats(readings.map((m) => m.value.si));
  const instrument = instrumentFor(last, shop);
  const base = { readings, last, scatter: plain.sd };
  if (!instrument)
    return {
      ...base,
      quantity: meanOf(last.value, plain.mean, readings.length),
      u: 0,
      degreesOfFreedom: Number.POSITIVE_INFINITY,
      suspicious: false,
      correction: 0,
    };
  const tool = gaugeInstrument(instrument);
  const pooled = pool(readings.map((m) => ({ value: quantityOf(m.value), instrument: tool, ...warmth(m) })));
  return {
    ...base,
    instrument,
    quantity: keepingWords(pooled.quantity, last.value, readings.length, pooled.quantity.si - plain.mean),
    u: pooled.budget.u,
    degreesOfFreedom: pooled.budget.effectiveDegreesOfFreedom,
    suspicious: pooled.suspicious,
    correction: pooled.quantity.si - plain.mean,
  };
}

function instrumentFor(m: Measurement, shop: Shop | undefined): From<'instrument'> | undefined {
  const found = shop?.instruments.find((i) => i.tool === m.instrument);
  const figures = found && [found.uncertainty, found.resolution, found.zeroError ?? found.uncertainty];
  return figures?.every(({ kind }) => kind === m.value.kind) ? found : undefined;
}

/** The shop's line of an instrument as the gauge room takes it. */
export function gaugeInstrument(i: From<'instrument'>): Instrument {
  return {
    name: i.name,
    resolution: spanOf(i.resolution),
    expandedU: spanOf(i.uncertainty),
    ...(i.zeroError && { zeroError: spanOf(i.zeroError) }),
  };
}

/** A difference, not a place on a scale: the zero point of °F and °C plays no part. */
function spanOf(w: Written): Quantity {
  return { kind: w.kind, unit: w.unit, si: to(quantityOf(w), w.unit) * findUnit(w.unit).factor };
}

/** Outside the range in which the coefficients hold, a length is left as it was read. */
function warmth({ temperature, material, value }: Measurement) {
  if (!temperature || !material || value.kind !== 'length') return {};
  const celsius = to(quantityOf(temperature), '°C');
  if (celsius < -20 || celsius > 60) return {};
  return { temperature: quantityOf(temperature) as Quantity<'temperature'>, material };
}

function meanOf(value: Written, mean: number, count: number): Quantity {
  if (count === 1) return quantityOf(value);
  return { kind: value.kind, unit: value.unit, si: mean };
}

/** One reading without correction keeps the digits it was written with. */
function keepingWords(pooled: Quantity, value: Written, count: number, correction: number): Quantity {
  return count === 1 && correction === 0 ? { ...pooled, written: value.written } : pooled;
}

/** The value of a quantity and its uncertainty in a unit, as the gauge room takes them. */
export function inUnit(
  { quantity, u }: Pick<ReadingGroup, 'quantity' | 'u'>,
  unit: string,
): { value: number; u: number } {
  return { value: to(quantity, unit), u: u / findUnit(unit).factor };
}

/** A quantity from a figure in a unit, with its standard uncertainty in that unit. */
export function amountOf(value: number, unit: string, u = 0): Quantity {
  return { ...of(value, unit), ...(u > 0 && { u: u * findUnit(unit).factor }) };
}
