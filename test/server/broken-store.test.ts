import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { beforeEach, describe, expect, test } from 'vitest';
import { openSqlite } from '../../src/store/index.js';
import { cliWithFolder, ended, startServe } from '../support/built-cli.js';
import { jobA, note, openEntry } from './support.js';

const { cli, inFolder } = cliWithFolder();
let file: string;
beforeEach(() => {
  file = inFolder('shop.db');
});

const serve = () => cli.run(['serve', '--port', '0', '--store', file]);

async function fill(): Promise<Buffer> {
  const store = await openSqlite(file, { now: () => '2026-03-02T09:00:00.000Z' });
  await store.append([
    openEntry(1, 12),
    ...Array.from({ length: 400 }, (_, i) => note(2 + i, 'w'.repeat(300))),
  ]);
  await store.close();
  return readFileSync(file);
}

describe('a store’s file that is broken is named and left as it is', () => {
  const cases: readonly [string, (whole: Buffer) => Buffer][] = [
    ['a text', () => Buffer.from('not a database\n'.repeat(100))],
    ['cut short', (whole) => whole.subarray(0, whole.length / 2)],
    ['zeros at its head', (whole) => Buffer.concat([Buffer.alloc(4096), whole.subarray(4096)])],
    [
      'noise in its middle',
      (whole) => Buffer.concat([whole.subarray(0, 8192), Buffer.alloc(16_384, 0xa5), whole.subarray(24_576)]),
    ],
  ];

  test.each(cases)('%s', async (_title, damage) => {
    const broken = damage(await fill());
    writeFileSync(file, broken);
    const { code, out, err } = await serve();
    expect(code).toBe(1);
    expect(out).toBe('');
    expect(err).toContain(file);
    expect(err).toMatch(/^wristpin: \S.*\.\n$/);
    expect(err).not.toMatch(/\bat .*:\d+:\d+/);
    expect(Buffer.compare(readFileSync(file), broken)).toBe(0);
  });
});

test('a folder in the store’s place is said to be one', async () => {
  mkdirSync(file);
  const { code, err } = await serve();
  expect(code).toBe(1);
  expect(err).toContain(file);
});

test('damage that appears while the server runs is answered, not hidden', async () => {
  await fill();
  const { child, url } = await startServe(cli, ['--store', file]);
  const whole = readFileSync(file);
  writeFileSync(file, Buffer.concat([whole.subarray(0, 4096), Buffer.alloc(whole.length - 4096, 0xa5)]));
  const answer = await fetch(`${url}/api/jobs/${jobA}/entries`);
  expect(answer.status).toBe(500);
  const { error } = (await answer.json()) as { error: { code: string; message: string } };
  expect(error.code).toBe('corrupt');
  expect(error.message).toMatch(/backup/);
  child.kill('SIGTERM');
  await ended(child);
  expect(existsSync(file)).toBe(true);
});
