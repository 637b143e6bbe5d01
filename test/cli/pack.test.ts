import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { openSqlite } from '../../src/store/index.js';
import { entry, openEntry } from '../server/support.js';
import { cliWithFolder } from '../support/built-cli.js';

const { cli, inFolder } = cliWithFolder();

const wristpin = (...args: string[]) =>
  cli.run(args, { cwd: inFolder(), env: { WRISTPIN_STORE: inFolder('shop.db') } });
const file = (name: string, text: string) => writeFileSync(inFolder(name), text);

const nests = `pack: { id: nests, title: Nests of this valley }
faults:
  - id: wasp-nest-in-intake
    name: Wasp nest in the intake
    when: { pieces: [carburetor] }
    presentPer100: 30
    mainCausePer100HardStarts: 0
    repair: clear the intake
    parts: []
    repairMinutes: 10
    safety: 0
    offFirst: []
    origin: { from: rule of thumb, detail: counted in an invented shop }
`;

test('a pack is checked without a store, added, listed, shown and removed; the advice knows it while it is in', async () => {
  file('nests.yaml', nests);
  const checked = await wristpin('pack', 'check', 'nests.yaml');
  expect(checked).toMatchObject({ code: 0, err: '' });
  expect(checked.out).toContain('nests.yaml is sound. “Nests of this valley”: adds 1 fault.');
  expect((await wristpin('pack', 'list')).err).toContain('There is no store'); // the check wrote nothing

  expect((await wristpin('pack', 'add', 'nests.yaml')).out).toContain('nests is in.');
  expect((await wristpin('pack', 'list')).out.trim()).toBe('nests  “Nests of this valley”: adds 1 fault');
  expect((await wristpin('pack', 'show', 'nests')).out.trim()).toBe(nests.trim());

  const store = await openSqlite(inFolder('shop.db'), { now: () => '2026-03-02T09:00:00.000Z' });
  await store.append([openEntry(1, 12), entry(2, 'intake', { architecture: 'side-valve' })]);
  await store.close();
  const known = async () =>
    JSON.parse((await wristpin('advise', '12', '--json')).out).faults.some(
      (f: { id: string }) => f.id === 'wasp-nest-in-intake',
    );
  expect(await known()).toBe(true);

  expect((await wristpin('pack', 'add', 'nests.yaml')).out).toContain('takes the place of the one before');
  expect((await wristpin('pack', 'remove', 'nests')).code).toBe(0);
  expect(await known()).toBe(false);
  expect((await wristpin('pack', 'list')).out).toContain('no pack of its own');
});

test('a broken pack is refused with file, line and reason, and nothing is kept', async () => {
  file('torn.yaml', `${nests}  - { id: half }\n`);
  for (const act of ['check', 'add']) {
    const { code, err } = await wristpin('pack', act, 'torn.yaml');
    expect(code).toBe(1);
    expect(err).toContain('this pack is not taken; nothing was changed');
    expect(err).toMatch(/torn\.yaml, line 14, faults\[1\]/);
  }
});

test.each([
  [[], 2, 'Something is missing'],
  [['chek', 'x.yaml'], 2, 'check'],
  [['check'], 2, 'wants the pack’s file'],
  [['list', 'more'], 2, 'too much'],
  [['check', 'nowhere.yaml'], 1, 'there is no such file'],
])('called wrongly (%j) it says how it is called', async (args, code, words) => {
  const answer = await wristpin('pack', ...args);
  expect(answer.code).toBe(code);
  expect(answer.err).toContain(words);
});

test('an empty file, bytes that are no text, and an id the shop does not have are refused in words', async () => {
  file('empty.yaml', '');
  expect((await wristpin('pack', 'check', 'empty.yaml')).err).toContain('there is nothing in it');
  writeFileSync(inFolder('bytes.yaml'), Buffer.from([0xff, 0xfe, 0x00]));
  expect((await wristpin('pack', 'check', 'bytes.yaml')).err).toContain('not UTF-8');
  file('nests.yaml', nests);
  await wristpin('pack', 'add', 'nests.yaml');
  expect((await wristpin('pack', 'remove', 'nest')).err).toContain('no pack “nest”');
});

test('which checks show a fault, and of which faults a check speaks, is told: by itself, through a function, silent', async () => {
  const fault = (await wristpin('pack', 'links', 'air-cleaner-choked')).out;
  expect(fault).toMatch(/^Air cleaner choked or oil-soaked\n {2}by itself\n/);
  expect(fault).toMatch(/ {4}Air cleaner: .*blocked/);
  expect(fault).toMatch(/\n {2}through mixture.*\n {4}/);
  expect(fault).toMatch(/\n {2}silent: \d+ other checks/);
  const check = (await wristpin('pack', 'links', 'air-cleaner-look')).out;
  expect(check).toMatch(/ {4}Air cleaner choked or oil-soaked: .*blocked/);
  const all = (await wristpin('pack', 'links')).out.trim().split('\n');
  expect(all.length).toBeGreaterThan(100);
  for (const line of all)
    expect(line).toMatch(/^\S+ {2}\d+ checks? shows? it, \d+ more through a function, \d+ silent$/);
  const wrong = await wristpin('pack', 'links', 'air-cleaner-chocked');
  expect(wrong).toMatchObject({ code: 1, out: '' });
  expect(wrong.err).toContain(
    'is neither a fault nor a check of the catalog. Did you mean “air-cleaner-choked”?',
  );
});
