import { QuantityError } from './error.js';
import { type ReadNumber, readNumber } from './number.js';
import { type ParseOptions, parse } from './parse.js';
import type { Kind, Quantity } from './quantity.js';
import { emptyText, notANumber, tidy } from './refuse.js';
import { lookUpUnit } from './spelling.js';

/** Two limits, or one: "0.007 in max" has no `low`. */
export interface QuantityRange<K extends Kind = Kind> {
  readonly low?: Quantity<K>;
  readonly high?: Quantity<K>;
  /** the whole range as written; ends that were written out carry their own words in `low.written`, with a unit */
  readonly written: string;
}

const separator = /^\s*(?:-|‐|‑|–|—|−|\.{2,3}|…|\bto\b|\band\b|\bthrough\b)\s*/i;
const plusMinus = /±|\+\s*\/?\s*[-−–]/;
const highBefore =
  /^(?:max(?:imum)?\.?|at most|up to|no more than|not (?:over|above|more than)|under|below|less than|≤|<=|<)[\s:]*/i;
const lowBefore =
  /^(?:min(?:imum)?\.?|at least|no less than|not (?:under|below|less than)|over|above|more than|≥|>=|>)[\s:]*/i;
const highAfter = /[\s,(]+(?:max(?:imum)?\.?|at most|or less|or under)\)?$/i;
const lowAfter = /[\s,(]+(?:min(?:imum)?\.?|at least|or more|or over)\)?$/i;

/**
 * The limits a person wrote: ".003-.005 in", "0.10–0.15 mm", "140 to 160 in-lb", '0.007" max', "at least 60 psi".
 *
 * The unit may stand once. "6 ± 2 thou" is here a tolerance: 4 to 8 thou, without uncertainty.
 * A hyphen between a whole number and a proper fraction makes one number, as at the bench: "1-1/4 in" is one value.
 * Throws QuantityError: 'ambiguous' for one value without max or min, 'out-of-range' when the ends are reversed,
 * and all that `parse` throws.
 */
export function parseRange<K extends Kind = Kind>(
  text: string,
  want?: K,
  options: ParseOptions = {},
): QuantityRange<K> {
  const written = tidy(text, want);
  if (written === '') throw emptyText(want);
  return (
    oneSided(written, want, options) ?? tolerance(written, want, options) ?? twoEnds(written, want, options)
  );
}

function oneSided<K extends Kind>(
  written: string,
  want: K | undefined,
  options: ParseOptions,
): QuantityRange<K> | undefined {
  const high = [highBefore, highAfter].find((mark) => mark.test(written));
  if (high) return { high: parse(written.replace(high, ''), want, options), written };
  const low = lowBefore.test(written) ? lowBefore : isMinimum(written, want, options) ? lowAfter : undefined;
  return low && { low: parse(written.replace(low, ''), want, options), written };
}

/** "5 min" is five minutes; "0.005 in min" is a minimum. */
function isMinimum(written: string, want: Kind | undefined, options: ParseOptions): boolean {
  if (!lowAfter.test(written)) return false;
  if (!/\bmin\.?$/i.test(written)) return true;
  const unitText = readNumber(written.replace(lowAfter, ''))?.rest.trim();
  if (unitText) return lookUpUnit(unitText, want) !== undefined;
  return options.unit !== undefined && want !== undefined && want !== 'time';
}

function tolerance<K extends Kind>(
  written: string,
  want: K | undefined,
  options: ParseOptions,
): QuantityRange<K> | undefined {
  if (!plusMinus.test(written)) return undefined;
  const { u = 0, written: _, ...middle } = parse(written, want, options);
  // parse took ± for k = 2 and halved it
  return { low: { ...middle, si: middle.si - 2 * u }, high: { ...middle, si: middle.si + 2 * u }, written };
}

function twoEnds<K extends Kind>(
  written: string,
  want: K | undefined,
  options: ParseOptions,
): QuantityRange<K> {
  const [lowText, highText] = ends(written, want);
  const high = parse(highText, want, options);
  const low = parse(lowText, high.kind, options);
  if (low.si <= high.si) return { low, high, written };
  throw new QuantityError('out-of-range', `the lower end of "${written}" is above the upper`, {
    text: written,
    wanted: want,
    hint: 'write the smaller one first',
  });
}

/** The texts of both ends, each with its unit; where the unit stands once it belongs to both. */
function ends(written: string, want: Kind | undefined): readonly [string, string] {
  const read = readNumber(written.replace(/^(?:between|from)\s+/i, ''));
  if (!read) throw notANumber(written, want);
  // the first place that works: "140 in-lb - 160 in-lb" is not cut inside in-lb, as no number follows there
  for (let at = 0; at < read.rest.length; at++) {
    const cut = cutAt(at, read, want);
    if (cut) return cut;
  }
  throw new QuantityError('ambiguous', `"${written}" is one value, not a range`, {
    text: written,
    wanted: want,
    hint: 'write both ends, or max or min after it',
  });
}

function cutAt(at: number, low: ReadNumber, want: Kind | undefined): readonly [string, string] | undefined {
  const lowUnit = low.rest.slice(0, at).trim();
  const mark = separator.exec(low.rest.slice(at));
  if (!mark || (lowUnit !== '' && !lookUpUnit(lowUnit, want))) return undefined;
  const highText = low.rest.slice(at + mark[0].length).trim();
  const high = readNumber(highText);
  if (!high) return undefined;
  const highUnit = high.rest.trim();
  return [
    `${low.number.text} ${lowUnit || highUnit}`.trim(),
    highUnit ? highText : `${highText} ${lowUnit}`.trim(),
  ];
}
