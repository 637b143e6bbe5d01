import { execFileSync, spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { bundled } from '../scripts/bundled.mjs';
import { archiveName, makeArchive, makeFolder } from '../scripts/portable.mjs';
import { jobA, note, openEntry } from './server/support.js';
import { ended, lineOf } from './support/built-cli.js';
import { campaign } from './support/campaign.js';

/** The folder of `npm run package` on a machine that has nothing: no Node on the path, no variables, a new home. */
const dir = mkdtempSync(join(tmpdir(), 'wristpin packaged-'));
const made = join(dir, 'made', 'Wristpin');
const home = join(dir, 'home');
const path = join(dir, 'path');
const env = { PATH: path, HOME: home };
const folder = join(dir, 'desk', 'Wristpin');
const whole = campaign(0, 1) === 1;

/** A new copy in place of the one that is there: out of the archive, or, in the short form, of the folder itself. */
function unpack(): void {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(join(dir, 'desk'), { recursive: true });
  if (whole) execFileSync('tar', ['-xf', join(dir, archiveName(made)), '-C', join(dir, 'desk')]);
  else cpSync(made, folder, { recursive: true });
}

const command = () => join(folder, 'wristpin');
const run = (...args: readonly string[]) =>
  spawnSync(command(), args, { env, cwd: home, encoding: 'utf8', timeout: 120_000 });

/** As a double click starts it: without a word. */
async function open() {
  const child = spawn(command(), [], { env, cwd: home, stdio: ['ignore', 'pipe', 'pipe'] });
  const [, url = ''] = await lineOf(child, /Wristpin is open at (\S+)/);
  const stop = async () => {
    child.kill('SIGTERM');
    return (await ended(child)).code;
  };
  return { url, stop };
}

const lines = async (url: string) =>
  ((await (await fetch(`${url}/api/jobs/${jobA}/entries`)).json()) as { entries: { body: object }[] })
    .entries;

beforeAll(() => {
  for (const each of [home, path]) mkdirSync(each, { recursive: true });
  makeFolder(made);
  if (whole) makeArchive(made, join(dir, archiveName(made)));
  unpack();
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

describe.skipIf(process.platform === 'win32')('the packaged folder, where nothing is installed', () => {
  test('finds no Node on the path', () => {
    expect(spawnSync('/bin/sh', ['-c', 'command -v node'], { env }).status).not.toBe(0);
  });

  test('tells its commands, also through a link to it', () => {
    const { status, stdout } = run('--help');
    expect(status).toBe(0);
    expect(stdout).toContain('Usage: wristpin COMMAND');
    // a link is read by a program of the system: the only one that is asked
    const link = join(dir, 'bench');
    symlinkSync(join('desk', 'Wristpin', 'wristpin'), link);
    const linked = spawnSync(link, ['--version'], {
      env: { ...env, PATH: '/usr/bin:/bin' },
      encoding: 'utf8',
    });
    expect(linked.stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  test('has every library that runs, and nothing of the workshop', () => {
    const { dependencies, devDependencies } = JSON.parse(readFileSync('package.json', 'utf8'));
    const asked = Object.keys(dependencies).filter((name) => !bundled.includes(name));
    const program = join(folder, 'program');
    const script = `import 'reflect-metadata'; for (const name of ${JSON.stringify(asked)}) await import(name); console.log('all')`;
    writeFileSync(join(program, 'asks.mjs'), script);
    const node = join(folder, 'runtime', 'node');
    const { stdout, stderr } = spawnSync(node, [join(program, 'asks.mjs')], { env, encoding: 'utf8' });
    expect([stdout, stderr]).toEqual(['all\n', '']);
    const here = Object.keys(devDependencies).filter((name) =>
      existsSync(join(program, 'node_modules', name)),
    );
    expect(here).toEqual([]);
    for (const name of ['src', 'test', 'scripts']) expect(existsSync(join(program, name))).toBe(false);
  });

  test('opens without a word, keeps what is written in the home folder, and goes on after the folder is replaced', async () => {
    const first = await open();
    expect(await (await fetch(first.url)).text()).toContain('<div id="root">');
    const sent = await fetch(`${first.url}/api/entries`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: first.url },
      body: JSON.stringify({ entries: [openEntry(1, 12), note(2, 'Flywheel key sheared.')] }),
    });
    expect(sent.status).toBe(200);
    expect(await first.stop()).toBe(0);
    unpack();
    const second = await open();
    expect((await lines(second.url)).at(-1)?.body).toMatchObject({ words: 'Flywheel key sheared.' });
    expect(await second.stop()).toBe(0);
    const data =
      process.platform === 'darwin' ? 'Library/Application Support/Wristpin' : '.local/share/wristpin';
    expect(statSync(join(home, data, 'shop.db')).size).toBeGreaterThan(0);
  });

  test('a second double click shows the page that is open, and begins nothing', async () => {
    const first = await open();
    const again = run();
    expect(again.status).toBe(0);
    expect(again.stdout).toContain(`Wristpin is open already at ${first.url}`);
    expect(await first.stop()).toBe(0);
  });

  test.runIf(process.platform === 'linux')('brings the page up in the system’s own browser', async () => {
    const opener = join(path, 'xdg-open');
    writeFileSync(opener, '#!/bin/sh\nprintf %s "$1" > "$HOME/shown"\n');
    chmodSync(opener, 0o755);
    const { url, stop } = await open();
    await expect
      .poll(() => existsSync(join(home, 'shown')) && readFileSync(join(home, 'shown'), 'utf8'))
      .toBe(url);
    expect(await stop()).toBe(0);
    rmSync(opener);
  });

  // each loads another library: the printer, the eye for pictures, the two ears
  test('prints, sees and hears', () => {
    const sound = join(folder, 'program', 'demo', 'sounds', 'pump-after.wav');
    writeFileSync(join(home, 'phrases.txt'), 'spark strong\ngo back\n');
    for (const args of [
      ['demo', 'load'],
      ['record', '17', '--pdf', 'record.pdf'],
      ['mat', '--pdf', 'mat.pdf'],
      ['listen', sound, '--strokes', '4'],
      ['hear', sound, '--phrases', 'phrases.txt'],
      ['verify'],
    ]) {
      const { status, stderr } = run(...args);
      expect([args[0], status, stderr]).toEqual([args[0], 0, '']);
    }
    expect(statSync(join(home, 'record.pdf')).size).toBeGreaterThan(20_000);
  });

  test('is at most 100 MB to fetch, 250 MB on the disk', () => {
    const files = readdirSync(made, { recursive: true, encoding: 'utf8' }).map((file) =>
      statSync(join(made, file)),
    );
    expect(files.reduce((sum, { size }) => sum + size, 0)).toBeLessThan(250e6);
    if (whole) expect(statSync(join(dir, archiveName(made))).size).toBeLessThan(100e6);
  });
});
