import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { RawEntry } from '../../src/job/index.js';
import { expectAccessible, hang, visitShop } from './support.js';

/** A page of an invented maker's specs, laid on a dark bench, photographed askew and read in the browser. */
const visit = visitShop();
const printed = [
  ['Cylinder head bolts 190 in-lb', 'head-bolt-torque'],
  ['Flywheel nut 55 ft-lb', 'flywheel-nut-torque'],
  ['Connecting rod bolts 100 in-lb', 'rod-bolt-torque'],
  ['Spark plug gap 0.030 in', 'plug-gap'],
  ['Valve clearance, intake 0.005 - 0.007 in', ''],
  ['Armature air gap 0.012 in', ''],
  ['Top no-load speed 3150 rpm', ''],
  ['Idle speed 1750 rpm', ''],
  ['Compression ratio 8.5:1', ''],
  ['Oil capacity 20 fl oz', ''],
] as const;
let folder: string;
let photograph: string;
let job: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'wristpin-page-'));
  photograph = join(folder, 'page.png');
  job = await hang(visit, 61, { machine: 'Invented tiller', architecture: 'overhead-valve' });
  const context = await visit.browser.newContext({
    viewport: { width: 1000, height: 1000 },
    deviceScaleFactor: 2,
  });
  const page = await context.newPage();
  await page.goto(visit.shop.address);
  await page.getByRole('heading').first().waitFor();
  await page.evaluate(
    (lines) => {
      document.body.innerHTML = `<div style="position:fixed;inset:0;background:#4a3524;z-index:99"><div style="position:absolute;left:190px;top:130px;width:620px;height:700px;box-sizing:border-box;padding:36px;background:linear-gradient(100deg,#c9c5ba,#fbfaf5);color:#1b1b1d;font:25px/58px 'Atkinson Hyperlegible Next',serif;transform:perspective(1500px) rotateX(16deg) rotateY(-9deg) rotateZ(-7deg)">${lines.join('<br>')}</div></div>`;
    },
    printed.map(([line]) => line),
  );
  writeFileSync(photograph, await page.screenshot({ type: 'png' }));
  await context.close();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const specsKept = async () => {
  const answer = await fetch(`${visit.shop.address}/api/jobs/${job}/entries`);
  const { entries } = (await answer.json()) as { entries: RawEntry[] };
  return entries.filter(({ kind }) => kind === 'spec').map(({ body }) => body as Record<string, unknown>);
};

test('a photographed page of ten specs is confirmed in at most 12 touches, each value with its cut of the picture', async () => {
  const { page, shop } = visit;
  await page.goto(`${shop.address}/job/${job}/intake`);
  let touches = 0;
  const chooser = page
    .getByRole('region', { name: 'The maker’s sheet' })
    .or(page.locator('section', { has: page.getByRole('heading', { name: 'The maker’s sheet' }) }))
    .first();
  touches += 1;
  await chooser.locator('input[type=file]').setInputFiles(photograph);
  const cuts = chooser.getByRole('img', { name: /^the line as photographed/ });
  await expect.poll(() => cuts.count(), { timeout: 60_000 }).toBe(10);
  await expectAccessible(page, 'lines of a photographed sheet');
  for (let left = 10; left > 0; left -= 1) {
    touches += 1;
    await chooser.getByRole('button', { name: 'Confirm' }).first().click();
    await expect.poll(() => chooser.getByRole('button', { name: 'Confirm' }).count()).toBe(left - 1);
  }
  expect(touches).toBeLessThanOrEqual(12);
  await expect.poll(async () => (await specsKept()).length).toBe(10);
  const kept = await specsKept();
  expect(kept.map(({ line }) => line).sort()).toEqual(printed.map(([line]) => line).sort());
  for (const { cut } of kept)
    expect(cut).toMatchObject({
      picture: expect.stringMatching(/^[0-9a-f]{64}$/),
      height: expect.any(Number),
    });
});
