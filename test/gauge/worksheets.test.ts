import { describe, expect, it } from 'vitest';
import { classFigures, classLimit, notThisEngines, worksheets } from '../../src/gauge/index.js';
import { printJson, run, type Worksheet, WorksheetError } from '../../src/worksheet/index.js';
import { worksheetsOfRoom } from '../support/room-worksheets.js';

const named = (id: string): Worksheet => {
  const found = worksheets.find((worksheet) => worksheet.id === id);
  if (!found) throw new Error(`no worksheet ${id}`);
  return found;
};

describe('every worksheet of the measuring bench', () => {
  worksheetsOfRoom(worksheets);

  it('a field with a standard value says in its help where the value comes from, or what it means', () => {
    for (const { id, fields } of worksheets)
      for (const field of fields)
        if (
          field.standard !== undefined &&
          field.kind !== 'choice' &&
          Number.parseFloat(field.standard) !== 0
        )
          expect(field.help, `${id}: ${field.id}`).toMatch(/source|common practice|ISO|usual/);
  });

  it('prints only finite numbers, and every answer has an origin', () => {
    for (const worksheet of worksheets)
      for (const { given } of worksheet.examples)
        for (const answer of printJson(run(worksheet, given))) {
          expect(answer.text, worksheet.id).not.toMatch(/NaN|Infinity|undefined/);
          expect(answer.origin.from, worksheet.id).toBeTruthy();
        }
  });

  it('gives the same verdicts and values when its lengths are written in the other system', () => {
    const inch = run(named('piston-clearance'), {
      hole: '2.5640 in',
      shaft: '2.5580 in',
      least: '0.0015 in',
      most: '0.007 in',
    });
    const metric = run(named('piston-clearance'), {
      hole: '65.1256 mm',
      shaft: '64.9732 mm',
      least: '0.0381 mm',
      most: '0.1778 mm',
    });
    const [a, b] = [printJson(inch, 'inch'), printJson(metric, 'inch')];
    expect(b.map(({ verdict }) => verdict)).toEqual(a.map(({ verdict }) => verdict));
    expect(b[0]!.si).toBeCloseTo(a[0]!.si!, 12);
  });
});

describe('a limit', () => {
  const gap = { gap: '0.014 in', bore: '2.5625 in' };

  it('of the class is marked as not this engine’s wherever it is used', () => {
    const answers = printJson(run(named('ring-end-gap'), gap));
    const verdict = answers.find(({ id }) => id === 'verdict')!;
    expect(verdict.origin).toMatchObject({ from: 'rule of thumb' });
    expect(verdict.origin.detail).toContain(notThisEngines);
    expect(verdict.note).toContain(notThisEngines);
  });

  it('given by the person replaces the class figure whole, even one side of it', () => {
    const answers = printJson(run(named('ring-end-gap'), { ...gap, most: '0.012 in' }));
    expect(answers.find(({ id }) => id === 'limit')!.text).toBe('at most 0.012 in');
    expect(answers.find(({ id }) => id === 'verdict')).toMatchObject({
      verdict: 'fail',
      origin: { from: "maker's sheet" },
    });
  });

  it('of the class is converted from inches to the unit asked for', () => {
    expect(classLimit(classFigures.ringGap, 'mm').min).toBeCloseTo(0.1778, 12);
    expect(classLimit(classFigures.ringGap, 'in').max).toBeCloseTo(0.03, 12);
    expect(classLimit(classFigures.boreTaper, 'in')).not.toHaveProperty('min');
  });

  it('of the class always says where it comes from', () => {
    for (const { source, what } of Object.values(classFigures)) {
      expect(what.length).toBeGreaterThan(5);
      expect(source).toMatch(/no source|second-hand|TM \d/);
    }
  });
});

describe('a worksheet refuses by field', () => {
  const cases: [string, Record<string, string>, string, RegExp][] = [
    ['decide-limit', { value: '1', uncertainty: '0.1' }, 'most', /min, a max or both/],
    ['decide-limit', { value: '1', uncertainty: '-0.1', most: '2' }, 'uncertainty', /at least 0/],
    ['decide-limit', { value: '1', uncertainty: '0.1', most: '2', sure: '40' }, 'sure', /at least 50.1/],
    [
      'settle-reading',
      { value: '1', uncertainty: '1', most: '2', tools: 'gauge' },
      'tools',
      /write name and uncertainty/,
    ],
    ['uncertainty-budget', {}, 'standard', /at least one line/],
    ['uncertainty-budget', { standard: '9/x' }, 'standard', /not an uncertainty/],
    [
      'bore-map',
      { standard: '2.5625 in', diameters: '2.564; 2.563; 2.563 in', directions: '2' },
      'diameters',
      /full rows/,
    ],
    [
      'bore-map',
      { standard: '2.5625 in', diameters: '2.564; 2.963 in', directions: '2' },
      'diameters',
      /5 % off/,
    ],
    ['ring-end-gap', { gap: '0.010 in', bore: '2.5625 in', worn: '2.5 in' }, 'worn', /overlap/],
    ['flatness', { places: '0,0 1,0 2,0 3,0', heights: '0; 1; 2; 3 µm' }, 'places', /one line/],
    ['flatness', { places: '0,0 1,0 2,0 3,1', heights: '0; 1; 2 µm' }, 'heights', /4 places but 3 heights/],
    ['flatness-straightedge', { enters: '0.003 in', refuses: '0.002 in' }, 'refuses', /thicker/],
    [
      'valve-clearance-side-valve',
      { valve: 'intake', clearance: '0.002 in', least: '0.005 in' },
      'most',
      /both/,
    ],
    ['thermal-length', { read: '65 mm', 'part-temperature': '150 °C' }, 'part-temperature', /−20 to 60/],
    [
      'end-play-gasket',
      { play: '0.001 in', fitted: '0 in', offered: '0 in' },
      'offered',
      /below what can be meant/,
    ],
  ];
  for (const [id, given, field, message] of cases)
    it(`${id}: ${field}, ${message.source}`, () => {
      try {
        run(named(id), given);
        expect.unreachable();
      } catch (error) {
        expect(error).toBeInstanceOf(WorksheetError);
        expect((error as WorksheetError).message).toMatch(message);
        expect((error as WorksheetError).field).toBe(field);
        expect(named(id).fields.map((one) => one.id)).toContain(field);
      }
    });
});
