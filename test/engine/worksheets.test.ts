import { describe, expect, test } from 'vitest';
import { worksheets } from '../../src/engine/worksheets.js';
import { findUnit } from '../../src/quantity/index.js';
import {
  type Answer,
  picture,
  printText,
  run,
  type Worksheet,
  WorksheetError,
} from '../../src/worksheet/index.js';
import { worksheetsOfRoom } from '../support/room-worksheets.js';

const sheet = (id: string): Worksheet => {
  const found = worksheets.find((each) => each.id === id);
  if (!found) throw new Error(`no worksheet ${id}`);
  return found;
};
const answers = (id: string, given: Record<string, string>): Record<string, Answer> =>
  Object.fromEntries(run(sheet(id), given).map((each) => [each.id, each]));
const text = (id: string, given: Record<string, string>) => printText(run(sheet(id), given)).join('\n');

const examples = worksheets.flatMap((worksheet) =>
  worksheet.examples.map((example) => ({ worksheet, example, got: run(worksheet, example.given) })),
);

worksheetsOfRoom(worksheets);

test('a figure that stands unasked says where it comes from', () => {
  for (const { id, fields } of worksheets)
    for (const { id: field, standard, help } of fields)
      if (standard !== undefined) expect(help, `${id}.${field}`).toMatch(/stands?|level/);
});

test('every answer says where it comes from', () => {
  for (const { worksheet, got } of examples)
    for (const { id, origin } of got)
      expect(origin.detail?.length ?? 0, `${worksheet.id} ${id}`).toBeGreaterThan(3);
});

describe('pictures', () => {
  const drawn = examples.flatMap(({ worksheet, got }) =>
    got.flatMap((each) => (each.picture ? [[worksheet.id, each.picture] as const] : [])),
  );

  test('stand where a person would rather look', () => {
    expect([...new Set(drawn.map(([id]) => id))].sort()).toEqual([
      'compression-at-altitude',
      'expected-compression',
      'expected-power',
      'firing-load',
      'jet-for-altitude',
      'leak-down',
      'leak-from-compression',
      'oil-drag',
      'piston-position',
      'ratio-change',
      'spark-shift',
      'tip-speed',
    ]);
  });

  test('can be drawn, survive the wire and name units of the table', () => {
    for (const [id, one] of drawn) {
      expect(picture(one), id).toBe(one);
      expect(JSON.parse(JSON.stringify(one))).toEqual(one);
      for (const { unit } of [one.x, one.y]) if (unit) expect(findUnit(unit).id, id).toBe(unit);
    }
  });

  test('are bounded: no curve has more than 150 points', () => {
    for (const [id, { curves }] of drawn)
      for (const { points } of curves) expect(points.length, id).toBeLessThan(150);
  });
});

describe('what a reader sees', () => {
  const mower = { architecture: 'side-valve', bore: '2.5625 in', stroke: '2.4375 in', release: 'none' };

  test('a reading far under the band speaks for a bad seal, and the band says what it rests on', () => {
    const seen = text('expected-compression', { ...mower, reading: '40 psi' });
    expect(seen).toMatch(/under its band/);
    expect(seen).toMatch(/not this engine's/);
    expect(seen).toMatch(/40 % down: \d\d %/);
  });

  test('a leak is told as a hole, with its range', () => {
    const found = answers('leak-from-compression', {
      ...mower,
      // 50 stands inside the band since friction takes its part of the hand's moment by the engine's size
      reading: '40 psi',
      speed: '300 rpm',
      ratio: '6:1',
    });
    const value = (id: string) => {
      const { value: each } = found[id]!;
      return each.type === 'quantity' ? each.quantity.si * 1e6 : Number.NaN;
    };
    expect(value('least')).toBeLessThan(value('leak'));
    expect(value('leak')).toBeLessThan(value('most'));
    expect(found.leak!.picture!.marks).toHaveLength(1);
  });

  test('an unknown release is treated as fitted on a four-stroke and absent on a two-stroke', () => {
    const { release: _, ...unknown } = mower;
    expect(text('expected-compression', { ...unknown, reading: '60 psi' })).toMatch(/does not tell/);
    expect(
      text('expected-compression', { ...unknown, architecture: 'two-stroke', reading: '60 psi' }),
    ).not.toMatch(/does not tell/);
  });

  test('a leak stays in mm² and a jet in the unit it was written in, whoever reads', () => {
    const inches = (id: string, given: Record<string, string>) =>
      printText(run(sheet(id), given), 'inch').join('\n');
    expect(inches('leak-down', { held: '70 psi' })).toMatch(/Effective leak: 0\.573 mm²/);
    expect(inches('jet-for-altitude', { jet: '0.70 mm', to: '2000 m' })).toMatch(/Jet: 0\.666 mm/);
    expect(inches('two-stroke-mix', { fuel: '1 gal', ratio: '50:1' })).toMatch(
      /Oil: 75\.7 mL\nOr: 2\.56 fl oz/,
    );
  });

  test('a barometer goes before the altitude', () => {
    const low = text('expected-compression', { ...mower, barometer: '800 hPa' });
    expect(low).not.toBe(text('expected-compression', mower));
    expect(low).toMatch(/air pressure: as given/);
  });

  test('a coil that would rub is refused whatever card was used', () => {
    expect(text('coil-gap', { card: '0.010 in', 'run-out': '0.030 in' })).toMatch(/fail: the magnets touch/);
    expect(text('coil-gap', { card: '0.002 in', least: '0.006 in' })).toMatch(/fail: too narrow/);
    expect(text('coil-gap', { card: '0.030 in', most: '0.014 in' })).toMatch(/fail: too wide/);
    // a figure of the class says so and decides nothing
    expect(text('coil-gap', { card: '0.030 in' })).toMatch(/cannot decide: class figure only: too wide/);
  });

  test('a head held by too little is told to lift, one held well to stay down', () => {
    const head = { architecture: 'overhead-valve', bore: '68 mm', stroke: '54 mm', bolts: '4', thread: 'M8' };
    expect(text('firing-load', { ...head, torque: '24 N·m' })).toMatch(/At this torque: pass/);
    expect(text('firing-load', { ...head, torque: '24 N·m', bolts: '1' })).toMatch(/fail: .*lifts the head/);
    expect(text('firing-load', { ...head, torque: '14 N·m' })).toMatch(/little left over for the gasket/);
  });

  test('a plate over, in and under the band is told so, and 5000 ft take a fifth or a little more', () => {
    const engine = { architecture: 'overhead-valve', bore: '68 mm', stroke: '54 mm' };
    expect(text('expected-power', { ...engine, plate: '5.5 hp' })).toMatch(/pass: inside the band/);
    expect(text('expected-power', { ...engine, plate: '3 hp' })).toMatch(/fail: less than/);
    expect(text('expected-power', { ...engine, plate: '9 hp' })).toMatch(/more than a sound one/);
    const hp = (altitude: string) => {
      const { value } = answers('expected-power', { ...engine, altitude }).power!;
      return value.type === 'quantity' ? value.quantity.si : Number.NaN;
    };
    expect(hp('5000 ft') / hp('0 ft')).toBeGreaterThan(0.74);
    expect(hp('5000 ft') / hp('0 ft')).toBeLessThan(0.83);
  });

  test('more ratio gives more of everything, the gauge included', () => {
    const seen = answers('ratio-change', {
      ...{ architecture: 'side-valve', bore: '65 mm', stroke: '62 mm', ratio: '6:1', 'new-ratio': '6.6:1' },
    });
    const value = (id: string) => {
      const { value: each } = seen[id]!;
      return each.type === 'quantity' ? each.quantity.si : each.type === 'number' ? each.number : Number.NaN;
    };
    expect(value('work')).toBeGreaterThan(0.01);
    expect(value('work')).toBeLessThan(0.05);
    expect(value('peak')).toBeGreaterThan(value('work'));
    expect(value('gauge-then')).toBeGreaterThan(value('gauge-now'));
  });

  test('a piston asked for without angle or depth is shown at 90°', () => {
    expect(text('piston-position', { stroke: '62 mm' })).toMatch(/90°/);
  });

  test('a speed over the plate fails', () => {
    const given = { 'no-load': '3900 rpm', loaded: '3700 rpm' };
    expect(text('governor-droop', { ...given, rated: '3600 rpm' })).toMatch(/fail: 300 rpm over/);
    expect(text('governor-droop', { ...given, rated: '3900 rpm' })).toMatch(/pass/);
  });
});

describe('a worksheet refuses by field', () => {
  // what cannot be meant is refused by the field itself, with its bound in the unit that was written
  const cases: [string, Record<string, string>, string, RegExp][] = [
    ['tip-speed', { diameter: '0 in', speed: '3000 rpm' }, 'diameter', /at least 1.97 in/],
    [
      'compression-ratio',
      { bore: '65 mm', stroke: '62 mm', head: '2 cc', crown: '-3 cc' },
      'head',
      /add up to/,
    ],
    [
      'compression-ratio',
      { bore: '65 mm', stroke: '62 mm', head: '20 cc', cut: '9 mm' },
      'cut',
      /leaves no chamber/,
    ],
    [
      'piston-position',
      { stroke: '62 mm', depth: '70 mm' },
      'depth',
      /Depth must lie between 0 mm and 62 mm; got 70 mm/,
    ],
    [
      'piston-position',
      { stroke: '62 mm', rod: '20 mm', angle: '10°' },
      'rod',
      /Connecting rod must be at least 37.2 mm/,
    ],
    ['standard-air', { altitude: '20000 m' }, 'altitude', /at most 9000 m/],
    ['generator-speed', { speed: '3600 rpm', poles: '3' }, 'poles', /pairs/],
    ['governor-droop', { 'no-load': '3000 rpm', loaded: '3600 rpm' }, 'no-load', /no slower than loaded/],
    ['leak-down', { held: '90 psi' }, 'held', /Cylinder gauge must lie between 0 psi and 80 psi; got 90 psi/],
    ['leak-down', {}, 'held', /Cylinder gauge or Percent lost: one of them is wanted/],
    ['two-stroke-mix', { fuel: '1 gal', ratio: '500:1' }, 'ratio', /at most 100/],
    ['spark-shift', { offset: '15 mm', shaft: '20 mm' }, 'offset', /between 0 mm and 10 mm/],
    [
      'oil-viscosity',
      { 'at-forty': '5 mm²/s', 'at-hundred': '9 mm²/s', temperature: '20 °C' },
      'at-forty',
      /thins as it warms/,
    ],
    ['oil-grade', {}, 'at-hundred', /one of the two/],
    ['oil-for-temperature', { coldest: '35 °C' }, 'coldest', /above the hottest/],
    ['ethanol-mixture', { ethanol: '130 %' }, 'ethanol', /at most 100 %/],
    [
      'expected-power',
      { architecture: 'side-valve', bore: '65 mm', stroke: '62 mm', speed: '9000 rpm' },
      'speed',
      /between 500 and 6000/,
    ],
    [
      'firing-load',
      {
        architecture: 'side-valve',
        bore: '65 mm',
        stroke: '62 mm',
        bolts: '90',
        thread: '5/16-18',
        torque: '200 in-lb',
      },
      'bolts',
      /at most 40/,
    ],
    [
      'ratio-change',
      { architecture: 'side-valve', bore: '65 mm', stroke: '62 mm', ratio: '6:1', 'new-ratio': '60:1' },
      'new-ratio',
      /at most 16/,
    ],
    [
      'expected-compression',
      { architecture: 'side-valve', bore: '65 mm', stroke: '62 mm', ratio: '40:1' },
      'ratio',
      /at most 16/,
    ],
  ];
  test.each(cases)('%s %j: %s', (id, given, field, message) => {
    let refused: unknown;
    try {
      run(sheet(id), given);
    } catch (error) {
      refused = error;
    }
    expect(refused).toBeInstanceOf(WorksheetError);
    expect((refused as WorksheetError).message).toMatch(message);
    expect((refused as WorksheetError).field).toBe(field);
    expect(sheet(id).fields.map((one) => one.id)).toContain(field);
  });
});
