import { beforeAll, expect, test } from 'vitest';
import { openSqlite } from '../../src/store/index.js';
import { entry, openEntry } from '../server/support.js';
import { cliWithFolder } from '../support/built-cli.js';

const { cli, inFolder } = cliWithFolder('the file');
beforeAll(async () => {
  const store = await openSqlite(inFolder('shop.db'), { now: () => '2026-03-02T09:00:00.000Z' });
  const seen = (n: number, check: string, ...outcomes: string[]) =>
    entry(n, 'observation', { check, title: check, outcomes });
  await store.append([
    openEntry(1, 12),
    entry(2, 'intake', { architecture: 'side-valve', use: 'mower', complaints: ['cranks-never-fires'] }),
    seen(3, 'spark-across-gap', 'none'),
    seen(4, 'spark-stop-wire-off', 'spark returns'),
  ]);
  await store.close();
});

const advise = (...args: string[]) => cli.run(['advise', ...args, '--store', inFolder('shop.db')]);

test('advise --json prints faults, explanations, checks and the worth of the machine', async () => {
  const { code, out, err } = await advise('12', '--json');
  expect(code, err).toBe(0);
  const said = JSON.parse(out);
  expect(said.faults[0]).toMatchObject({ id: 'stop-wire-grounded', matters: true });
  expect(said.faults[0].posterior).toBeGreaterThan(0.7);
  expect(said.explanations[0].faults.map((f: { id: string }) => f.id)).toContain('stop-wire-grounded');
  expect(said.checks).toHaveLength(5);
  for (const check of said.checks) {
    expect(check.minutes).toBeGreaterThan(0);
    expect(check.why).not.toBe('');
  }
  expect(said.enough.missed).toBeGreaterThan(0);
  expect(said.safety.map((s: { state: string }) => s.state)).toContain('open');
  expect(said.worth.state).toBe('answered');
});

test('for people the headline comes first and each check stands with its minutes', async () => {
  const { code, out } = await advise('12');
  expect(code).toBe(0);
  expect(out).toMatch(/^\w+ faults? explains? what you saw/);
  expect(out).toMatch(/Check next:\n {2}.*, \d+ min\. /);
});

test('a job that is not there is none', async () => {
  const { code, err } = await advise('99', '--json');
  expect(code).toBe(1);
  expect(err).toContain('There is no job “99”');
});
