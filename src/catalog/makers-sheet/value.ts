import {
  type Origin,
  of,
  parse,
  parseRange,
  type Quantity,
  QuantityError,
  requirePlausible,
  show,
  to,
} from '../../quantity/index.js';
import type { Spec } from '../catalog.js';

/** What stands after a label, read as the value of one spec. */
export interface SpecValue {
  readonly value?: Quantity;
  /** the upper end of a range; `value` is the lower */
  readonly upTo?: Quantity;
  /** set where only one end was written: "0.030 in max" */
  readonly bound?: 'at most' | 'at least';
  /** for values that are words */
  readonly text?: string;
  /** what was taken for granted, in words: a unit that did not stand there */
  readonly assumed?: string;
  /** why it must not be believed as it stands, a sentence */
  readonly problem?: string;
  /** the reading that was probably meant */
  readonly likely?: Quantity;
}

/** The value of a spec, or undefined when the text is nothing of the sort. A wrong or doubtful value has a `problem`. */
export function readSpecValue(text: string, spec: Spec, origin: Origin): SpecValue | undefined {
  if (spec.kind === undefined) return readWords(text, spec);
  const read = readQuantity(text, spec, origin);
  if (read instanceof QuantityError) return refusal(read, text, spec, origin);
  return doubted(read, spec);
}

/** Words are taken as written; what reads as a quantity is none of them. */
function readWords(text: string, spec: Spec): SpecValue | undefined {
  const quantity = attempt(() => parse(text));
  const isQuantity = !(quantity instanceof QuantityError);
  return !isQuantity && spec.looksLike !== undefined && new RegExp(spec.looksLike).test(text)
    ? { text }
    : undefined;
}

function readQuantity(text: string, spec: Spec, origin: Origin, unit?: string): SpecValue | QuantityError {
  const options = { origin, unit };
  const value = attempt(() => parse(text, spec.kind, options));
  if (!(value instanceof QuantityError)) return { value: inFull(value, spec) };
  const range = attempt(() => parseRange(text, spec.kind, options));
  // "no unit" tells more than "no range"
  if (range instanceof QuantityError)
    return range.code === 'no-unit' || range.code === 'out-of-range' ? range : value;
  const [low, high] = [range.low, range.high].map((end) => end && inFull(end, spec));
  if (low && high) return { value: low, upTo: high };
  return high ? { value: high, bound: 'at most' } : { value: low!, bound: 'at least' };
}

/** With words that say the whole quantity: a bare number and the end of "6 ± 2 thou" get their unit written out. */
function inFull(quantity: Quantity, { kind }: Spec): Quantity {
  const { written, unit } = quantity;
  const alone = written === undefined ? undefined : attempt(() => parse(written, kind));
  if (alone && !(alone instanceof QuantityError)) return quantity;
  const number = written === undefined ? String(Number(to(quantity, unit).toPrecision(12))) : written;
  return { ...quantity, written: `${number} ${unit}` };
}

/** The answer, or the QuantityError that stood in its way; any other error goes on. */
function attempt<T>(act: () => T): T | QuantityError {
  try {
    return act();
  } catch (error) {
    if (error instanceof QuantityError) return error;
    throw error;
  }
}

function refusal(error: QuantityError, text: string, spec: Spec, origin: Origin): SpecValue | undefined {
  if (error.code === 'no-unit') return bareNumber(text, spec, origin);
  if (error.code === 'kind-mismatch' || error.code === 'out-of-range')
    return { problem: sentence(error, spec) };
  return undefined;
}

/** A number without a unit is believed only in the one unit that makes it plausible, and that is said. */
function bareNumber(text: string, spec: Spec, origin: Origin): SpecValue {
  const readings = (spec.units ?? []).flatMap((unit) => {
    const read = readQuantity(text, spec, origin, unit);
    return read instanceof QuantityError || doubted(read, spec).problem !== undefined ? [] : [{ unit, read }];
  });
  const [only] = readings;
  const { low, high, unit } = spec.plausible!;
  if (only && readings.length === 1) {
    const assumed = `Read as ${only.unit}: no unit stands there, and no other makes sense for ${spec.plausible!.because}`;
    return { ...only.read, assumed };
  }
  const why = only
    ? `${readings.map((each) => each.unit).join(' or ')} may be meant`
    : `${low} to ${high} ${unit} would be expected`;
  return { problem: `"${text}" has no unit; ${why}.` };
}

function doubted(read: SpecValue, spec: Spec): SpecValue {
  for (const quantity of [read.value, read.upTo]) {
    const error = quantity && attempt(() => requirePlausible(quantity, boundsOf(spec)));
    if (error instanceof QuantityError) {
      const likely = read.upTo ? {} : likelyReading(quantity!, spec);
      return { ...read, problem: sentence(error, spec), ...likely };
    }
  }
  return read;
}

function boundsOf(spec: Spec) {
  const { low, high, unit, because, origin } = spec.plausible!;
  return { low: of(low, unit, origin), high: of(high, unit, origin), because, likelyUnits: spec.units ?? [] };
}

function likelyReading(quantity: Quantity, spec: Spec): { likely?: Quantity } {
  const { low, high } = boundsOf(spec);
  const number = Number(to(quantity, quantity.unit).toPrecision(12));
  const likely = (spec.units ?? [])
    .map((unit) => of(number, unit, quantity.origin))
    .find(({ si, kind }) => kind === spec.kind && si >= low.si && si <= high.si);
  return likely ? { likely } : {};
}

function sentence(error: QuantityError, spec: Spec): string {
  return `${spec.name}: ${error.message}.`;
}

/** Whether two readings of one line say the same within 3 %, as a value and its conversion in brackets do. */
export function agree(a: SpecValue, b: SpecValue): boolean {
  return close(a.value, b.value) && close(a.upTo, b.upTo);
}

function close(a: Quantity | undefined, b: Quantity | undefined): boolean {
  if (!a || !b) return a === b;
  return a.kind === b.kind && Math.abs(a.si - b.si) <= 0.03 * Math.max(Math.abs(a.si), Math.abs(b.si));
}

export const printed = ({ value, upTo }: SpecValue): string =>
  [value, upTo].flatMap((each) => (each ? [show(each)] : [])).join(' to ');
