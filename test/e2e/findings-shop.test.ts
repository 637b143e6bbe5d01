import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { FindingsSheet } from './findings-support.js';
import { allSaved, expectAccessible, hang, type RunningShop, tellShop, visitShop } from './support.js';

/** What a shop teaches the advice: its own finished jobs, and packs of its own. */
const visit = visitShop();
const folder = mkdtempSync(join(tmpdir(), 'wristpin-packs-'));
let shop: RunningShop;
let page: Page;
let errors: string[];
let sheet: FindingsSheet;
beforeAll(() => {
  ({ shop, page, errors } = visit);
  sheet = new FindingsSheet(page);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const owner = 'Jo Invented';
const section = (name: string) => page.locator('section', { has: page.locator('h2', { hasText: name }) });

describe('the shop’s own frequencies', () => {
  let job: string;

  test('before any job is finished it says how one comes to count', async () => {
    await page.goto(`${shop.address}/shop`);
    await section('own frequencies').getByText('No finished job counts yet').waitFor();
  });

  test('finished jobs shift the advice, and the sheet says by how many', async () => {
    const plain = await hang(visit, 60, { machine: 'Tiller', architecture: 'side-valve' });
    await page.goto(`${shop.address}/job/${plain}/findings`);
    await sheet.settled();
    const before = await sheet.likely('Flywheel key');
    for (const n of [1, 2, 3, 4, 5, 6, 7])
      await hang(visit, 60 + n, { machine: `Tiller ${n}`, architecture: 'side-valve', owner }, [
        [
          'decision',
          {
            about: 'fault',
            which: 'flywheel-key-part-sheared',
            title: 'Key',
            choice: 'repaired',
            reason: '',
          },
        ],
        ['hand-over', { receivedBy: owner, declined: [], nextDue: [] }],
      ]);
    job = plain;
    await page.reload();
    await page.getByRole('link', { name: 'Shifted by 7 of your own jobs' }).waitFor();
    await sheet.settled();
    expect(await sheet.likely('Flywheel key')).toBeGreaterThan(before);
  });

  test('the shop page tells what shifted and how far, and leaves a job out and takes it back', async () => {
    await page.getByRole('link', { name: 'Shifted by 7 of your own jobs' }).click();
    const own = section('own frequencies');
    await own.getByText('7 finished jobs count').waitFor();
    await own.getByText(/found in 7 of 7: odds .* in the catalog, .* with yours/).waitFor();
    await own.getByText('7 jobs counted').click();
    await own.getByRole('button', { name: 'Leave out: tag 63' }).click();
    await own.getByText('6 finished jobs count').waitFor();
    await expectAccessible(page, 'the shop’s own frequencies');
    await own.getByRole('button', { name: 'Count again: tag 63' }).click();
    await own.getByText('7 finished jobs count').waitFor();
  });

  test('the counts can be taken along, and hold no owner', async () => {
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Take the counts along as a file' }).click(),
    ]);
    const text = readFileSync(await file.path(), 'utf8');
    expect(JSON.parse(text)).toMatchObject({ jobs: 7, on: true });
    for (const secret of [owner, 'Tiller', '01900000']) expect(text).not.toContain(secret);
  });

  test('switched off, the catalog speaks alone and nothing that was counted is lost', async () => {
    await section('own frequencies').getByLabel('the catalog alone').click();
    await section('own frequencies').getByText('the catalog speaks alone').waitFor();
    await allSaved(page);
    await page.goto(`${shop.address}/job/${job}/findings`);
    await sheet.settled();
    expect(await page.getByText(/of your own jobs/).count()).toBe(0);
    await page.goto(`${shop.address}/shop`);
    await section('own frequencies').getByLabel('the catalog and our own jobs').click();
    await section('own frequencies')
      .getByText(/^7 finished jobs count\. The catalog/)
      .waitFor();
  });
});

const nests = `pack: { id: nests, title: Nests of this valley }
faults:
  - id: wasp-nest-in-intake
    name: Wasp nest in the intake
    when: { pieces: [carburetor] }
    presentPer100: 40
    mainCausePer100HardStarts: 0
    repair: clear the intake
    parts: []
    repairMinutes: 10
    safety: 0
    offFirst: []
    origin: { from: rule of thumb, detail: counted in an invented shop }
`;

describe('a catalog pack of the shop’s own', () => {
  const packs = () => section('Catalog packs');

  test('one that is wrong is refused with line and reason before anything is kept', async () => {
    await page.goto(`${shop.address}/shop`);
    await packs().getByText('Add a pack').click();
    await packs().getByLabel('or paste its text').fill(`${nests}  - { id: half }\n`);
    await packs().getByRole('button', { name: 'Read it through' }).click();
    const refused = packs().getByRole('alert');
    await refused.getByText('This pack is not taken').waitFor();
    await refused.getByText(/pasted text, line 14, faults\[1\]\.name: is missing/).waitFor();
    expect(await packs().getByRole('button', { name: 'Keep this pack' }).count()).toBe(0);
  });

  test('one from a file says what it brings, is kept, and the advice reckons with it', async () => {
    const file = join(folder, 'nests.yaml');
    writeFileSync(file, nests);
    await packs().locator('input[type=file]').setInputFiles(file);
    await packs().getByRole('button', { name: 'Read it through' }).click();
    await packs().getByRole('status').getByText('“Nests of this valley” adds 1 fault.').waitFor();
    await packs().getByRole('button', { name: 'Keep this pack' }).click();
    await packs().locator('li b', { hasText: 'Nests of this valley' }).waitFor();
    await allSaved(page);
    const job = await hang(visit, 80, { machine: 'Pump', architecture: 'overhead-valve' });
    await page.goto(`${shop.address}/job/${job}/findings`);
    await sheet.settled();
    expect(await sheet.likely('Wasp nest')).toBeGreaterThan(20);
  });

  test('it can be read, and removed again', async () => {
    await page.goto(`${shop.address}/shop`);
    await packs().getByText('Read it', { exact: true }).click();
    await packs().locator('pre').getByText('wasp-nest-in-intake').waitFor();
    await packs().getByRole('button', { name: 'Remove the pack Nests of this valley' }).click();
    await packs().getByText('None yet').waitFor();
    await allSaved(page);
  });

  test('one that no longer fits is left out and said so, and nothing else breaks', async () => {
    await tellShop(visit, [
      ['pack', { pack: 'torn', text: `${nests.replace('nests', 'torn')}  - { id: half }\n` }],
    ]);
    await page.goto(`${shop.address}/shop`);
    await packs().getByText('left out').first().waitFor();
    await packs()
      .getByText(/It does not fit this version/)
      .waitFor();
    await expectAccessible(page, 'a pack that is left out');
    await page.goto(`${shop.address}/job/01900000-0000-7000-8000-008000000000/findings`);
    await page.getByRole('link', { name: /^Without Nests of this valley/ }).waitFor();
    await sheet.settled();
    expect(await sheet.likely('Wasp nest')).toBe(0);
    expect(await sheet.likely('Stale fuel')).toBeGreaterThan(20);
  });
});

test('nothing went wrong on the page meanwhile', () => {
  expect(errors).toEqual([]);
});
