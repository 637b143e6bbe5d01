import { describe, expect, it } from 'vitest';
import { expectedCompression } from '../../src/engine/cranking/expected.js';
import { generatorHz } from '../../src/engine/speeds.js';

const psi = 6894.757;

/** Ranges of the trade for engines in use: they must meet the bands of sound engines, not agree with them. */
describe('usual compression readings, common practice', () => {
  const band = (
    architecture: 'side-valve' | 'overhead-valve' | 'two-stroke',
    boreMm: number,
    strokeMm: number,
    release: 'none' | 'fitted' = 'none',
  ) => {
    const { lowPa, highPa, likelyPa } = expectedCompression(
      { architecture, boreMm, strokeMm, release },
      { by: 'rope' },
    );
    return { low: lowPa / psi, likely: likelyPa / psi, high: highPa / psi };
  };
  const meets = ({ low, high }: { low: number; high: number }, from: number, to: number) =>
    low < to && high > from;

  it('side-valve without release 60 to 90 psi: the band holds all of it; the likely reading of a sound one stands up to an eighth over it', () => {
    for (const [boreMm, strokeMm] of [
      [65, 62],
      [60.3, 44.5],
    ] as const) {
      const { low, likely, high } = band('side-valve', boreMm, strokeMm);
      expect(low).toBeLessThan(65);
      expect(high).toBeGreaterThan(90);
      expect(likely).toBeGreaterThan(60);
      expect(likely).toBeLessThan((9 / 8) * 90);
    }
  });
  it('overhead valve without release 100 to 140 psi, the likely reading among them', () => {
    for (const [boreMm, strokeMm] of [
      [68, 54],
      [65, 62],
    ] as const) {
      const { likely } = band('overhead-valve', boreMm, strokeMm);
      expect(likely).toBeGreaterThan(100);
      expect(likely).toBeLessThan(140);
    }
  });
  it('two-stroke 90 to 150 psi, the likely reading among them', () => {
    const { likely } = band('two-stroke', 46, 34);
    expect(likely).toBeGreaterThan(90);
    expect(likely).toBeLessThan(150);
  });
  it('with release 35 to 65 (side-valve) and 50 to 90 psi (overhead valve)', () => {
    expect(meets(band('side-valve', 65, 62, 'fitted'), 35, 65)).toBe(true);
    expect(meets(band('overhead-valve', 68, 54, 'fitted'), 50, 90)).toBe(true);
  });
});

describe('public manual excerpts, read second-hand', () => {
  it('engines of about 3 hp read 60 to 75 psi, the lowest never under 25: inside the release’s to the tight engine’s band', () => {
    const small = { architecture: 'side-valve', boreMm: 60.3, strokeMm: 44.5 } as const;
    const tight = expectedCompression({ ...small, release: 'none' }, { by: 'rope' });
    expect(tight.lowPa / psi).toBeLessThan(75);
    expect(tight.highPa / psi).toBeGreaterThan(60);
    const releasing = expectedCompression({ ...small, release: 'fitted' }, { by: 'rope' });
    expect(releasing.highPa / psi).toBeGreaterThan(25);
  });
  it('a two-pole generator set to 62 Hz without load turns 3720 rpm', () =>
    expect(generatorHz(3720, 2)).toBe(62));
});
