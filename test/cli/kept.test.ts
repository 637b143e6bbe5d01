import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { expect, test } from 'vitest';
import { openSqlite } from '../../src/store/index.js';
import { entry, openEntry, picture, uuid } from '../server/support.js';
import { cliWithFolder, ended, startServe } from '../support/built-cli.js';

const { cli, inFolder } = cliWithFolder();
const clock = { now: () => '2026-03-02T09:00:00.000Z' };
const job = '0190b0a0-0000-7000-8000-00000000000a';

async function fill(file: string): Promise<void> {
  const bytes = await picture('jpeg');
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const store = await openSqlite(file, clock);
  await store.putPicture({ sha256, mime: 'image/jpeg', width: 640, height: 480 }, bytes);
  const torque = { joint: 'head', hole: 1, pass: 1, set: { written: '18 ft-lb', si: 24.4, unit: 'ft-lb' } };
  await store.append([openEntry(1, 12, job), entry(2, 'torque', torque, job)]);
  await store.close();
}

/** Every file of a folder with its bytes and the time of its last change. */
const stateOf = (folder: string) =>
  readdirSync(folder)
    .filter((name) => statSync(`${folder}/${name}`).isFile())
    .sort()
    .map((name) => {
      const path = `${folder}/${name}`;
      return [name, statSync(path).mtimeMs, createHash('sha256').update(readFileSync(path)).digest('hex')];
    });

test('verify changes nothing: in a store, in a backup, beside them, and after a kill', async () => {
  const file = inFolder('shop.db');
  await fill(file);
  await cli.run(['backup', inFolder('backup.db'), '--store', file]);
  const store = await openSqlite(file, clock);
  await store.append([entry(3, 'note', { words: 'last' }, job)]);
  mkdirSync(inFolder('killed'));
  for (const end of ['', '-wal']) copyFileSync(file + end, inFolder('killed', `shop.db${end}`));
  await store.close();
  const before = [stateOf(inFolder()), stateOf(inFolder('killed'))];
  for (const [name, lines] of [
    ['shop.db', 3],
    ['backup.db', 2],
    ['killed/shop.db', 3],
  ] as const) {
    const { code, out, err } = await cli.run(['verify', '--json', '--store', inFolder(name)]);
    expect(code, err).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ ok: true, entries: lines, pictures: 1 });
  }
  expect([stateOf(inFolder()), stateOf(inFolder('killed'))]).toEqual(before);
  expect(readFileSync(inFolder('backup.db'))[18]).toBe(1);
});

const mounts = (() => {
  if (process.platform !== 'linux' || process.geteuid?.() !== 0) return false;
  try {
    execFileSync('unshare', ['-m', 'true'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
})();

test.skipIf(!mounts)(
  'verify and restore read a store and a backup on a medium that cannot be written',
  async () => {
    const file = inFolder('medium', 'shop.db');
    mkdirSync(inFolder('medium'));
    await fill(file);
    await cli.run(['backup', inFolder('medium', 'backup.db'), '--store', file]);
    const medium = inFolder('medium');
    execFileSync('mount', ['--bind', medium, medium]);
    try {
      execFileSync('mount', ['-o', 'remount,ro,bind', medium]);
      for (const name of ['shop.db', 'backup.db']) {
        const { code, out, err } = await cli.run(['verify', '--store', inFolder('medium', name)]);
        expect(code, err).toBe(0);
        expect(out).toContain('All of it is whole.');
      }
      const back = await cli.run(['restore', inFolder('medium', 'backup.db'), '--store', inFolder('new.db')]);
      expect(back.code, back.err).toBe(0);
    } finally {
      execFileSync('umount', [medium]);
    }
  },
);

test('one flipped bit in a torque fails the verification', async () => {
  const file = inFolder('shop.db');
  await fill(file);
  const bytes = readFileSync(file);
  const at = bytes.indexOf('18 ft-lb');
  bytes[at] = bytes[at]! ^ 0x08; // "18" reads "98"
  writeFileSync(file, bytes);
  const { code, err } = await cli.run(['verify', '--store', file]);
  expect(code).toBe(1);
  expect(err).toContain(`entry ${uuid(1002)} of job ${job}: it is not what was written`);
});

test('a backup never takes the place of a store that is open, not even by --force', async () => {
  const file = inFolder('shop.db');
  await fill(file);
  const { child, url } = await startServe(cli, ['--store', file]);
  const { code, err } = await cli.run(['backup', file, '--force', '--store', file]);
  expect(code).toBe(1);
  expect(err).toContain('the very store that was to be backed up');
  const body = JSON.stringify({ entries: [entry(9, 'note', { words: 'after' }, job)] });
  expect((await fetch(`${url}/api/entries`, { method: 'POST', body })).status).toBe(200);
  child.kill('SIGTERM');
  await ended(child);
  expect((await cli.run(['verify', '--store', file])).out).toContain('3 entries');
});

test('a restore that fails leaves nothing behind, and what a killed one left goes with the next start', async () => {
  const file = inFolder('shop.db');
  await fill(file);
  await cli.run(['backup', inFolder('backup.db'), '--store', file]);
  const bytes = readFileSync(inFolder('backup.db'));
  writeFileSync(inFolder('torn.db'), bytes.subarray(0, bytes.length - 5000));
  writeFileSync(inFolder('letter.db'), 'a letter');
  const before = readdirSync(inFolder()).sort();
  for (const from of ['torn.db', 'letter.db', 'none.db']) {
    const { code } = await cli.run(['restore', inFolder(from), '--store', inFolder('new.db')]);
    expect(code).toBe(1);
  }
  expect(readdirSync(inFolder()).sort()).toEqual(before);

  const dead = execFileSync(process.execPath, ['-e', 'process.stdout.write(String(process.pid))']).toString();
  writeFileSync(inFolder(`new.db.${dead}.0123abcd.part`), 'half a store');
  writeFileSync(inFolder(`shop.db.${dead}.0123abcd.part-journal`), 'half a journal');
  const back = await cli.run(['restore', inFolder('backup.db'), '--store', inFolder('new.db')]);
  expect(back.code, back.err).toBe(0);
  await cli.run(['jobs', '--store', file]);
  expect(readdirSync(inFolder()).filter((name) => name.includes('.part'))).toEqual([]);
  expect(existsSync(inFolder('new.db'))).toBe(true);
});

test('a title cannot steer the terminal on which the jobs are listed', async () => {
  const file = inFolder('steered.db');
  const store = await openSqlite(file, clock);
  const [esc, bell] = [27, 7].map((code) => String.fromCharCode(code));
  await store.append([{ ...openEntry(1, 12, job), body: { tag: 12, title: `Saw${esc}[2J${bell}` } }]);
  await store.close();
  const { code, out, err } = await cli.run(['jobs', '--store', file]);
  expect(code, err).toBe(0);
  expect(out).toContain('Saw');
  expect(out.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
});

test('a store that is no file is refused, and not waited for', async () => {
  const { code, err } = await cli.run(['jobs', '--store', '/dev/null']);
  expect([code, err]).toEqual([1, expect.stringContaining('/dev/null')]);
});
