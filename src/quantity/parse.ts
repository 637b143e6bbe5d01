import { siOf } from './convert.js';
import { QuantityError } from './error.js';
import { findUnit } from './find-unit.js';
import { type ReadNumber, readNumber, type WrittenNumber } from './number.js';
import type { Kind, Origin, Quantity } from './quantity.js';
import {
  emptyText,
  kindMismatch,
  notANumber,
  noUnit,
  percentOrTimes,
  thousandsOrDecimal,
  tidy,
  twoNumbers,
} from './refuse.js';
import { lookUpUnit, readUnit } from './spelling.js';
import type { Unit } from './unit.js';

export interface ParseOptions {
  /** id of the unit assumed for a bare number */
  readonly unit?: string | undefined;
  readonly origin?: Origin | undefined;
}

/**
 * The quantity a person wrote: a number, then its unit, in any usual spelling.
 *
 * "± U" after it is read as an expanded uncertainty with coverage factor k = 2 (JCGM 100:2008, 6.2), in the same
 * unit, in a unit of its own or in %; `u` becomes U/2.
 * Without a unit the text is refused, unless `options.unit` says what a bare number is; a ratio may be bare up to 1.
 * `want` refuses every other kind. Throws QuantityError, never guesses:
 * 'empty', 'not-a-number', 'no-unit', 'unknown-unit', 'kind-mismatch', 'ambiguous', 'out-of-range'.
 *
 * Example: `parse('15 ft·lb', 'torque').si` is 20.337 N·m; `parse('0.0030 ± 0.0007 in').u` is 8.89e-6 m.
 */
export function parse<K extends Kind = Kind>(
  text: string,
  want?: K,
  options: ParseOptions = {},
): Quantity<K> {
  const written = tidy(text, want);
  if (written === '') throw emptyText(want);
  const [body = '', spread, ...more] = written.split(/\s*(?:±|\+\s*\/?\s*[-−–])\s*/);
  if (more.length > 0) throw twoNumbers(written, want);
  const value = readPart(body, want, written);
  const spreadPart = spread === undefined ? undefined : readPart(spread, want, written);
  const unit = value.unit ?? unitOfSpread(spreadPart) ?? bareUnit(value.number, written, want, options);
  if (want && unit.kind !== want) throw kindMismatch(written, want, unit);
  return {
    kind: unit.kind as K,
    si: siOf(settled(value.number, unit, written), unit, written),
    unit: unit.id,
    written,
    ...(spreadPart && { u: standardUncertainty(spreadPart, value, unit, written) }),
    ...(options.origin && { origin: options.origin }),
  };
}

interface Part {
  readonly number: WrittenNumber;
  readonly unit: Unit | undefined;
}

function readPart(text: string, want: Kind | undefined, written: string): Part {
  const read = readNumber(text);
  if (!read) throw notANumber(written, want);
  return readProportion(read) ?? { number: read.number, unit: unitAfter(read.rest, want, written) };
}

/** "50:1" and "8.5 : 1". */
function readProportion({ number, rest }: ReadNumber): Part | undefined {
  if (!/^\s*:/.test(rest)) return undefined;
  const second = readNumber(rest.replace(/^\s*:/, ''));
  if (second?.rest.trim() !== '' || second.number.value <= 0) return undefined;
  const value = number.value / second.number.value;
  return {
    number: { value, text: number.text + rest, form: 'fraction', decimals: undefined },
    unit: findUnit('1'),
  };
}

function unitAfter(rest: string, want: Kind | undefined, written: string): Unit | undefined {
  if (rest.trim() === '') return undefined;
  const found = lookUpUnit(rest, want);
  if (found) return found;
  if (/\d|[½⅓⅔¼¾⅛⅜⅝⅞]/.test(rest.replace(/h2o|[a-z][23]\b/gi, ''))) throw twoNumbers(written, want);
  return readUnit(rest, want);
}

/** In "20 ± 2 °C" the unit stands last; a per cent there is a share of the value and no unit for it. */
function unitOfSpread(spread: Part | undefined): Unit | undefined {
  return spread?.unit?.id === '%' ? undefined : spread?.unit;
}

function bareUnit(
  number: WrittenNumber,
  written: string,
  want: Kind | undefined,
  options: ParseOptions,
): Unit {
  if (options.unit !== undefined) return findUnit(options.unit);
  if (want !== 'ratio') throw noUnit(written, want);
  // 46 may be 46 % or 46:1; up to 1 the written number is the ratio
  if (Math.abs(number.value) > 1) throw percentOrTimes(written);
  return findUnit('1');
}

/** The number's value, refused where a comma could be read two ways with this unit. */
export function settled(number: WrittenNumber, unit: Unit, written: string): number {
  if (number.asDecimalComma === undefined || unit.whole) return number.value;
  throw thousandsOrDecimal(written, number.value, number.asDecimalComma);
}

function standardUncertainty(spread: Part, value: Part, unit: Unit, written: string): number {
  const own = spread.unit ?? unit;
  const isShare = own.id === '%' && unit.id !== '%';
  if (!isShare && own.kind !== unit.kind) throw kindMismatch(written, unit.kind, own);
  const size = settled(spread.number, own, written);
  const expanded = isShare ? Math.abs((size / 100) * value.number.value * unit.factor) : size * own.factor;
  if (expanded > 0) return expanded / 2;
  throw new QuantityError(
    'out-of-range',
    `an uncertainty of "${spread.number.text}" cannot be: it is above 0`,
    {
      text: written,
      hint: 'write how far off the reading may be, or leave ± out',
    },
  );
}
