import { describe, expect, it } from 'vitest';
import { feelerGap, flatness, type StraightedgeAnswer, straightedgeSurvey } from '../../src/gauge/index.js';
import { normals, times } from './seeded.js';

const places = times(9, (i) => ({ x: 50 * (i % 3), y: 40 * Math.floor(i / 3) }));
const lines = [
  [0, 1, 2],
  [3, 4, 5],
  [6, 7, 8],
  [0, 3, 6],
  [1, 4, 7],
  [2, 5, 8],
  [0, 4, 8],
  [2, 4, 6],
];

/** Gaps a straightedge shows over these heights: it rests on the two ends, or on the middle and rocks onto one end. */
function gapsOver(heights: readonly number[], [a, b, c]: readonly number[]) {
  const [za, zb, zc] = [heights[a!]!, heights[b!]!, heights[c!]!];
  const sag = (za + zc) / 2 - zb;
  const gaps = sag >= 0 ? [0, sag, 0] : [0, 0, -2 * sag];
  return [a!, b!, c!].map((point, i) => ({ point, gap: gaps[i]! }));
}

const survey = (heights: readonly number[], which = lines, u = 0.001): StraightedgeAnswer =>
  straightedgeSurvey({
    places,
    placements: which.map((line, i) => ({ name: `line ${i}`, gaps: gapsOver(heights, line) })),
    u,
  });

describe('a face surveyed with a straightedge', () => {
  it('gives back the flatness of any face it was laid on', () => {
    const draw = normals(42);
    for (let i = 0; i < 40; i += 1) {
      const heights = times(9, () => draw());
      const truth = flatness({ points: places.map((place, k) => ({ ...place, z: heights[k]! })), u: 0 });
      const found = survey(heights);
      expect(found.flatness.minimumZone.width).toBeCloseTo(truth.minimumZone.width, 9);
      expect(found.disagreement).toBeLessThan(1e-9);
      expect(found.words).toBe('The placements agree with each other.');
    }
  });

  it('gives back the heights themselves, up to tilt: a bowl is low in the middle, a dome high', () => {
    const bowl = survey([3, 3, 3, 3, 0, 3, 3, 3, 3]).flatness.above;
    expect(bowl[4]).toBeCloseTo(0, 9);
    expect(bowl[0]).toBeCloseTo(3, 9);
    const dome = survey([0, 0, 0, 0, 3, 0, 0, 0, 0]).flatness.above;
    expect(dome[4]).toBeCloseTo(3, 9);
    expect(dome[8]).toBeCloseTo(0, 9);
  });

  it('sees twist on the diagonals', () => {
    const twisted = places.map(({ x, y }) => 0.001 * (x / 50 - 1) * (y / 40 - 1));
    expect(survey(twisted).flatness.minimumZone.width).toBeCloseTo(0.002, 9);
  });

  it('refuses rows and columns alone, because they never see twist', () => {
    expect(() =>
      survey(
        times(9, () => 0),
        lines.slice(0, 6),
      ),
    ).toThrow('never see twist');
  });

  it('notices placements that contradict each other', () => {
    const heights = times(9, () => 0);
    const placements = lines.map((line, i) => ({ name: `line ${i}`, gaps: gapsOver(heights, line) }));
    placements[0]!.gaps[1]!.gap = 0.02;
    const found = straightedgeSurvey({ places, placements, u: 0.0005 });
    expect(found.disagreement).toBeGreaterThan(0.001);
    expect(found.words).toContain('contradict');
  });

  it('carries its uncertainty: the zone of noisy gaps strays by about the u it states', () => {
    const draw = normals(77);
    const bowl = [3, 3, 3, 3, 0, 3, 3, 3, 3];
    const u = 0.05;
    const widths = times(400, () => {
      const placements = lines.map((line, i) => ({
        name: `line ${i}`,
        gaps: gapsOver(bowl, line).map(({ point, gap }) => ({
          point,
          gap: Math.max(0, gap + 1 + u * draw()),
        })),
      }));
      return straightedgeSurvey({ places, placements, u });
    });
    const mean = widths.reduce((sum, { flatness: f }) => sum + f.minimumZone.width, 0) / 400;
    const sd = Math.sqrt(
      widths.reduce((sum, { flatness: f }) => sum + (f.minimumZone.width - mean) ** 2, 0) / 399,
    );
    const stated = widths.reduce((sum, { flatness: f }) => sum + f.u, 0) / 400;
    expect(sd / stated).toBeGreaterThan(0.6);
    expect(sd / stated).toBeLessThan(1.3);
  });

  it('refuses two points on a line, an unknown place and too few places', () => {
    const bad = (gaps: { point: number; gap: number }[]) => () =>
      straightedgeSurvey({ places, placements: [{ name: 'first row', gaps }], u: 0 });
    expect(
      bad([
        { point: 0, gap: 0 },
        { point: 1, gap: 0 },
      ]),
    ).toThrow('first row: two points');
    expect(bad(times(3, () => ({ point: 12, gap: 0 })))).toThrow('no place 12');
    expect(() => straightedgeSurvey({ places: places.slice(0, 3), placements: [], u: 0 })).toThrow(
      'at least 4 places',
    );
  });
});

describe('a feeler gap', () => {
  it('lies between the leaf that enters and the one that does not, anywhere with equal right', () => {
    const { gap, u } = feelerGap(0.002, 0.003);
    expect(gap).toBeCloseTo(0.0025, 12);
    expect(u).toBeCloseTo(0.001 / Math.sqrt(12), 12);
  });

  it('refuses leaves in the wrong order', () =>
    expect(() => feelerGap(0.003, 0.003)).toThrow('must be thicker'));
});
