import { expect, test } from 'vitest';
import { project } from '../../bench/plan/projects.js';
import { brokenLaws, endOf } from '../plan/schedule/broken-laws.js';
import { cliWithFolder } from '../support/built-cli.js';

const { solve } = cliWithFolder();

const bench = (problem: unknown, ...args: string[]) => solve('bench', problem, ...args);

const small = {
  resources: [{ id: 'mechanic', capacity: 1 }],
  activities: [
    { id: 'strip', minutes: 40, uses: { mechanic: 1 }, after: [] },
    { id: 'soak', minutes: 120, uses: {}, after: [{ id: 'strip', lag: 5 }] },
    { id: 'adjust', minutes: 30, uses: { mechanic: 1 }, after: [], earliest: 50, due: 60 },
  ],
};

test('prints start, makespan, bound and whether that is proved', async () => {
  const { code, out } = await bench(small, '--json');
  expect(code).toBe(0);
  expect(JSON.parse(out)).toEqual({
    start: { strip: 0, soak: 45, adjust: 50 },
    makespan: 165,
    bound: 165,
    optimal: true,
    late: 20,
    lateBound: 20,
  });
});

test('without --json a person can read it', async () => {
  const { out } = await bench(small);
  expect(out).toContain('Finished at minute 165; nothing is sooner. 20 minutes late in sum, at least 20.');
  expect(
    out
      .split('\n')
      .map((line) => line.trim().split(/\s+/)[1])
      .slice(0, 3),
  ).toEqual(['strip', 'soak', 'adjust']);
});

test('a project of 30 activities is planned within the time it is given, by the rules', async () => {
  const problem = project(107, { factor: 1, strength: 0.2 });
  const { code, out } = await bench(problem, '--json', '--seconds', '0.3', '--seed', '3');
  expect(code).toBe(0);
  const { start, makespan, bound } = JSON.parse(out);
  expect(brokenLaws(problem, start)).toEqual([]);
  expect(makespan).toBe(endOf(problem, start));
  expect(bound).toBeLessThanOrEqual(makespan);
});

test.each([
  [
    'a cycle',
    { ...small, activities: [{ id: 'a', minutes: 1, after: [{ id: 'a', lag: 0 }] }] },
    [],
    1,
    /a → a/,
  ],
  ['no JSON', '{', [], 1, /cannot be read as JSON/],
  ['a list', [], [], 1, /the problem/],
  ['no time at all', small, ['--seconds', '0'], 2, /--seconds takes/],
  ['a seed in words', small, ['--seed', 'seven'], 2, /--seed takes/],
])('%s is refused in one sentence', async (_, problem, args, code, words) => {
  const ran = await bench(problem, ...args);
  expect(ran.code).toBe(code);
  expect(ran.err).toMatch(words);
  expect(ran.err).not.toContain('fault of Wristpin');
  expect(ran.out).toBe('');
});
