import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../../../src/catalog/index.js';
import { faceHandle, milled } from '../../../../src/job/index.js';
import { to } from '../../../../src/quantity/index.js';
import { door } from '../../door.js';
import { bench, sheet, Written, w } from './measured.js';

const catalog = builtInCatalog();
const xs = [0, 30, 60];
const ys = [0, 40, 80];

describe('a face read place by place', () => {
  const heights = [
    [0, 2, -1],
    [3, 5, 1],
    [-2, 4, 0],
  ];
  const log = () => {
    const written = new Written();
    for (const [i, xMm] of xs.entries())
      for (const [j, yMm] of ys.entries())
        written.add('measurement', {
          measure: faceHandle('head-flatness', 'height'),
          title: 'Head face, height',
          value: w(`${heights[i]![j]} µm`),
          place: `${xMm}, ${yMm} mm`,
          spot: { xMm, yMm },
        });
    return written;
  };

  test('heights of the published example give its minimum zone and its least squares', () => {
    const [answer] = door(log().job(), { shop: bench }).faces;
    expect(answer!.face!.minimumZone.width).toBeCloseTo(6.5, 6);
    expect(answer!.face!.leastSquares.peakToValley).toBeCloseTo(7.333, 3);
    expect(answer!.figure).toMatchObject({ measure: 'head-flatness', limit: { ofClass: true } });
  });

  test('too few places are said, not thrown', () => {
    const written = new Written().add('measurement', {
      measure: faceHandle('head-flatness', 'height'),
      title: 'Head face',
      value: w('1 µm'),
      spot: { xMm: 0, yMm: 0 },
    });
    const [answer] = door(written.job(), { shop: bench }).faces;
    expect(answer!.cannot).toContain('at least 4 points');
  });

  test('gaps along rows and columns alone never see twist, and the answer says to lay it on the diagonals', () => {
    const gaps = new Written();
    const lay = (name: string, at: readonly (readonly [number, number])[]) => {
      for (const [i, [xMm, yMm]] of at.entries())
        gaps.add('measurement', {
          measure: faceHandle('head-flatness', 'gap'),
          title: 'gap',
          value: w(i === 1 ? '0.006 in' : '0 in'),
          spot: { xMm, yMm },
          direction: name,
          instrument: 'feelers',
        });
    };
    for (const y of ys) {
      lay(
        `row ${y}`,
        xs.map((x) => [x, y]),
      );
    }
    for (const x of xs) {
      lay(
        `column ${x}`,
        ys.map((y) => [x, y]),
      );
    }
    expect(door(gaps.job(), { shop: bench }).faces[0]!.cannot).toContain('diagonals');
    lay('one diagonal', [
      [0, 0],
      [30, 40],
      [60, 80],
    ]);
    lay('other diagonal', [
      [0, 80],
      [30, 40],
      [60, 0],
    ]);
    const [answer] = door(gaps.job(), { shop: bench }).faces;
    expect(answer!.points).toHaveLength(9);
    expect(answer!.figure!.decision).toBeDefined();
  });

  test('what comes off the head raises the compression ratio', () => {
    const written = log();
    expect(milled({ job: written.job(), catalog }, 0.2)).toBeUndefined();
    written.add('identity', { how: 'measured', bore: w('66 mm'), stroke: w('57 mm'), leavesOpen: '' });
    expect(milled({ job: written.job(), catalog }, 0.2)).toMatchObject({ lostCc: expect.closeTo(0.684, 3) });
    written.add('spec', {
      spec: 'compression-ratio',
      label: 'Compression ratio',
      line: 'compression ratio 8.5',
      value: { written: '8.5', kind: 'ratio', si: 8.5, unit: '1' },
      origin: sheet(),
    });
    // 195.0 cc over 26.0 cc; 26.0 − 0.684 leaves 25.32: 1 + 195.0/25.32
    expect(milled({ job: written.job(), catalog }, 0.2)!.ratio!.after).toBeCloseTo(8.703, 2);
    expect(milled({ job: written.job(), catalog }, 20)!.ratio).toBeUndefined();
  });
});

describe('a valve', () => {
  const clearance = (value: string, place: string) => ({
    measure: 'valve-clearance-side-valve',
    title: 'Valve clearance',
    value: w(value),
    place,
    instrument: 'feelers',
    limit: { min: w('0.005 in'), max: w('0.009 in'), origin: sheet() },
  });
  const found = (log: Written) => door(log.job(), { shop: bench }).valves;

  test('tight is ground half first, wide never, unclear is measured again', () => {
    const [intake, exhaust] = found(
      new Written()
        .add('measurement', clearance('0.002 in', 'intake'))
        .add('measurement', clearance('0.016 in', 'exhaust')),
    );
    expect(intake!.stem).toMatchObject({ action: 'shorten stem', firstCut: expect.closeTo(0.0025, 9) });
    expect(exhaust!.stem).toMatchObject({ action: 'cut seat or fit another valve', remove: 0 });
    const [unclear] = found(new Written().add('measurement', clearance('0.0051 in', 'intake')));
    expect(unclear!.stem!.action).toBe('measure better');
  });

  test('without the maker’s range the class stands in and is marked', () => {
    const { limit: _, ...bare } = clearance('0.002 in', 'exhaust');
    const [answer] = found(new Written().add('measurement', bare));
    expect(answer).toMatchObject({
      ofClass: true,
      min: expect.closeTo(0.007, 9),
      max: expect.closeTo(0.011, 9),
    });
  });

  test('the latest reading stands, with the one before it', () => {
    const [answer] = found(
      new Written()
        .add('measurement', clearance('0.002 in', 'intake'))
        .add('measurement', { ...clearance('0.007 in', 'intake'), phase: 'after' }),
    );
    expect(to(answer!.answer.group.quantity, 'in')).toBeCloseTo(0.007, 9);
    expect(answer!.before).toBeCloseTo(0.002, 9);
    expect(answer!.decision.verdict).toBe('pass');
  });
});
