import { to } from './convert.js';
import { decimalsFor, decimalsOfSignificant, writtenNumber } from './digits.js';
import { findUnit } from './find-unit.js';
import type { Quantity, UnitSystem } from './quantity.js';
import { readerUnit } from './reader-unit.js';

export interface ShowOptions {
  /** print in this unit, whatever the system */
  readonly unit?: string | undefined;
  /** significant digits, in place of the sensible ones */
  readonly digits?: number | undefined;
  /** print "± U" (k = 2) when the quantity carries an uncertainty */
  readonly uncertainty?: boolean | undefined;
}

/** Units whose id is a word in the plural. */
const singular: Readonly<Record<string, string>> = {
  turns: 'turn',
  days: 'day',
  weeks: 'week',
  months: 'month',
  years: 'year',
};

/**
 * The quantity as text with its unit, in the reader's system; in its own unit when no system is named.
 *
 * In the unit in which it was written the number keeps the digits and fractions it was written with; in another
 * unit it gets as many as the written precision and the bench allow (see `decimalsFor`). The text parses back to
 * the same quantity within half of its last digit.
 * Throws QuantityError for an option unit of another kind.
 *
 * Example: `show(parse('180 in-lb'), 'metric')` is "20.3 N·m"; `show(parse('3/64 in'), 'inch')` is "3/64 in".
 */
export function show(quantity: Quantity, system?: UnitSystem, options: ShowOptions = {}): string {
  const unit = options.unit ?? (system ? readerUnit(quantity, system) : quantity.unit);
  const number =
    options.uncertainty && quantity.u ? spread(quantity, quantity.u, unit) : figures(quantity, unit, options);
  return withUnit(number, Math.abs(to(quantity, unit)) > 1 ? unit : (singular[unit] ?? unit));
}

/** Both systems where a slip between them would hurt: "140 in-lb (15.8 N·m)". A shared unit stands once. */
export function showBoth(quantity: Quantity, system: UnitSystem): string {
  const first = show(quantity, system);
  const second = show(quantity, system === 'inch' ? 'metric' : 'inch');
  return first === second ? first : `${first} (${second})`;
}

/** What the person wrote, word for word; a quantity that nobody wrote, in its own unit. */
export function showAsWritten(quantity: Quantity): string {
  return quantity.written ?? show(quantity);
}

function figures(quantity: Quantity, unit: string, { digits }: ShowOptions): string {
  const value = shownValue(quantity, unit);
  if (digits !== undefined)
    return plain(Number(value.toPrecision(digits)), decimalsOfSignificant(value, digits));
  return (
    writtenProportion(quantity, unit) ??
    writtenFraction(quantity, unit) ??
    plain(value, value === 0 ? decimalsFor({ ...quantity, si: 0 }, unit) : decimalsFor(quantity, unit))
  );
}

/** "50:1" */
function writtenProportion({ written, si }: Quantity, unit: string): string | undefined {
  const [, over, under] = /^([\d.]+)\s*:\s*([\d.]+)$/.exec(written ?? '') ?? [];
  return unit === '1' && Number(over) / Number(under) === si ? `${over}:${under}` : undefined;
}

/** "1-1/4" and "3/64", when shown in the unit they were written in. */
function writtenFraction(quantity: Quantity, unit: string): string | undefined {
  const written = writtenNumber(quantity);
  if (written?.unit !== unit || written.number.form !== 'fraction') return undefined;
  return written.number.text
    .replace(/\s*[⁄∕/]\s*/, '/')
    .replace(/\s*[-‐‑–]\s*(?=\d+\/)|(?<=\d)\s+(and\s+)?/, '-');
}

/** "0.0030 ± 0.0007": the expanded uncertainty to two digits, the value to the same place. */
function spread(quantity: Quantity, u: number, unit: string): string {
  const expanded = Number(((2 * u) / findUnit(unit).factor).toPrecision(2));
  const value = shownValue(quantity, unit);
  const own = value === 0 ? decimalsFor({ ...quantity, si: 0 }, unit) : decimalsFor(quantity, unit);
  const decimals = Math.max(own, placesOf(expanded));
  return `${plain(value, decimals)} ± ${plain(expanded, decimals)}`;
}

/** Decimals of a number of two significant digits, without closing zeros. */
function placesOf(value: number): number {
  const most = decimalsOfSignificant(value, 2);
  return most > 0 && value.toFixed(most).endsWith('0') ? most - 1 : most;
}

/** A length under a hundredth of an atom is what is left of a difference of two equal ones. */
const leastLengthM = 1e-12;

/** In a unit, without what only the arithmetic left over. */
function shownValue(quantity: Quantity, unit: string): number {
  if (quantity.kind === 'length' && Math.abs(quantity.si) < leastLengthM) return 0;
  return to(quantity, unit);
}

/** 0.375 in is 9.525 mm and shown as 9.53: a half that conversion left a hair under itself is rounded as a half. */
function withoutNoise(value: number, decimals: number): number {
  const clean = Number(value.toPrecision(14));
  const half = Number((Math.abs(clean) * 10 ** decimals).toPrecision(14));
  return half % 1 === 0.5 ? clean + Math.sign(clean) * 10 ** (-decimals - 3) : value;
}

function plain(value: number, decimals: number): string {
  const text = withoutNoise(value, decimals).toFixed(decimals);
  // to a reader -0.0 is 0.0
  return Number(text) === 0 ? text.replace('-', '') : text;
}

function withUnit(number: string, unit: string): string {
  if (unit === '1') return number;
  return unit === '°' ? `${number}°` : `${number} ${unit}`;
}
