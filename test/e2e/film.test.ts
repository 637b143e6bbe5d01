import { mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { madeFilm, numberOn } from './made-film.js';
import { allSaved, expectAccessible, hang, type Line, visitShop } from './support.js';

/** A film that a camera took along the work, and the pictures that nobody took. */
const visit = visitShop();
const folder = mkdtempSync(join(tmpdir(), 'wristpin-film-'));
const files = { webm: join(folder, 'bench-0412.webm'), mp4: join(folder, 'bench-0413.mp4') } as const;
const [seconds, picturesPerSecond] = [180, 10];
/** 09:02:30 of the day on which the lines stand a minute apart, see `hang` */
const began = Date.parse('2026-05-06T09:02:30.000Z');

const off = (step: string, title: string): Line => [
  'step',
  { step, component: step, stage: 'teardown', title, state: 'done' },
];
const lines: Line[] = [
  ['note', { words: 'Camera runs' }],
  off('air-cleaner-element', 'Element out'),
  off('carburetor', 'Carburetor off'),
  off('carburetor-bowl', 'Bowl off'),
];

/** From the line before (or the beginning of the film) to the line that says it is off, in five equal steps. */
const expected = new Map(
  [
    ['Element out', '09:02:30', '09:03:00'],
    ['Carburetor off', '09:03:00', '09:04:00'],
    ['Bowl off', '09:04:00', '09:05:00'],
  ].map(([title, ...ends]) => {
    const [from, to] = ends.map((clock) => Date.parse(`2026-05-06T${clock}.000Z`));
    return [title!, Array.from({ length: 6 }, (_, i) => from! + (i * (to! - from!)) / 5)];
  }),
);

/** When the picture that is shown was taken, by what it carries. */
const takenAt = async (picture: Buffer) => began + ((await numberOn(picture)) * 1000) / picturesPerSecond;

beforeAll(async () => {
  for (const container of ['webm', 'mp4'] as const) {
    writeFileSync(files[container], await madeFilm(visit.context, { seconds, picturesPerSecond, container }));
    endedAt(files[container], began + seconds * 1000);
  }
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** As a camera leaves it: the file's own time is when it was closed. */
const endedAt = (file: string, ms: number) => utimesSync(file, ms / 1000, ms / 1000);

async function openFilm(job: string, file: string): Promise<void> {
  const { page, shop } = visit;
  await page.goto(`${shop.address}/job/${job}/film`);
  await page.locator('input[type=file]').setInputFiles(file);
  await page.getByText('3:00 long').waitFor();
  await expect.poll(() => page.getByText(/pictures out of the film …/).count()).toBe(0);
}

const shotOf = async (still: Locator) => {
  const address = await still.locator('img').evaluate(async (img: HTMLImageElement) => {
    await img.decode();
    const canvas = Object.assign(document.createElement('canvas'), {
      width: img.naturalWidth,
      height: img.naturalHeight,
    });
    canvas.getContext('2d')!.drawImage(img, 0, 0);
    return canvas.toDataURL('image/png');
  });
  return Buffer.from(address.split(',')[1]!, 'base64');
};

test.each([
  ['webm', 41],
  ['mp4', 32],
] as const)(
  'a film of three minutes (%s) gives the pictures at the log’s times within 0.2 s, and sends none before it is kept',
  async (container, tag) => {
    const { page, shop, context } = visit;
    const job = await hang(visit, tag, { architecture: 'overhead-valve' }, lines);
    const sent: string[] = [];
    page.on('request', (request) => {
      if (/\/api\/(pictures|entries)/.test(request.url()) && request.method() !== 'GET')
        sent.push(request.url());
    });
    await openFilm(job, files[container]);
    const apart: number[] = [];
    for (const [title, moments] of expected) {
      const views = page.locator('article').filter({ hasText: title });
      expect(await views.count(), title).toBeGreaterThan(0);
      for (const view of await views.all()) {
        const stills = await view.locator('button.film-still').all();
        const taken = await Promise.all(stills.map(async (still) => takenAt(await shotOf(still))));
        expect(taken).toHaveLength(moments.length);
        apart.push(...taken.map((at, i) => Math.abs(at - moments[i]!)));
      }
    }
    expect(Math.max(...apart)).toBeLessThanOrEqual(200);
    expect(sent).toEqual([]);
    await expectAccessible(page, 'film');

    const view = page.locator('article').filter({ hasText: 'Carburetor off' }).first();
    const caption = await view.getAttribute('aria-label');
    const left = await page.locator('article').count();
    await view.locator('button.film-still').nth(3).click();
    await expect.poll(() => page.locator('article').count()).toBe(left - 1);
    await allSaved(page);
    const [kept] = await photographs(job);
    const at = expected.get('Carburetor off')![3]!;
    expect(kept).toMatchObject({ caption, stage: 'teardown', when: 'before' });
    expect(kept!.about).toContain('carburetor:');
    expect(kept!.still).toMatchObject({ film: basename(files[container]), seconds: (at - began) / 1000 });
    expect(Date.parse(kept!.still.at)).toBe(at);
    const picture = await context.request.get(`${shop.address}/api/pictures/${kept!.picture.sha256}`);
    expect(Math.abs((await takenAt(await picture.body())) - at)).toBeLessThanOrEqual(200);
  },
);

test('a camera whose clock is an hour off is set right by one line of the log, and any picture of it can be kept', async () => {
  const { page } = visit;
  const job = await hang(visit, 50, { architecture: 'overhead-valve' }, lines);
  endedAt(files.webm, began + (seconds + 3600) * 1000);
  await openFilm(job, files.webm);
  expect(await page.locator('button.film-still').count()).toBe(0);
  await page.locator('video.film-player').evaluate(
    (video: HTMLVideoElement) =>
      new Promise((shown) => {
        video.addEventListener('timeupdate', shown, { once: true });
        video.currentTime = 90;
      }),
  );
  const line = page.getByLabel('What happens in the picture that the film shows now');
  await line.selectOption({ label: await optionWith('Carburetor off') });
  await page.getByRole('button', { name: 'It is this moment' }).click();
  await expect.poll(() => page.locator('button.film-still').count()).toBeGreaterThanOrEqual(12);
  const view = page.locator('article').filter({ hasText: 'Bowl off' }).first();
  await view.getByRole('button', { name: 'Keep what the film shows now' }).click();
  await allSaved(page);
  await expect
    .poll(async () => (await photographs(job)).map(({ still }) => still))
    .toEqual([expect.objectContaining({ seconds: 90 })]);
  const [kept] = await photographs(job);
  expect(Date.parse(kept!.still.at)).toBe(Date.parse('2026-05-06T09:04:00.000Z'));

  async function optionWith(words: string): Promise<string> {
    return (await line.locator('option').filter({ hasText: words }).textContent())!;
  }
});

test('a browser’s own recording, which does not say its length, is read as well; what is no film is refused in words', async () => {
  const { page, shop } = visit;
  const job = await hang(visit, 59, { architecture: 'overhead-valve' }, lines);
  await page.goto(`${shop.address}/job/${job}/film`);
  const buffer = await recorded();
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'notes.txt', mimeType: 'video/mp4', buffer: Buffer.from('no film') });
  await page.getByRole('alert').filter({ hasText: 'notes.txt cannot be read by this browser' }).waitFor();
  await page.locator('input[type=file]').setInputFiles({ name: 'rest.webm', mimeType: 'video/webm', buffer });
  await page.getByText(/^0:0[23] long/).waitFor();

  async function recorded(): Promise<Buffer> {
    const base64 = await page.evaluate(async () => {
      const canvas = Object.assign(document.createElement('canvas'), { width: 64, height: 48 });
      const on = canvas.getContext('2d')!;
      const recorder = new MediaRecorder(canvas.captureStream(20), { mimeType: 'video/webm' });
      const parts: Blob[] = [];
      recorder.ondataavailable = ({ data }) => parts.push(data);
      const ended = new Promise((resolve) => {
        recorder.onstop = resolve;
      });
      recorder.start();
      for (let n = 0; n < 25; n += 1) {
        on.fillRect(n, n, 8, 8);
        await new Promise((next) => setTimeout(next, 100));
      }
      recorder.stop();
      await ended;
      const bytes = new Uint8Array(await new Blob(parts).arrayBuffer());
      return btoa(String.fromCharCode(...bytes));
    });
    return Buffer.from(base64, 'base64');
  }
});

test('the minutes left on a card stand beside the film, at its own bit rate or another', async () => {
  const { page, shop } = visit;
  const job = await hang(visit, 68, { architecture: 'overhead-valve' }, lines);
  await page.goto(`${shop.address}/job/${job}/film`);
  const card = page.getByRole('region', { name: 'Minutes left on a card' });
  await card.getByLabel('Free on the card, GB').fill('16');
  await card.getByLabel('The camera’s bit rate, Mb/s').fill('17');
  await card.getByText('About 2 h 5 min').waitFor(); // 16 × 8000 / 17 / 60 = 125.5
  await card.getByLabel('Free on the card, GB').fill('');
  await card.getByText('Both figures give the minutes.').waitFor();
});

interface Kept {
  readonly caption: string;
  readonly about: string;
  readonly picture: { readonly sha256: string };
  readonly still: { readonly film: string; readonly seconds: number; readonly at: string };
}

async function photographs(job: string): Promise<Kept[]> {
  const answer = await visit.context.request.get(`${visit.shop.address}/api/jobs/${job}/entries`);
  const { entries } = (await answer.json()) as { entries: { kind: string; body: Kept }[] };
  return entries.filter(({ kind }) => kind === 'photograph').map(({ body }) => body);
}
