import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { withPacks } from '../../src/catalog/index.js';
import { adviseCase, fold, readCase } from '../../src/job/index.js';
import { door } from '../job/door.js';
import { jobId, log } from '../job/entries.js';

const text = readFileSync(new URL('auger.yaml', import.meta.url), 'utf8');
const { catalog, packs } = withPacks([{ file: 'auger.yaml', text }]);

describe('a new use comes by a pack alone', () => {
  test('the loader takes it', () => {
    expect(packs[0]!.problems).toEqual([]);
    expect(catalog.uses.at(-1)!.name).toBe('Earth auger');
  });

  test('its pieces are fitted where it is said, and nowhere else', () => {
    const pieces = (use: string) =>
      adviseCase(catalog, readCase(catalog, { facts: { architecture: 'two-stroke', use }, seen: [] })).pieces;
    expect(pieces('auger')['auger-bit']).toBe('fitted');
    expect(pieces('saw')['auger-bit']).toBe('not fitted');
  });

  test('its complaint leads to its own look, and the look to its fault', () => {
    const asked = {
      facts: { architecture: 'two-stroke', use: 'auger' },
      complaints: ['auger-will-not-bore'],
    };
    const first = adviseCase(catalog, readCase(catalog, { ...asked, seen: [] }));
    expect(first.next[0]!.check).toBe('auger-bit-look');
    const seen = [{ check: 'auger-bit-look', outcomes: ['worn'] }];
    const after = adviseCase(catalog, readCase(catalog, { ...asked, seen }));
    expect(after.faults[0]).toMatchObject({ id: 'auger-edges-worn' });
    expect(after.faults[0]!.probability).toBeGreaterThan(0.9);
  });

  test('its safety point bars the hand-over until it was shown', () => {
    const { add, lines } = log();
    add('open', { tag: 7, title: 'invented' });
    add('intake', { machine: 'invented auger', architecture: 'two-stroke', use: 'auger' });
    add('run-up', { item: 'second-way-to-stop', title: 'A second way to stop', result: 'ok' });
    const blocks = () =>
      door(fold(jobId, lines), { catalog }).gates.find((g) => g.stage === 'hand-over')!.blocks;
    const point = 'not shown to be safe: The bit stands at idle and when the throttle is let go';
    expect(blocks()).toContain(point);
    add('run-up', { item: 'auger-stands-at-idle', title: 'The bit stands', result: 'ok' });
    expect(blocks()).not.toContain(point);
  });
});
