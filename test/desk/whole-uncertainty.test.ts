import { describe, expect, test } from 'vitest';
import { desk, findWorksheet } from '../../src/desk/index.js';
import { standardAirAtMapHeight } from '../../src/engine/atmosphere.js';
import { meanWidestRange } from '../../src/gauge/noise-range.js';
import { printJson, run } from '../../src/worksheet/index.js';

/** Every ± with all that belongs to it, and one answer to one question on whatever sheet it is asked. */

const answers = (sheet: string, given: Record<string, string>, system?: 'inch' | 'metric') =>
  Object.fromEntries(printJson(run(findWorksheet(sheet)!, given), system).map((each) => [each.id, each]));
const spreadOf = (text: string) => Number(/± ([\d.]+)/.exec(text)?.[1]);

describe('what a height leaves of the power is the same on every sheet', () => {
  test.each([500, 1000, 2000, 3000])('%d m', (meters) => {
    const hectopascal = standardAirAtMapHeight(meters).pascal / 100;
    const engine = { architecture: 'overhead-valve', bore: '68 mm', stroke: '54 mm' };
    const here = answers('expected-power', { ...engine, altitude: `${meters} m` });
    const there = answers('expected-power', engine);
    const told = [
      Number(answers('jet-for-altitude', { jet: '0.70 mm', to: `${meters} m` }).power!.value),
      Number(
        answers('power-correction', { temperature: '20 °C', pressure: `${hectopascal.toFixed(2)} hPa` }).left!
          .value,
      ),
      Number(here.left!.value),
      (100 * Number(here.power!.value)) / Number(there.power!.value),
    ];
    for (const each of told) expect(Math.abs(each - told[0]!)).toBeLessThan(0.1);
  });
});

describe('an uncertainty holds everything that belongs to it', () => {
  test('a clamp load what the sources differ about the nut factor', () => {
    const bolt = { torque: '10 N·m', thread: 'M6' };
    const published = answers('clamp-from-torque', { ...bolt, condition: 'bare-dry' });
    const known = answers('clamp-from-torque', { ...bolt, condition: 'bare-dry', k: '0.20' });
    // K 0.30 alone makes a third less of it
    expect(Number(published['clamp-least']!.value) / Number(published.clamp!.value)).toBeLessThan(2 / 3);
    expect(Number(known['clamp-least']!.value) / Number(known.clamp!.value)).toBeCloseTo(0.75, 9);
  });

  test('a gap in the worn bore the readings of the bore', () => {
    const given = { gap: '0.010 in', bore: '2.5625 in', worn: '2.5655 in', uncertainty: '0.001 in' };
    const coarse = answers('ring-end-gap', { ...given, 'bore-uncertainty': '0.001 in' })['worn-gap']!;
    // √(0.001² + 2·π²·0.001²)
    expect(spreadOf(coarse.text)).toBeCloseTo(0.0046, 4);
  });

  test('a ratio and a piston’s place have one', () => {
    const ratio = answers('compression-ratio', { bore: '65 mm', stroke: '62 mm', head: '29.391 cc' }).ratio!;
    // 0.5 cc of burette alone are 0.12 of a ratio of 8
    expect(spreadOf(ratio.text)).toBeGreaterThan(0.12);
    const place = answers('piston-position', { stroke: '62 mm', rod: '108.5 mm', angle: '25 deg' }).depth!;
    // a degree at 25° is a sixtieth of the stroke's half: 0.28 mm
    expect(spreadOf(place.text)).toBeCloseTo(0.28, 1);
  });

  test('leak-down is judged as the usual tester would show it', () => {
    const wide = answers('leak-down', { percent: '12 %', orifice: '0.080 in' });
    expect(wide.meaning!.text).toMatch(/^Act/);
    expect(answers('leak-down', { percent: '12 %' }).meaning!.text).toMatch(/^Good/);
  });

  test('what a perfect part shows is picked as taper and out-of-round are', () => {
    // two ranges of three and three ranges of two, by drawing them apart: 2.19 and 1.88; d2 of six (control charts)
    expect(Math.abs(meanWidestRange(3, 2) - 2.19)).toBeLessThan(0.01);
    expect(Math.abs(meanWidestRange(2, 3) - 1.88)).toBeLessThan(0.01);
    expect(meanWidestRange(6, 1)).toBeCloseTo(2.53441, 5);
    const map = answers('bore-map', {
      ...{ standard: '2.5625 in', uncertainty: '0.0020 in' },
      ...{ taper: '0.002 in', 'out-of-round': '0.002 in' },
      diameters: '2.5625; 2.5625; 2.5625; 2.5625; 2.5625; 2.5625 in',
    });
    expect(map['taper-verdict']!.text).toMatch(/about 0\.0022 in over 6 readings in groups of 3/);
    expect(map['round-verdict']!.text).toMatch(/about 0\.0019 in over 6 readings in groups of 2/);
  });
});

describe('words', () => {
  test('no leftover of the arithmetic', () => {
    const map = answers('bore-map', {
      standard: '2.5625 in',
      diameters: '2.5630; 2.5630; 2.5630; 2.5630 in',
      taper: '0.002 in',
      uncertainty: '0 in',
    });
    for (const { text } of Object.values(map)) expect(text).not.toMatch(/\d{10}|e-\d|0\.0{8}/);
  });

  test('nor where a part is perfect, a face flat or a gasket one of those offered', () => {
    const same = (value: string, count: number, unit: string) =>
      `${Array(count).fill(value).join('; ')} ${unit}`;
    const asked: [string, Record<string, string>][] = [
      ...[4, 6, 8, 12].flatMap((n): [string, Record<string, string>][] => [
        ['roundness', { radii: same('12.5', n, 'mm'), most: '0.01 mm', uncertainty: '0.001 mm' }],
        ['roundness', { radii: same('0.4921', n, 'in') }],
      ]),
      ['flatness', { places: '0,0 60,0 60,40 0,40 30,20', heights: '0; 0.1; 0.1; 0; 0.05 mm' }],
      [
        'flatness',
        { places: '0,0 60,0 60,40 0,40 30,20 10,10', heights: '0; 0.06; 0.1; 0.04; 0.05; 0.02 mm' },
      ],
      [
        'end-play-gasket',
        {
          play: '0.012 in',
          fitted: '0.015 in',
          offered: '0.005; 0.007 in',
          least: '0.002 in',
          most: '0.008 in',
        },
      ],
      ...desk.flatMap((sheet) =>
        sheet.examples
          .filter(({ expect: told }) => !JSON.stringify(told).includes('refused'))
          .map((e): [string, Record<string, string>] => [sheet.id, { ...e.given }]),
      ),
    ];
    const left = asked.flatMap(([sheet, given]) =>
      (['inch', 'metric'] as const).flatMap((system) =>
        Object.values(answers(sheet, given, system))
          .filter(({ text, note }) => /\d{12}|\de-\d|0\.0{7}/.test(`${text} ${note ?? ''}`))
          .map(({ text }) => `${sheet}: ${text}`),
      ),
    );
    expect(left).toEqual([]);
  });

  test('an ISO class has its name', () => {
    expect(answers('oil-grade', { 'at-forty': '4.6 mm²/s' }).iso!.text).toBe('VG 5');
  });

  test('a range says its unit once, and one value is no range', () => {
    const given = { value: '3', uncertainty: '0.2', least: '3', most: '3', unit: 'rpm' };
    expect(answers('decide-limit', given).verdict!.text).toMatch(/\(exactly 3 rpm\)/);
    expect(answers('decide-limit', { ...given, most: '5' }).verdict!.text).toMatch(/\(3 to 5 rpm\)/);
  });

  test('a wrong hole is named, not all that are missing', () => {
    const order = { torque: '140 in-lb', order: '1; 2; 99' };
    expect(() => run(findWorksheet('tightening-passes')!, order)).toThrow(
      /3, 4, 5, 6, 7, 8 and 90 more left out/,
    );
  });

  test('a bound is said in the unit that was written', () => {
    expect(() => run(findWorksheet('piston-position')!, { stroke: '2.4 in', depth: '3 in' })).toThrow(
      'Depth must lie between 0 in and 2.4 in; got 3 in',
    );
  });

  test('of two ways to say the same thing one is asked', () => {
    expect(() => run(findWorksheet('leak-down')!, { held: '70 psi', percent: '12 %' })).toThrow(
      /give one of them/,
    );
    expect(() =>
      run(findWorksheet('piston-position')!, { stroke: '62 mm', angle: '20 deg', depth: '3 mm' }),
    ).toThrow(/give one of them/);
  });

  test('a number of a hundred and fifty decimals is read and shown', () => {
    const long = `0.${'1'.repeat(150)} in`;
    expect(Object.values(answers('convert', { quantity: long }))[0]!.text).toMatch(/0\.1{15} in/);
  });
});
