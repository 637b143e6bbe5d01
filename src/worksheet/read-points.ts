import { of, readUnit, to } from '../quantity/index.js';
import { WorksheetError } from './error.js';
import { readPlainNumber } from './read-list.js';

/** A place in a plane, millimetres. */
export interface Point {
  readonly xMm: number;
  readonly yMm: number;
}

const hint = 'write them like 0,0 60,0 60,40 0,40, in mm or with the unit at the end';

/**
 * Places in a plane: "0,0 60,0 60,40 0,40" in millimeters, or "0,0 2.4,0 in" with a unit of length at the end.
 *
 * The comma parts x from y, so the figures take a decimal point. Parentheses and semicolons are allowed.
 * Throws WorksheetError for a pair that is none, QuantityError for a unit that is none.
 */
export function readPoints(text: string): readonly Point[] {
  const { pairs, unit } = withoutUnit(text);
  const mmPerUnit = to(of(1, unit), 'mm');
  const points = pairs
    .split(/[\s;]+/)
    .filter((pair) => pair !== '')
    .map((pair) => readPair(pair, mmPerUnit));
  if (points.length === 0) throw new WorksheetError(`"${text.trim()}" has no places in it; ${hint}`);
  return points;
}

function withoutUnit(text: string): { pairs: string; unit: string } {
  // "( 0, 0 )" and "0 , 0" are one pair
  const tidy = text
    .trim()
    .replace(/[()]/g, ' ')
    .replace(/\s*,\s*/g, ',');
  const unitText = /[^\d\s.,;+−-][^\d,;]*$/.exec(tidy)?.[0];
  if (unitText === undefined) return { pairs: tidy, unit: 'mm' };
  const unit = readUnit(unitText, 'length');
  if (unit.kind !== 'length')
    throw new WorksheetError(`places are lengths, ${unit.kind} given (${unitText.trim()}); ${hint}`);
  return { pairs: tidy.slice(0, tidy.length - unitText.length), unit: unit.id };
}

function readPair(pair: string, mmPerUnit: number): Point {
  const [x, y, ...more] = pair.split(',');
  if (!x || !y || more.length > 0)
    throw new WorksheetError(`"${pair}" is not a place, which is x,y; ${hint}`);
  return { xMm: readPlainNumber(x) * mmPerUnit, yMm: readPlainNumber(y) * mmPerUnit };
}
