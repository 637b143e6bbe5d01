import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../../../src/catalog/index.js';
import { standingGroups } from '../../../../src/job/answers/measure/readings.js';
import { classLimits, decisionOf, poolReadings } from '../../../../src/job/index.js';
import { to } from '../../../../src/quantity/index.js';
import { door } from '../../door.js';
import { bench, sheet, tool, Written, w } from './measured.js';

const gap = (value: string, more = {}) => ({
  measure: 'ring-end-gap',
  title: 'Ring end gap',
  value: w(value),
  place: 'top ring',
  instrument: 'feelers',
  ...more,
});
const catalog = builtInCatalog();

describe('repeats', () => {
  test('of one place with one tool are one mean; another place, tool or phase is not among them', () => {
    const job = new Written()
      .add('measurement', gap('0.020 in'))
      .add('measurement', gap('0.022 in'))
      .add('measurement', gap('0.030 in', { place: 'second ring' }))
      .add('measurement', gap('0.021 in', { instrument: 'micrometer' }))
      .add('measurement', gap('0.019 in', { phase: 'after' }))
      .job();
    const groups = door(job, { shop: bench }).readingGroups;
    expect(groups.map((g) => g.readings.length)).toEqual([2, 1, 1, 1]);
    expect(to(groups[0]!.quantity, 'in')).toBeCloseTo(0.021, 12);
    expect(groups[0]!.u / 0.0254).toBeCloseTo(Math.hypot(0.0005, 0.001), 9);
  });

  test('end where something was decided about them: after a cut it is another clearance', () => {
    const job = new Written()
      .add('measurement', gap('0.020 in'))
      .add('decision', {
        about: 'measurement',
        which: 'ring-end-gap',
        title: 'filed',
        choice: 'recondition',
        reason: '',
      })
      .add('measurement', gap('0.024 in'))
      .job();
    const groups = door(job, { shop: bench }).readingGroups;
    expect(groups).toHaveLength(2);
    expect(standingGroups(groups).map((g) => g.last.value.written)).toEqual(['0.024 in']);
  });

  test('that differ by more than the tool explains are named so', () => {
    const read = (a: string, b: string) =>
      door(new Written().add('measurement', gap(a)).add('measurement', gap(b)).job(), { shop: bench })
        .readingGroups[0]!.suspicious;
    expect(read('0.020 in', '0.021 in')).toBe(false);
    expect(read('0.020 in', '0.022 in')).toBe(true);
  });
});

test('the zero error of the tool comes off, and a warm aluminum piston is brought to 20 °C', () => {
  const cold = poolReadings(
    new Written().add('measurement', { ...gap('2.5580 in'), instrument: 'micrometer' }).job().measurements,
    bench,
  );
  expect(to(cold.quantity, 'in')).toBeCloseTo(2.5577, 9);
  const warm = poolReadings(
    new Written()
      .add('measurement', {
        ...gap('65.000 mm'),
        instrument: 'mike',
        temperature: w('30 °C'),
        material: 'aluminum',
      })
      .job().measurements,
    new Written().add('instrument', tool('mike', 'micrometer', '0.001 mm', '0.004 mm')).shop(),
  );
  // the gauge room's own example: steel micrometer at the same temperature
  expect(to(warm.quantity, 'mm')).toBeCloseTo(64.9935, 4);
});

test('a tool that is not on the list gives no uncertainty, and the decision says so', () => {
  const [group] = door(new Written().add('measurement', gap('0.020 in', { instrument: 'borrowed' })).job(), {
    shop: bench,
  }).readingGroups;
  const decision = decisionOf(group!, { max: w('0.030 in'), origin: sheet() });
  expect(group!.u).toBe(0);
  expect(decision?.words).toContain('No uncertainty was given');
});

describe('what bounds a reading', () => {
  test('the maker’s sheet overrides a figure of the class written beside the reading, not the maker’s own', () => {
    const ofClass = { max: w('0.030 in'), origin: { from: 'rule of thumb' as const, detail: 'class' } };
    const own = { max: w('0.035 in'), origin: sheet('another page') };
    const job = new Written()
      .add('measurement', gap('0.028 in', { limit: ofClass }))
      .add('measurement', gap('0.028 in', { limit: own, place: 'second ring' }))
      .add('spec', {
        spec: 'ring-end-gap-reject',
        label: 'Ring gap reject',
        line: 'ring gap reject .025 in',
        value: w('0.025 in'),
        origin: sheet(),
      })
      .job();
    const [first, second] = door(job, { shop: bench }).limits;
    expect(first!.limit?.max?.written).toBe('0.025 in');
    expect(first!.ofClass).toBe(false);
    expect(second!.limit?.max?.written).toBe('0.035 in');
  });

  test('a reject size of the crankpin is the least, as the vocabulary says, not the most', () => {
    const job = new Written()
      .add('spec', {
        spec: 'crankpin-reject',
        label: 'Crankpin reject',
        line: 'crankpin reject .870 in',
        value: w('0.870 in'),
        origin: sheet(),
      })
      .add('measurement', { ...gap('0.875 in'), measure: 'crankpin-diameter', title: 'Crankpin diameter' })
      .job();
    const [answer] = door(job, { shop: bench }).limits;
    expect(answer!.limit).toMatchObject({ min: { written: '0.870 in' } });
    expect(answer!.limit?.max).toBeUndefined();
    expect(answer!.decision?.verdict).toBe('pass');
  });

  test('class figures are marked as not this engine’s, and relative ones bind nothing', () => {
    const measure = (id: string) => catalog.measurements.find((m) => m.id === id)!;
    const limits = catalog.measurements.flatMap((m) => classLimits(m, {}));
    expect(limits.length).toBeGreaterThan(40);
    for (const { limit } of limits) expect(limit.origin.detail).toContain("not this engine's");
    expect(classLimits(measure('bore-diameter'), {})).toEqual([]);
    expect(classLimits(measure('head-flatness'), {})[0]!.limit.max?.written).toBe('0.003 in');
    expect(classLimits(measure('valve-margin'), {})[0]!.limit.min?.written).toBe('0.015625 in');
  });
});

describe('what would settle it', () => {
  test('names the shop’s finer tool of the right sort, not feelers for a bore', () => {
    const job = new Written()
      .add('measurement', {
        measure: 'bore-diameter',
        title: 'Bore',
        value: w('2.5651 in'),
        instrument: 'telescoping',
        limit: { max: w('2.5655 in'), origin: sheet() },
      })
      .job();
    const [answer] = door(job, { shop: bench }).limits;
    expect(answer!.decision?.verdict).toBe('cannot-decide');
    expect(answer!.settled?.inShop.map((i) => i.tool)).toEqual(['dial-bore']);
    expect(answer!.settled?.words).toBe('The dial bore gauge (± 0.0003 in) would settle it.');
  });

  test('says how fine a tool it takes when none on the list is', () => {
    const job = new Written()
      .add('measurement', gap('0.0298 in', { limit: { max: w('0.030 in'), origin: sheet() } }))
      .job();
    expect(door(job, { shop: bench }).limits[0]!.settled?.words).toMatch(/it takes ± 0\.00024 in/);
  });
});
