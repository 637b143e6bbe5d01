import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { placeOf } from '../../scripts/one-at-a-time.mjs';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'wristpin-busy-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** A process of its own that writes when it begins and ends what only one may do; a letter stands for it. */
const script = (letter: string, ms: number) => `
  import { appendFileSync } from 'node:fs';
  import { setTimeout as pause } from 'node:timers/promises';
  import { oneAtATime } from ${JSON.stringify(pathToFileURL(resolve('scripts/one-at-a-time.mjs')).href)};
  const write = (words) => appendFileSync(${JSON.stringify(join(folder, 'told'))}, words);
  const folder = ${JSON.stringify(folder)};
  await oneAtATime(async () => { write('${letter}('); await pause(${ms}); write('${letter})'); }, { folder });
`;
const begin = (letter: string, ms: number) =>
  spawn(process.execPath, ['--input-type=module', '-e', script(letter, ms)], { stdio: 'ignore' });
const ended = (child: ReturnType<typeof begin>) => new Promise((done) => child.once('exit', done));
const told = () => {
  try {
    return readFileSync(join(folder, 'told'), 'utf8');
  } catch {
    return '';
  }
};

test('two commands that come at once do it one after the other', async () => {
  await Promise.all(['a', 'b', 'c'].map((letter) => ended(begin(letter, 300))));
  expect(told()).toMatch(/^(?:(\w)\(\1\)){3}$/);
});

test('one that was killed in the middle is in nobody’s way', async () => {
  const killed = begin('k', 60_000);
  await expect.poll(told).toBe('k(');
  killed.kill('SIGKILL');
  await ended(killed);
  await ended(begin('n', 1));
  expect(told()).toBe('k(n(n)');
});

test('a mark of yesterday whose number is another program’s today is nobody’s', async () => {
  const place = placeOf(folder);
  writeFileSync(place, String(process.pid));
  utimesSync(place, 0, 0);
  await ended(begin('n', 1));
  expect(told()).toBe('n(n)');
});
