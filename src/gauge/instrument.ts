import { of, type Quantity, to, withOrigin, withUncertainty } from '../quantity/index.js';
import { type Budget, type BudgetLine, budget } from './budget.js';
import { GaugeError } from './error.js';
import { repeats, scattersTooMuch } from './pooled.js';
import { atReference, type Material } from './thermal.js';

/** An instrument on the shop's list. Its three figures are of the kind it measures. */
export interface Instrument {
  readonly name: string;
  readonly resolution: Quantity;
  /** expanded uncertainty of one reading in practised hands, k = 2; the resolution is in it */
  readonly expandedU: Quantity;
  /** what it shows on its standard less what the standard is; taken off every reading */
  readonly zeroError?: Quantity;
  /** how well the zero error is known, k = 2; a part of it is common to all readings of the day */
  readonly zeroExpandedU?: Quantity;
  /** of a micrometer frame or scale; steel when left out */
  readonly material?: Material;
}

/** One reading, as it stands in the notebook. */
export interface Reading {
  readonly value: Quantity;
  readonly instrument: Instrument;
  /** where on the part: "10 mm below the top", "No. 2 crankpin" */
  readonly place?: string;
  /** "along the crank", "across the crank", "45°" */
  readonly direction?: string;
  /** of the part, with its material; brings a length to 20 °C */
  readonly temperature?: Quantity<'temperature'>;
  readonly material?: Material;
}

export interface Pooled {
  /** corrected mean with its standard uncertainty, and "measured" with the instrument as its origin */
  readonly quantity: Quantity;
  readonly budget: Budget;
  readonly count: number;
  /** standard deviation of the repeats in SI units */
  readonly scatter: number;
  /** the repeats scatter more than the instrument explains: look for dirt, place and technique */
  readonly suspicious: boolean;
}

/**
 * Standard uncertainty of one reading of an instrument, SI units: half its expanded uncertainty, but never less than
 * its resolution allows (a rectangle one step wide). Source: JCGM 100:2008, 4.3.3 and F.2.2.1.
 * Example: feeler set, resolution 0.001 in, U 0.001 in → u 0.0005 in.
 */
export function standardU({ resolution, expandedU, name }: Instrument): number {
  const u = Math.max(expandedU.si / 2, resolution.si / Math.sqrt(12));
  if (!(u >= 0 && Number.isFinite(u)))
    throw new GaugeError(`${name} has no usable uncertainty.`, 'instrument', u);
  return u;
}

/**
 * The measured quantity out of one reading or out of repeats at the same place and direction with one instrument.
 *
 * Source: JCGM 100:2008, 4.2, 4.3, 5.1; ISO 1:2016 for 20 °C.
 * Method: each reading less the zero error, lengths brought to 20 °C when temperature and material are written down,
 * then the mean. Its budget has three lines: scatter of the repeats/√n, the instrument (not lowered by repeats, which
 * share its faults), and temperature; a fourth when the zero is uncertain.
 * Special cases: a single reading has no scatter line. Readings of several instruments, places, directions or kinds
 * are refused: they are not repeats.
 * Throws GaugeError naming the field. Example: see test/gauge/instrument.test.ts.
 */
export function pool(readings: readonly Reading[]): Pooled {
  const first = readings[0];
  if (!first) throw new GaugeError('At least one reading is needed.', 'readings', 0);
  requireSame(readings, first);
  const corrected = readings.map(correct);
  const { mean, sd, count } = repeats(corrected.map((one) => one.si));
  const summed = budget(linesOf(first.instrument, corrected), 0.95);
  return {
    quantity: measured(first, mean, summed.u, count),
    budget: summed,
    count,
    scatter: sd,
    suspicious:
      count > 1 &&
      scattersTooMuch(
        corrected.map((one) => one.si),
        2 * standardU(first.instrument),
      ),
  };
}

interface Corrected {
  readonly si: number;
  readonly thermalU: number;
}

function correct({ value, instrument, temperature, material }: Reading): Corrected {
  const si = value.si - (instrument.zeroError?.si ?? 0);
  if (temperature === undefined || material === undefined || value.kind !== 'length')
    return { si, thermalU: 0 };
  const { size, u } = atReference({
    read: si,
    part: material,
    partC: to(temperature, '°C'),
    tool: instrument.material,
  });
  return { si: size, thermalU: u };
}

function linesOf(instrument: Instrument, corrected: readonly Corrected[]): BudgetLine[] {
  const values = corrected.map((one) => one.si);
  const thermal = Math.max(...corrected.map((one) => one.thermalU));
  const zero = instrument.zeroExpandedU?.si ?? 0;
  return [
    { name: instrument.name, from: { type: 'standard', u: standardU(instrument) } },
    ...(values.length > 1
      ? [{ name: 'scatter', from: { type: 'repeats', readings: values } } as BudgetLine]
      : []),
    ...(thermal > 0 ? [{ name: 'temperature', from: { type: 'standard', u: thermal } } as BudgetLine] : []),
    ...(zero > 0 ? [{ name: 'zero', from: { type: 'expanded', U: zero, k: 2 } } as BudgetLine] : []),
  ];
}

function requireSame(readings: readonly Reading[], first: Reading): void {
  const same: readonly [string, (reading: Reading) => unknown][] = [
    ['kind', (reading) => reading.value.kind],
    ['instrument', (reading) => reading.instrument.name],
    ['place', (reading) => reading.place],
    ['direction', (reading) => reading.direction],
  ];
  for (const [field, read] of same) {
    const other = readings.find((reading) => read(reading) !== read(first));
    if (other)
      throw new GaugeError(
        `Repeats must share their ${field}; got ${read(first)} and ${read(other)}.`,
        field,
        read(other),
      );
  }
  for (const { kind } of Object.values(first.instrument).filter(isQuantity))
    if (kind !== first.value.kind)
      throw new GaugeError(
        `${first.instrument.name} measures ${kind}, not ${first.value.kind}.`,
        'instrument',
        kind,
      );
}

function isQuantity(value: unknown): value is Quantity {
  return typeof value === 'object' && value !== null && 'kind' in value;
}

function measured({ value, instrument }: Reading, si: number, u: number, count: number): Quantity {
  const { factor, offset } = scaleOf(value);
  const plain = of((si - offset) / factor, value.unit);
  const detail = count > 1 ? `${instrument.name}, mean of ${count}` : instrument.name;
  return withOrigin(withUncertainty({ ...plain, si }, u / factor), { from: 'measured', detail });
}

/** The unit's scale from two of its own values, so that temperatures keep their offset. */
function scaleOf({ unit }: Quantity): { factor: number; offset: number } {
  const offset = of(0, unit).si;
  return { factor: of(1, unit).si - offset, offset };
}
