import { expect, test } from 'vitest';
import { builtInCatalog } from '../../../../src/catalog/index.js';
import { bandWords, fold, type RawEntry, written } from '../../../../src/job/index.js';
import { door } from '../../door.js';
import { jobId, length, log } from '../../entries.js';

const _catalog = builtInCatalog();

function engine(release: boolean | undefined, psi?: string) {
  const { add, lines } = log();
  add('open', { tag: 4, title: '' });
  add('intake', {
    architecture: 'overhead-valve',
    starter: 'rope',
    ...(release !== undefined && { variants: { 'automatic-release': release } }),
  });
  add('identity', {
    how: 'measured',
    bore: length('65 mm'),
    stroke: length('62 mm'),
    leavesOpen: 'the maker',
  });
  if (psi)
    add('measurement', { measure: 'compression', title: 'Compression', value: written(psi, 'pressure') });
  return { add, lines };
}

const leaks = (lines: readonly RawEntry[]): number => {
  const answer = door(fold(jobId, lines)).findings;
  if (answer.state !== 'answered') throw new Error(answer.words);
  return answer.findings.faults.find(({ id }) => id === 'valve-not-sealing')!.posterior;
};

test('a reading is held against what this engine’s own geometry should show, not against its class', () => {
  const { lines } = engine(false, '60 psi');
  const answer = door(fold(jobId, lines)).compression!;
  expect(bandWords(answer.expected)).toMatch(/^\d+ to \d+ psi, likely \d+$/);
  expect(answer.reading!.says.informative).toBe(true);
  expect(leaks(lines)).toBeGreaterThan(2 * leaks(engine(false).lines));
  expect(leaks(engine(false, '165 psi').lines)).toBeLessThan(leaks(engine(false).lines));
});

test.each([true, undefined])('where an automatic release may act (%s) the gauge moves nothing', (release) => {
  const { lines } = engine(release, '60 psi');
  expect(door(fold(jobId, lines)).compression!.reading!.says.informative).toBe(false);
  expect(leaks(lines)).toBeCloseTo(leaks(engine(release).lines), 12);
});

test('without bore and stroke nothing is computed and the tapped outcome counts as before', () => {
  const { add, lines } = log();
  add('intake', { architecture: 'overhead-valve' });
  add('measurement', { measure: 'compression', title: 'Compression', value: written('60 psi', 'pressure') });
  expect(door(fold(jobId, lines)).compression).toBeUndefined();
});

test('the reading stands in place of the outcome tapped for it within the hour, so that it counts once', () => {
  const { add, lines } = engine(false, '60 psi');
  const alone = leaks(lines);
  add('observation', { check: 'compression-dry', title: 'Compression', outcomes: ['down-forty-percent'] });
  expect(leaks(lines)).toBeCloseTo(alone, 12);
});
