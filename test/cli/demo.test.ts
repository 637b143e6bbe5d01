import { beforeAll, expect, test } from 'vitest';
import { openSqlite } from '../../src/store/index.js';
import { jobB, openEntry } from '../server/support.js';
import { cliWithFolder, ended, startServe } from '../support/built-cli.js';

const { cli, inFolder } = cliWithFolder('the file');
let store: string[];
beforeAll(async () => {
  store = ['--store', inFolder('shop.db')];
});

interface Listed {
  readonly id: string;
  readonly summary: { readonly invented: boolean; readonly tag: number };
}
const jobs = async (): Promise<Listed[]> =>
  JSON.parse((await cli.run(['jobs', '--json', ...store])).out).jobs;

test('the invented job that is shipped is loaded by one act, prints its record, and is whole', async () => {
  const loaded = await cli.run(['demo', 'load', ...store]);
  expect(loaded.code, loaded.err).toBe(0);
  const list = await jobs();
  expect(list.length).toBeGreaterThan(0);
  expect(list.every(({ summary }) => summary.invented)).toBe(true);
  const verified = await cli.run(['verify', '--json', ...store]);
  expect(JSON.parse(verified.out)).toMatchObject({ ok: true, problems: [] });
  for (const { id } of list) {
    const printed = await cli.run(['record', id, '--pdf', inFolder(`${id}.pdf`), ...store]);
    expect(printed.code, printed.err).toBe(0);
  }
});

test('loaded again it changes nothing', async () => {
  const before = await jobs();
  const again = await cli.run(['demo', 'load', ...store]);
  expect(again.out).toContain('nothing new');
  expect(await jobs()).toEqual(before);
});

test('removed it is gone, and the shop’s own job stays', async () => {
  const shop = await openSqlite(inFolder('shop.db'), { now: () => '2026-03-02T09:00:00.000Z' });
  await shop.append([openEntry(1, 7, jobB)]);
  await shop.close();
  expect((await cli.run(['demo', 'remove', ...store])).code).toBe(0);
  expect((await jobs()).map(({ id }) => id)).toEqual([jobB]);
  const verified = await cli.run(['verify', '--json', ...store]);
  expect(JSON.parse(verified.out)).toMatchObject({ ok: true, entries: 1, pictures: 0 });
});

test('serve --demo opens with it', async () => {
  const { child, url } = await startServe(cli, ['--demo', '--store', inFolder('second.db')]);
  const { jobs: list } = (await (await fetch(`${url}/api/jobs`)).json()) as { jobs: Listed[] };
  expect(list.some(({ summary }) => summary.invented)).toBe(true);
  child.kill('SIGTERM');
  expect((await ended(child)).code).toBe(0);
});
