import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../../../src/catalog/index.js';
import { nextSize, skirtMeasure } from '../../../../src/job/index.js';
import { to } from '../../../../src/quantity/index.js';
import { door } from '../../door.js';
import { bench, sheet, Written, w } from './measured.js';

const catalog = builtInCatalog();
const heights = ['top of ring travel', 'middle', 'bottom'];
const directions = ['along the crankshaft', 'across the crankshaft'];
const worn = [
  [2.5652, 2.5656],
  [2.5636, 2.5638],
  [2.5628, 2.5627],
];

function read(
  log: Written,
  sizes: readonly (readonly (number | undefined)[])[],
  instrument = 'dial-bore',
): Written {
  for (const [i, row] of sizes.entries())
    for (const [j, size] of row.entries())
      if (size !== undefined)
        log.add('measurement', {
          measure: 'bore-diameter',
          title: 'Bore',
          value: w(`${size} in`),
          place: heights[i]!,
          direction: directions[j]!,
          instrument,
          phase: 'as-found',
        });
  return log;
}
const spec = (log: Written, id: string, value: string) =>
  log.add('spec', { spec: id, label: id, line: `${id} ${value}`, value: w(value), origin: sheet() });
const bore = (log: Written) => door(log.job(), { shop: bench }).bores[0]!;

describe('a bore read at heights and directions', () => {
  test('gives wear, taper and out-of-round, each against the maker’s line or a class figure marked so', () => {
    const log = spec(spec(new Written(), 'bore-standard', '2.5625 in'), 'bore-taper-limit', '0.002 in');
    const { figures } = bore(read(log, worn));
    expect(figures.map((f) => [f.title, Number(to(f.quantity, 'in').toFixed(6)), f.limit?.ofClass])).toEqual([
      ['Wear', 0.0031, true],
      ['Taper', 0.0029, false],
      ['Out of round', 0.0004, true],
    ]);
    expect(figures[0]!.limit?.origin.detail).toContain("not this engine's");
    expect(figures[1]!.where).toBe('across the crankshaft');
  });

  test('is decided by the reject size whatever the standard is said to be', () => {
    fc.assert(
      fc.property(fc.double({ min: 2.55, max: 2.56, noNaN: true }), (standard) => {
        const log = spec(new Written(), 'bore-reject', '2.5650 in');
        spec(log, 'bore-standard', `${standard.toFixed(5)} in`);
        return bore(read(log, worn)).figures[0]!.decision?.verdict === 'fail';
      }),
      { seed: 7, numRuns: 20 },
    );
  });

  test('names what was not read yet, and tells nothing before', () => {
    const { map, missing, figures } = bore(read(new Written(), [[2.565, undefined], [2.564, 2.5642], []]));
    expect(map).toBeUndefined();
    expect(figures).toEqual([]);
    expect(missing).toEqual(['top of ring travel, across the crankshaft']);
  });

  test('without a standard size makes no verdict on wear, and says what stands in', () => {
    const { standard, figures } = bore(read(new Written(), worn));
    expect(standard).toMatchObject({ guessed: true, size: expect.closeTo(2.5627, 9) });
    expect(figures[0]!.decision).toBeUndefined();
  });

  test('a reading that cannot belong to it is said, never thrown', () => {
    const log = spec(new Written(), 'bore-standard', '2.5625 in');
    const { cannot, map } = bore(read(log, [[2.9, 2.5656], ...worn.slice(1)]));
    expect(map).toBeUndefined();
    expect(cannot).toContain('more than 5 % off the standard');
  });

  test('read again with a better tool, the better readings stand', () => {
    const log = spec(new Written(), 'bore-reject', '2.5653 in');
    read(log, worn, 'telescoping');
    expect(bore(log).figures[0]!.decision?.verdict).toBe('cannot-decide');
    expect(bore(log).figures[0]!.settled?.neededU).toBeGreaterThan(0);
    read(log, [[2.5652, 2.566], ...worn.slice(1)], 'dial-bore');
    const again = bore(log);
    expect(again.instruments.map((i) => i.tool)).toEqual(['dial-bore']);
    expect(again.figures[0]!.decision?.verdict).toBe('fail');
  });
});

describe('boring', () => {
  const plan = { oversizes: [0.01, 0.02], cleanUp: 0.002, center: 'worn' } as const;
  const log = spec(new Written(), 'bore-standard', '2.5625 in');
  read(log, worn);

  test('the next size leaves stock beyond the wear; on the old center it must take twice the wear', () => {
    const next = nextSize(bore(log), plan, { job: log.job(), catalog })!;
    expect(next.answer.choice).toMatchObject({ oversize: 0.01, finished: expect.closeTo(2.5725, 9) });
    const old = nextSize(
      bore(log),
      { ...plan, center: 'old', oversizes: [0.005, 0.02] },
      { job: log.job(), catalog },
    )!;
    expect(old.answer.choice?.oversize).toBe(0.02);
  });

  test('with the skirt read, the clearance of an equally larger piston follows', () => {
    log.add('measurement', { measure: skirtMeasure, title: 'Skirt', value: w('2.5590 in') });
    const { clearance } = nextSize(bore(log), plan, { job: log.job(), catalog })!;
    expect(to(clearance!.quantity, 'in')).toBeCloseTo(0.0035, 9);
    expect(clearance!.limit.ofClass).toBe(true);
  });
});

test('a bore beyond the maker’s limit keeps Measure open until it is decided about; a class figure never does', () => {
  const at = (log: Written) => {
    return door(log.job()).gates.find(({ stage }) => stage === 'measure')!.missing;
  };
  const standard = () => read(spec(new Written(), 'bore-standard', '2.5600 in'), worn);
  expect(at(standard())).toEqual([]);
  const log = spec(standard(), 'bore-taper-limit', '0.002 in');
  expect(at(log)).toEqual([expect.stringMatching(/^decide about Taper: as read, 0\.0029 in/)]);
  log.add('decision', {
    about: 'measurement',
    which: 'bore-taper',
    title: 'Taper',
    choice: 'recondition',
    reason: 'bore',
  });
  expect(at(log)).toEqual([]);
});
