import { resolve } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { pdfText } from '../record/poppler.js';
import { allSaved, expectAccessible, hang, openPage, phone, type RunningShop, visitShop } from './support.js';

/** Two made recordings of one invented engine, dropped in: heard in the browser, compared, and printed. */
const sound = (name: string) => resolve('demo/sounds', `${name}.wav`);
const visit = visitShop({
  browser: [
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-audio-capture=${sound('pump-after')}`,
  ],
});
let shop: RunningShop;
let context: BrowserContext;
let page: Page;
let errors: string[];
let job: string;
beforeAll(async () => {
  ({ shop, context, page, errors } = visit);
  const topSpeed = {
    spec: 'governed-top-speed',
    label: 'Top speed, no load',
    line: 'Top speed 3250 rpm',
    value: { written: '3250 rpm', kind: 'rotation', si: (3250 * 2 * Math.PI) / 60, unit: 'rpm' },
    origin: { from: "maker's sheet", detail: 'page 22' },
  };
  const intake = { machine: 'Pump', architecture: 'overhead-valve', governor: 'flyweight', use: 'pump' };
  job = await hang(visit, 31, intake, [['spec', topSpeed]]);
});

const dialog = () => page.getByRole('dialog');

async function addRecording(name: string, taken: string): Promise<void> {
  await page.getByRole('button', { name: 'Add a recording' }).click();
  await dialog().getByLabel(taken, { exact: true }).check();
  await dialog().getByLabel('cold', { exact: true }).check();
  await dialog().locator('input[type=file]').setInputFiles(sound(name));
  await dialog().getByRole('region', { name: 'What was heard' }).waitFor({ timeout: 60_000 });
}

async function keep(): Promise<void> {
  await dialog().getByRole('button', { name: 'Keep what was heard' }).click();
  await dialog().waitFor({ state: 'hidden' });
}

const row = async (what: string): Promise<string[]> =>
  page.locator('table.heard tr', { hasText: what }).locator('td').allInnerTexts();

/** The table follows the log a moment after the dialog has closed. */
const rowSays = (what: string, cells: readonly string[]) => expect.poll(() => row(what)).toEqual(cells);

describe('listening to the engine', () => {
  test('a recording from before the work is heard on this device and kept as numbers', async () => {
    await page.goto(`${shop.address}/job/${job}/run-up`);
    await addRecording('pump-before', 'before the work');
    await expectAccessible(page, 'the recording that was heard');
    await keep();
    await rowSays('Pulls until it caught, cold', ['5', '–']);
  });

  test('the one after stands beside it: fewer pulls, no hunting, and how far it droops', async () => {
    await addRecording('pump-after', 'after it');
    await dialog().getByLabel('Load put on at, seconds').fill('11');
    await keep();
    await rowSays('Pulls until it caught, cold', ['5', '2']);
    const [hunts, steady] = await row('Hunting');
    expect(hunts).toMatch(/^± 1\d\d rpm, 0\.9 a second$/);
    expect(steady).toBe('none heard');
    const [, droop] = await row('Droop under load');
    expect(Number.parseFloat(droop!)).toBeCloseTo(6, 0);
  });

  test('a speed above the engine’s own sheet says stop at once and bars the hand-over', async () => {
    await page.getByText('Stop the engine now').waitFor();
    await page
      .getByText(/Overspeed: pump-after.wav turns 3\d\d\d rpm, 3250 rpm is the most/)
      .first()
      .waitFor();
    await expectAccessible(page, 'the run-up sheet with a stop');
  });

  test('what was heard is printed in the record', async () => {
    await allSaved(page);
    const pdf = await context.request.get(`${shop.address}/api/jobs/${job}/record.pdf`);
    expect(pdf.status()).toBe(200);
    const words = await pdfText(new Uint8Array(await pdf.body()));
    expect(words).toMatch(/Heard in recordings/);
    expect(words).toMatch(/Pulls until it caught, cold\s+5\s+2/);
  });

  test('what holds no sound is refused in words', async () => {
    await page.getByRole('button', { name: 'Add a recording' }).click();
    await dialog()
      .locator('input[type=file]')
      .setInputFiles({ name: 'notes.wav', mimeType: 'audio/wav', buffer: Buffer.from('not a sound') });
    await dialog().getByText('notes.wav holds no sound that this browser can read').waitFor();
    await dialog().getByRole('button', { name: 'Close' }).click();
  });

  test('the microphone gives a large number on a phone, and a mark goes into the log with it', async () => {
    const pocket = await visit.browser.newContext({ ...phone, permissions: ['microphone'] });
    const { page: small, errors: wrong } = await openPage(pocket, `${shop.address}/job/${job}/run-up`);
    await small.getByRole('button', { name: 'Listen now' }).click();
    await small.getByRole('button', { name: 'Use the microphone' }).click();
    const now = small.getByRole('status', { name: 'Speed now' });
    await expect.poll(async () => Number(await now.textContent()), { interval: 300 }).toBeGreaterThan(2900);
    await small.getByRole('button', { name: 'Load on' }).click();
    await expectAccessible(small, 'live listening');
    await small.getByRole('button', { name: 'Stop and keep' }).click();
    await small.getByRole('dialog').waitFor({ state: 'hidden' });
    await allSaved(small);
    expect(wrong).toEqual([]);
    await pocket.close();
    const { entries } = (await (
      await context.request.get(`${shop.address}/api/jobs/${job}/entries`)
    ).json()) as { entries: { kind: string; body: { name?: string; marks?: { what: string }[] } }[] };
    const live = entries.find((e) => e.kind === 'recording' && e.body.name === 'microphone');
    expect(live?.body.marks?.map(({ what }) => what)).toEqual(['Load on']);
  });

  test('nothing went wrong unseen', () => {
    expect(errors).toEqual([]);
  });
});
