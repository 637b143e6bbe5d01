import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { builtInCatalog, readSpecLineAs, readSpecLines, type SpecLine } from '../../../src/catalog/index.js';
import { of, parse, to } from '../../../src/quantity/index.js';
import { campaign } from '../../support/campaign.js';

const catalog = builtInCatalog();
const read = (line: string): SpecLine => readSpecLines(catalog, line)[0]!;

describe('lines as makers write them', () => {
  test.each([
    ['head bolts 140 in-lb', 'head-bolt-torque', 140, 'in-lb'],
    ['Head bolt torque: 140 in. lbs.', 'head-bolt-torque', 140, 'in-lb'],
    ['CYLINDER HEAD BOLTS ........ 200 in-lb', 'head-bolt-torque', 200, 'in-lb'],
    ['cylinder head\t24 N·m', 'head-bolt-torque', 24, 'N·m'],
    ['Spark plug gap .030 in', 'spark-plug-gap', 0.03, 'in'],
    ['plug gap = 0.7 mm', 'spark-plug-gap', 0.7, 'mm'],
    ['Flywheel nut: 55 ft-lb', 'flywheel-nut-torque', 55, 'ft-lb'],
    ['flywheel nut......55 ft. lbs.', 'flywheel-nut-torque', 55, 'ft-lb'],
    ['Connecting rod bolts 100 in-lb', 'connecting-rod-bolt-torque', 100, 'in-lb'],
    ['conrod cap screws 100 in-lb', 'connecting-rod-bolt-torque', 100, 'in-lb'],
    ['top no-load speed 3600 rpm', 'governed-top-speed', 3600, 'rpm'],
    ['No load speed, max: 3,600 RPM', 'governed-top-speed', 3600, 'rpm'],
    ['Oil capacity 20 fl oz', 'oil-capacity', 20, 'fl oz'],
    ['Crankcase capacity | 1-1/4 pt', 'oil-capacity', 1.25, 'pt'],
    ['fuel tank capacity 3/4 qt', 'fuel-capacity', 0.75, 'qt'],
    ['fuel : oil ratio 50:1', 'fuel-oil-ratio', 50, '1'],
    ['bore 2.5625 in', 'bore-standard', 2.5625, 'in'],
    ['Displacement 148 cc', 'displacement', 148, 'cc'],
    ['stroke 1-3/4 in', 'stroke', 1.75, 'in'],
    ['idle mixture screw 1-1/2 turns out', 'idle-mixture-turns', 1.5, 'turns'],
    ['governed idle 1750 rpm', 'governed-idle-speed', 1750, 'rpm'],
    ['breather cover screws 50 in-lb', 'valve-cover-torque', 50, 'in-lb'],
    ['governor lever nut 45 in-lb', 'governor-clamp-torque', 45, 'in-lb'],
    ['carb mounting nuts 60 in-lb', 'carburetor-mounting-torque', 60, 'in-lb'],
    ['Sump bolts 110 in-lb', 'sump-cover-torque', 110, 'in-lb'],
    ['1. Muffler bolts 120 in-lb', 'muffler-torque', 120, 'in-lb'],
    ['- condenser 0.2 µF', 'condenser-capacitance', 0.2, 'µF'],
    ['coil secondary resistance 5 kohm', 'coil-secondary-resistance', 5, 'kΩ'],
    ['140 in-lb head bolts', 'head-bolt-torque', 140, 'in-lb'],
    ['.030 in spark plug gap', 'spark-plug-gap', 0.03, 'in'],
    ['Connecting Rod Bolt M7 x 1.0 12 N.m (106 in-lb)', 'connecting-rod-bolt-torque', 12, 'N·m'],
    ['head bolts 5/16-18 140 in-lb', 'head-bolt-torque', 140, 'in-lb'],
    ['ring end gap .030 in reject', 'ring-end-gap-reject', 0.03, 'in'],
  ])('%s', (line, spec, value, unit) => {
    const found = read(line);
    expect(found).toMatchObject({ line, spec, candidates: [] });
    expect(found.problem).toBeUndefined();
    expect(to(found.value!, unit)).toBeCloseTo(value, 9);
    expect(found.value!.unit).toBe(unit);
  });

  test.each([
    ['crank end play 0.002 - 0.008"', 'crankshaft-end-play', 0.002, 0.008, 'in'],
    ['Crankshaft endplay: .002 to .008 in', 'crankshaft-end-play', 0.002, 0.008, 'in'],
    ['Head bolt torque 220-230 in-lb', 'head-bolt-torque', 220, 230, 'in-lb'],
    ['Armature air gap 0.010 – 0.014"', 'coil-air-gap', 0.01, 0.014, 'in'],
    ['intake valve clearance 0.08 - 0.12 mm', 'valve-clearance-intake', 0.08, 0.12, 'mm'],
    ['exhaust valve lash .009 in - .011 in', 'valve-clearance-exhaust', 0.009, 0.011, 'in'],
  ])('a range: %s', (line, spec, low, high, unit) => {
    const found = read(line);
    expect(found).toMatchObject({ spec, candidates: [] });
    expect(to(found.value!, unit)).toBeCloseTo(low, 9);
    expect(to(found.upTo!, unit)).toBeCloseTo(high, 9);
  });

  test.each([
    ['oil SAE 30', 'SAE 30'],
    ['Engine oil: 10W-30', '10W-30'],
    ['Oil grade SAE 5W30', 'SAE 5W30'],
  ])('words: %s', (line, text) => {
    expect(read(line)).toMatchObject({ spec: 'oil-grade', text, candidates: [] });
  });

  test('one end alone says which end it is', () => {
    expect(read('head warpage 0.004 in max')).toMatchObject({
      spec: 'head-flatness-limit',
      bound: 'at most',
    });
    expect(read('compression 60 psi min')).toMatchObject({ spec: 'compression', bound: 'at least' });
  });
});

describe('a line that says two things', () => {
  test('oil SAE 30, 20 fl oz: grade and capacity', () => {
    const found = readSpecLines(catalog, 'oil SAE 30, 20 fl oz');
    expect(found.map(({ spec, line }) => [spec, line])).toEqual([
      ['oil-grade', 'oil SAE 30, 20 fl oz'],
      ['oil-capacity', 'oil SAE 30, 20 fl oz'],
    ]);
    expect(found[0]!.text).toBe('SAE 30');
    expect(to(found[1]!.value!, 'fl oz')).toBeCloseTo(20, 9);
  });

  test.each([
    'valve clearance intake .005-.007 in, exhaust .009-.011 in',
    'Valve clearance (cold) In .005-.007 in Ex .009-.011 in',
  ])('%s: both valves', (line) => {
    const found = readSpecLines(catalog, line);
    expect(
      found.map(({ spec, value, upTo }) => [spec, to(value!, 'in').toFixed(3), to(upTo!, 'in').toFixed(3)]),
    ).toEqual([
      ['valve-clearance-intake', '0.005', '0.007'],
      ['valve-clearance-exhaust', '0.009', '0.011'],
    ]);
  });

  test('a value and its limit', () => {
    const found = readSpecLines(catalog, 'Cylinder bore 68.00 mm, service limit 68.165 mm');
    expect(found.map(({ spec, value }) => [spec, value?.written])).toEqual([
      ['bore-standard', '68.00 mm'],
      ['bore-reject', '68.165 mm'],
    ]);
  });

  test('the same value in two units is one value', () => {
    for (const line of ['Flywheel nut 55 ft-lb (75 N·m)', 'flywheel nut: 55 ft-lb / 74.6 N·m']) {
      const found = readSpecLines(catalog, line);
      expect(found).toHaveLength(1);
      expect(found[0]).toMatchObject({ spec: 'flywheel-nut-torque' });
      expect(found[0]!.problem).toBeUndefined();
    }
  });

  test('two values that do not agree are not believed', () => {
    const [found, ...others] = readSpecLines(catalog, 'flywheel nut 55 ft-lb (90 N·m)');
    expect(others).toEqual([]);
    expect(found!.problem).toBe('The line says 55 ft-lb and 90 N·m, which do not agree.');
  });

  test('a second item that nobody knows is not dropped', () => {
    const found = readSpecLines(catalog, 'head bolts 140 in-lb, washers smooth side up');
    expect(found.map(({ spec }) => spec)).toEqual(['head-bolt-torque', undefined]);
    expect(found[1]!.label).toBe('washers smooth side up');
  });
});

describe('nothing is assumed', () => {
  test('a label nobody knows comes back with its nearest candidates', () => {
    expect(read('valve clearance .006 in')).toMatchObject({
      label: 'valve clearance',
      candidates: expect.arrayContaining(['valve-clearance-intake', 'valve-clearance-exhaust']),
    });
    expect(read('valve clearance .006 in')).not.toHaveProperty('spec');
    expect(read('valve clearance .006 in')).not.toHaveProperty('value');
  });

  test('a label like none comes back alone', () => {
    expect(read('blurgle 5 in')).toEqual({ line: 'blurgle 5 in', label: 'blurgle', candidates: [] });
    expect(read('see page 12')).toMatchObject({ candidates: [] });
  });

  test('a unit that does not stand there is taken only when no other makes sense, and that is said', () => {
    const inches = read('valve clearance intake .005-.007');
    expect(to(inches.upTo!, 'in')).toBeCloseTo(0.007, 9);
    expect(inches.assumed).toContain('Read as in: no unit stands there');
    const metric = read('bore 65');
    expect(to(metric.value!, 'mm')).toBeCloseTo(65, 9);
    expect(metric.assumed).toContain('Read as mm: no unit stands there');
    expect(read('spark plug gap .030 in').assumed).toBeUndefined();
  });

  test('where two units make sense, or none does, the number is refused', () => {
    const two = read('head bolts 30');
    expect(two.value).toBeUndefined();
    expect(two.problem).toBe('"30" has no unit; ft-lb or N·m may be meant.');
    const none = read('head bolts 5000');
    expect(none.value).toBeUndefined();
    expect(none.problem).toBe('"5000" has no unit; 90 to 420 in-lb would be expected.');
  });
});

describe('values that must not be believed', () => {
  test('of the wrong kind: said in words', () => {
    const found = read('head bolts 0.030 in');
    expect(found).toMatchObject({ spec: 'head-bolt-torque' });
    expect(found.problem).toContain('torque wanted, length given');
    expect(found.value).toBeUndefined();
  });

  test('of the wrong kind for the label, right for one like it: that one is proposed', () => {
    expect(read('spark plug 0.030 in')).toMatchObject({
      problem: expect.any(String),
      candidates: ['spark-plug-gap'],
    });
  });

  test('out of all proportion: with the reading that was probably meant', () => {
    const found = read('head bolts 140 ft-lb');
    expect(found.problem).toContain('140 ft-lb is far above');
    expect(found.problem).toContain('140 in-lb would be plausible');
    expect(to(found.likely!, 'in-lb')).toBeCloseTo(140, 9);
  });

  test.each([
    ['spark plug gap 30 in', undefined],
    ['top speed 36000 rpm', undefined],
    ['crank end play 0.002 - 0.8 in', undefined],
    ['valve clearance intake 0.1 in', 'mm'],
    ['flywheel nut 55 in-lb', 'ft-lb'],
  ])('%s', (line, unit) => {
    const found = read(line);
    expect(found.problem).toBeDefined();
    expect(found.likely?.unit).toBe(unit);
  });
});

describe('the quantities are fit to be kept', () => {
  const lines = [
    'head bolts 140 in-lb',
    'points gap .020',
    'valve clearance intake .005-.007',
    'crank end play .005 ± .003 in',
    'head warpage .004 in max',
  ];

  test.each(lines)('what was written reads back as the same value: %s', (line) => {
    const { value, upTo } = read(line);
    for (const quantity of [value, upTo]) {
      if (!quantity) continue;
      const again = parse(quantity.written!, quantity.kind);
      expect(again.unit).toBe(quantity.unit);
      expect(again.si / quantity.si).toBeCloseTo(1, 12);
    }
  });

  test('they say that they come from the maker’s sheet, or what they were told', () => {
    expect(read('head bolts 140 in-lb').value!.origin).toEqual({ from: "maker's sheet" });
    const origin = { from: 'plate', detail: 'under the shroud' } as const;
    expect(readSpecLines(catalog, 'bore 65 mm', origin)[0]!.value!.origin).toEqual(origin);
  });
});

describe('a line read as the spec that a person chose', () => {
  test('takes the value wherever it stands', () => {
    const found = readSpecLineAs(catalog, 'valve-clearance-intake', 'valve clearance .006 in');
    expect(found).toMatchObject({
      spec: 'valve-clearance-intake',
      line: 'valve clearance .006 in',
      candidates: [],
    });
    expect(to(found.value!, 'in')).toBeCloseTo(0.006, 9);
  });

  test('still refuses what cannot be', () => {
    expect(readSpecLineAs(catalog, 'head-bolt-torque', 'blurgle 5 in').problem).toBeDefined();
    expect(readSpecLineAs(catalog, 'head-bolt-torque', 'see the drawing').problem).toContain(
      'no value of it stands in',
    );
  });

  test('knows no spec of another name', () => {
    expect(() => readSpecLineAs(catalog, 'wish', 'x 1 in')).toThrow(RangeError);
  });
});

describe('a whole sheet', () => {
  test('line by line, blank lines left out, in order', () => {
    const sheet = 'Head bolts 140 in-lb\r\n\r\nSpark plug gap .030 in\n\nOil SAE 30, 20 fl oz\n';
    expect(readSpecLines(catalog, sheet).map(({ spec }) => spec)).toEqual([
      'head-bolt-torque',
      'spark-plug-gap',
      'oil-grade',
      'oil-capacity',
    ]);
  });

  test('never throws, whatever is pasted', () => {
    const paste = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 200 }),
      fc.string({
        unit: fc.constantFrom(...'0123456789.,-–±/()"\' inmlbft°%:;\tgapboltsaeSAEW\n'),
        maxLength: 80,
      }),
    );
    fc.assert(
      fc.property(paste, (text) => {
        for (const { line, candidates, spec, problem } of readSpecLines(catalog, text)) {
          expect(text).toContain(line);
          // a spec that is sure has no rivals, unless its value is refused
          if (spec !== undefined && problem === undefined) expect(candidates).toEqual([]);
        }
      }),
      { seed: 20260114, numRuns: campaign(150, 700) },
    );
  });

  test('a page pasted as one line is no line', () => {
    expect(read(`head bolts ${'very '.repeat(100)}140 in-lb`).problem).toContain('not a line of a sheet');
  });

  test('every spelling of every spec leads to that spec, or says which ones it may be', () => {
    for (const spec of catalog.specs) {
      for (const label of [spec.name, ...spec.spellings]) {
        if (spec.kind === undefined) continue;
        const value = sample(spec);
        const found = readSpecLines(catalog, `${label}: ${value}`);
        const named = found.some((each) => each.spec === spec.id || each.candidates.includes(spec.id));
        expect(named, `${label}: ${value}`).toBe(true);
      }
    }
  });

  test('every spec believes the middle of its own bounds', () => {
    for (const spec of catalog.specs) {
      if (spec.kind === undefined) continue;
      expect(readSpecLineAs(catalog, spec.id, `x ${sample(spec)}`), spec.id).toMatchObject({ spec: spec.id });
      expect(readSpecLineAs(catalog, spec.id, `x ${sample(spec)}`).problem, spec.id).toBeUndefined();
    }
  });
});

/** The geometric middle of a spec's bounds, written out. */
function sample(spec: (typeof catalog.specs)[number]): string {
  const { low, high, unit } = spec.plausible!;
  const middle = Number((low > 0 ? Math.sqrt(low * high) : (low + high) / 2).toPrecision(3));
  return of(middle, unit).unit === '1' ? `${middle}:1` : `${middle} ${unit}`;
}

test('a text longer than any sheet is read up to a bound, and the rest is said to be unread', () => {
  const lines = readSpecLines(builtInCatalog(), 'a b\n'.repeat(15_000));
  expect(lines).toHaveLength(501);
  expect(lines.at(-1)).toEqual({
    line: 'a b',
    label: 'a b',
    candidates: [],
    problem: 'Only 500 lines are read at once; 14500 more begin here. Paste them by themselves.',
  });
});
