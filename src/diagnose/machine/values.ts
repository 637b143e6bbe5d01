import { applies, type Check } from '../../catalog/index.js';
import { parse, QuantityError, to } from '../../quantity/index.js';
import type { MachineFacts } from './case.js';

/**
 * The outcome that a number typed into a check stands for on such an engine; undefined where the check has no scale for
 * it, or the scale depends on what is not known. A bare number is taken in the scale's own unit.
 *
 * @throws QuantityError for a text that is no number of the scale's kind
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

/** The unit in which a check takes a number on such an engine; undefined where it takes none. */
export const valueUnit = (check: Check, facts: MachineFacts): string | undefined =>
  scalesOfValues(check, facts)[0]?.unit;

function scalesOfValues({ values = [], outcomes }: Check, facts: MachineFacts) {
  const own = outcomes.flatMap(({ id, band }) => (band ? [{ ...band, outcome: id }] : []));
  const ladder = own.length > 0 ? [{ unit: own[0]!.unit, bands: own }] : [];
  return [...values.filter((v) => applies(v.when, facts) === 'yes'), ...ladder];
}

function inUnit(value: number | string, unit: string): number | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? value : undefined;
  const bare = Number(value.trim());
  if (value.trim() !== '' && Number.isFinite(bare)) return bare;
  try {
    return to(parse(value), unit);
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}
