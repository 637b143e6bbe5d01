import { applies, type Check } from '../../catalog/index.js';
import { findUnit, type Kind, of, parse, QuantityError, to } from '../../quantity/index.js';
import type { MachineFacts } from './case.js';

/** What a number typed into a check is counted in: a unit with its kind, or a plain count ("pulls"). */
export interface ValueUnit {
  readonly unit: string;
  readonly kind?: Kind;
}

/**
 * The outcome that a number typed into a check stands for on such an engine; undefined where the check has no scale for
 * it, or the scale depends on what is not known. A bare number is taken in the scale's own unit.
 */
export function outcomeOfValue(
  check: Check,
  value: number | string,
  facts: MachineFacts,
): string | undefined {
  for (const { unit, bands } of scalesOfValues(check, facts)) {
    const number = inUnit(value, unit);
    if (number === undefined) continue;
    const { outcome } =
      bands.find((b) => number >= (b.from ?? -Infinity) && number < (b.to ?? Infinity)) ?? {};
    if (outcome !== undefined) return outcome;
  }
  return undefined;
}

/** In what a check takes a number on such an engine; undefined where it takes none. */
export function valueUnit(check: Check, facts: MachineFacts): ValueUnit | undefined {
  const { values = [] } = check;
  const possible = values.find((v) => applies(v.when, facts) !== 'no');
  const unit = (scalesOfValues(check, facts)[0] ?? possible)?.unit;
  if (unit === undefined) return undefined;
  const kind = kindOf(unit);
  return { unit, ...(kind !== undefined && { kind }) };
}

/**
 * The number that a check looks for on such an engine, in the unit of its scale: the middle of what its first outcome spans,
 * or the one bound that it has. Undefined where it has no scale.
 */
export function valueLookedFor(check: Check, facts: MachineFacts): number | undefined {
  const bands = scalesOfValues(check, facts)[0]?.bands ?? [];
  const { from, to: upTo } = bands.find(({ outcome }) => outcome === check.outcomes[0]?.id) ?? bands[0] ?? {};
  return from !== undefined && upTo !== undefined ? (from + upTo) / 2 : (from ?? upTo);
}

/** Why a number is not believed at a check, in the unit in which it was written; undefined where it is. */
export function whyNoValue(check: Check, value: string): string | undefined {
  const { low, high, unit } = check.believed ?? { low: 0, high: Infinity, unit: '' };
  const number = inUnit(value, unit);
  if (number === undefined) return `“${value}” is no number${unit && ` in ${unit}`}`;
  if (number >= low && number <= high) return undefined;
  const own = unitOf(value) ?? unit;
  const [from, upTo] = [low, high].map((bound) => Number(inOther(bound, unit, own).toPrecision(3)));
  return `${value} cannot be meant: here stands ${from} to ${upTo} ${own}`;
}

const inOther = (bound: number, unit: string, own: string): number =>
  own === unit ? bound : to(of(bound, unit), own);

function unitOf(value: string): string | undefined {
  try {
    return parse(value).unit;
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}

function scalesOfValues({ values = [], outcomes }: Check, facts: MachineFacts) {
  const own = outcomes.flatMap(({ id, band }) => (band ? [{ ...band, outcome: id }] : []));
  const ladder = own.length > 0 ? [{ unit: own[0]!.unit, bands: own }] : [];
  return [...values.filter((v) => applies(v.when, facts) === 'yes'), ...ladder];
}

/** Undefined for a plain count. */
function kindOf(unit: string): Kind | undefined {
  try {
    return findUnit(unit).kind;
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}

function inUnit(value: number | string, unit: string): number | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? value : undefined;
  const said = value.trim();
  const bare = (said.endsWith(unit) ? said.slice(0, -unit.length) : said).trim();
  if (bare !== '' && Number.isFinite(Number(bare))) return Number(bare);
  try {
    return to(parse(value), unit);
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}
