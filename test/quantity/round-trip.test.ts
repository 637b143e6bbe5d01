import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  convert,
  findUnit,
  of,
  parse,
  parseRange,
  type Quantity,
  readUnit,
  show,
  to,
  type UnitSystem,
  units,
  unitsOf,
  withOrigin,
  withUncertainty,
} from '../../src/quantity/index.js';
import { campaign } from '../support/campaign.js';
import { expectRefusal } from './refusal.js';

const seeded = { seed: 811, numRuns: campaign(400, 2000) };
const unitId = fc.constantFrom(...Object.keys(units));
const twoUnits = unitId.chain((id) =>
  fc.tuple(fc.constant(id), fc.constantFrom(...unitsOf(findUnit(id).kind).map((unit) => unit.id))),
);
/** a bench number: up to seven figures, from a tenth of a thou to a million */
const number = fc
  .tuple(fc.integer({ min: 0, max: 9_999_999 }), fc.integer({ min: 0, max: 6 }))
  .map(([figures, decimals]) => figures / 10 ** decimals);
const system = fc.constantFrom<UnitSystem>('inch', 'metric');
/** within a kelvin of absolute zero a rounded figure may lie below it and be refused; no bench is that cold */
const notFrozen = ({ kind, si }: Quantity) => kind !== 'temperature' || si > 1;
const writable = unitId.filter((id) => id !== '1');

describe('conversion', () => {
  test('a reading converted and back is the same reading, to 1e-12', () => {
    fc.assert(
      fc.property(number, twoUnits, (value, [from, into]) => {
        const there = to(of(value, from), into);
        const back = to(of(there, into), from);
        // a temperature's figures are near the zero of its scale, not near zero
        const scale = findUnit(from).kind === 'temperature' ? Math.abs(value) + 500 : Math.abs(value);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * scale);
      }),
      seeded,
    );
  });

  test('speaking of a quantity in another unit changes nothing but the unit', () => {
    fc.assert(
      fc.property(number, twoUnits, (value, [from, into]) => {
        const quantity = of(value, from);
        expect(convert(quantity, into)).toEqual({ ...quantity, unit: into });
      }),
      seeded,
    );
  });

  test('no quantity goes into a unit of another kind', () => {
    fc.assert(
      fc.property(number, unitId, unitId, (value, from, into) => {
        fc.pre(findUnit(from).kind !== findUnit(into).kind);
        expectRefusal(() => to(of(value, from), into), 'kind-mismatch', 'wanted', 'given');
        expectRefusal(() => convert(of(value, from), into), 'kind-mismatch');
      }),
      seeded,
    );
  });

  test('an uncertainty scales with the unit and keeps clear of its zero point', () => {
    expect(withUncertainty(of(68, '°F'), 1.8).u).toBeCloseTo(1, 12);
    expect(withUncertainty(of(3, 'in'), 0.1, 'mm').u).toBeCloseTo(1e-4, 15);
    expectRefusal(() => withUncertainty(of(3, 'in'), -1), 'out-of-range');
    expectRefusal(() => withUncertainty(of(3, 'in'), Number.NaN), 'out-of-range');
    expectRefusal(() => withUncertainty(of(3, 'in'), 1, 'psi'), 'kind-mismatch');
  });

  test('an origin is added without touching the value', () => {
    const origin = { from: 'measured', detail: 'micrometer 2' } as const;
    expect(withOrigin(of(3, 'in'), origin)).toEqual({ ...of(3, 'in'), origin });
  });
});

describe('writing and reading', () => {
  test('what is written as number and unit reads as that number of that unit', () => {
    fc.assert(
      fc.property(number, writable, (value, unit) => {
        const quantity = parse(`${value} ${unit}`, findUnit(unit).kind);
        expect(quantity.unit).toBe(unit);
        expect(quantity.si).toBe(of(value, unit).si);
      }),
      seeded,
    );
  });

  test('separators inside a unit mean nothing', () => {
    const separated = fc.constantFrom('in-lb', 'ft-lb', 'N·m', 'kgf·m', 'fl oz', 'cu in', 'mPa·s');
    const separator = fc.constantFrom('', ' ', '-', '·', '.', ' - ', '⋅', '‑', '*');
    fc.assert(
      fc.property(separated, separator, (unit, mark) => {
        expect(readUnit(unit.replace(/[-· ]/, mark)).id).toBe(unit);
      }),
      seeded,
    );
  });

  test('what is shown reads back within half of its last digit', () => {
    fc.assert(
      fc.property(number, unitId, system, (value, unit, reader) => {
        const quantity = of(value, unit);
        // a bare ratio above one is refused on purpose
        fc.pre((unit !== '1' || value <= 1) && notFrozen(quantity));
        const text = show(quantity, reader);
        const back = parse(text, quantity.kind);
        expect(Math.abs(back.si - quantity.si), text).toBeLessThanOrEqual(halfLastDigit(text, back));
      }),
      seeded,
    );
  });

  test('what is shown, read and shown again is the same text', () => {
    fc.assert(
      fc.property(number, writable, system, (value, unit, reader) => {
        fc.pre(notFrozen(of(value, unit)));
        const text = show(of(value, unit), reader);
        expect(show(parse(text, findUnit(unit).kind), reader)).toBe(text);
      }),
      seeded,
    );
  });

  test('nothing that is something is shown as zero', () => {
    fc.assert(
      fc.property(number, unitId, system, (value, unit, reader) => {
        fc.pre(value > 0 && findUnit(unit).kind !== 'temperature');
        expect(Number.parseFloat(show(of(value, unit), reader))).toBeGreaterThan(0);
      }),
      seeded,
    );
  });

  test('a written reading is shown with the digits it was written with', () => {
    const figures = fc
      .tuple(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 0, max: 4 }), fc.nat(9999))
      .map(([whole, places, part]) =>
        places === 0 ? `${whole}` : `${whole}.${String(part).padStart(4, '0').slice(0, places)}`,
      );
    fc.assert(
      fc.property(figures, writable, (text, unit) => {
        const shown = show(parse(`${text} ${unit}`, findUnit(unit).kind));
        expect(shown.replace('°', ' °').replace(/\s.*$/, '')).toBe(text);
      }),
      seeded,
    );
  });

  test('an uncertainty shown reads back as the same uncertainty, to its two figures', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 99_999 }),
        fc.integer({ min: 1, max: 99 }),
        fc.constantFrom('in', 'mm', 'psi', 'in-lb', 'N·m', '°C'),
        (value, spread, unit) => {
          const quantity = withUncertainty(of(value / 100, unit), spread / 2000, unit);
          const back = parse(show(quantity, undefined, { uncertainty: true }), quantity.kind);
          expect(back.u).toBeCloseTo(quantity.u!, 12);
        },
      ),
      seeded,
    );
  });

  test('a range reads as its two ends', () => {
    const separator = fc.constantFrom('-', '–', ' to ', ' - ', ' … ', '..', ' through ');
    fc.assert(
      fc.property(
        number,
        number,
        separator,
        fc.constantFrom('in', 'mm', 'in-lb', 'N·m', 'psi', 'inH2O', '°C', 'h'),
        (a, b, mark, unit) => {
          const [low, high] = [Math.min(a, b), Math.max(a, b)];
          const range = parseRange(`${low.toFixed(6)}${mark}${high.toFixed(6)} ${unit}`);
          expect(range.low?.si).toBe(of(Number(low.toFixed(6)), unit).si);
          expect(range.high?.si).toBe(of(Number(high.toFixed(6)), unit).si);
        },
      ),
      seeded,
    );
  });
});

/** Half a unit of the last digit of a shown number, and a breath of rounding noise. */
function halfLastDigit(text: string, { unit, si }: Quantity): number {
  const decimals = /\.(\d+)/.exec(text)?.[1]?.length ?? 0;
  return 0.5 * 10 ** -decimals * findUnit(unit).factor * (1 + 1e-9) + 1e-12 * Math.abs(si);
}
