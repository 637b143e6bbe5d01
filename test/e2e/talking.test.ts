import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, onTestFinished, test } from 'vitest';
import { readWav } from '../../src/listen/index.js';
import { Phone } from './phones.js';
import { allSaved, expectAccessible, hang, headJoint, openPage, phone, visitShop, wide } from './support.js';

/** Spoken notes: a made sound stands in for the voice. */
const spokenTo = [
  '--use-fake-ui-for-media-stream',
  '--use-fake-device-for-media-stream',
  `--use-file-for-fake-audio-capture=${resolve('demo/sounds/pump-after.wav')}`,
];
const visit = visitShop({ browser: spokenTo });

interface Said {
  readonly id: string;
  readonly kind: string;
  readonly body: {
    readonly about?: string;
    readonly stage: string;
    readonly sound: { readonly sha256: string; readonly seconds: number; readonly bytes: number };
  };
}

async function linesOf(job: string): Promise<Said[]> {
  const answer = await visit.context.request.get(`${visit.shop.address}/api/jobs/${job}/entries`);
  return ((await answer.json()) as { entries: Said[] }).entries;
}
const notesOf = async (job: string) => (await linesOf(job)).filter(({ kind }) => kind === 'spoken-note');

/** Of what was written since the job was hung and its joint laid out, as it was written: a line does not wait for the sound of another. */
const kindsOf = async (job: string) =>
  (await linesOf(job))
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .slice(3)
    .map(({ kind }) => kind);

const talking = (page: Page) => page.getByRole('status').filter({ hasText: 'Talk now' });
/** Longer than the shortest note that is kept, counted from when the microphone is open. */
async function say(
  page: Page,
  press: () => Promise<void>,
  letGo: () => Promise<void>,
  ms = 900,
): Promise<void> {
  await press();
  await talking(page).waitFor();
  await page.waitForTimeout(ms);
  await letGo();
  await talking(page).waitFor({ state: 'detached' });
}

async function sayByButton(page: Page): Promise<void> {
  const button = page.getByRole('button', { name: 'Hold and talk' });
  await button.scrollIntoViewIfNeeded();
  const at = (await button.boundingBox())!;
  await page.mouse.move(at.x + at.width / 2, at.y + at.height / 2);
  await say(
    page,
    () => page.mouse.down(),
    () => page.mouse.up(),
  );
}

const playsOnSheet = (page: Page) => page.getByRole('list', { name: 'Spoken notes' }).getByRole('listitem');

/** As many notes stand on the sheet: a busy machine takes its time. */
const stands = (page: Page, notes: number) =>
  expect.poll(() => playsOnSheet(page).count(), { timeout: 45_000 }).toBe(notes);

describe('a note is spoken', () => {
  let tries = 0;

  test('by a button on a sheet: it is in the store as sound, stands in the log, plays, and one touch takes it back', async () => {
    const { page, shop } = visit;
    const job = await hang(visit, 51, { architecture: 'overhead-valve' });
    await page.goto(`${shop.address}/job/${job}/measure`);
    await sayByButton(page);
    await playsOnSheet(page).first().waitFor();
    await page.locator('.log').getByText('Spoken note').waitFor();
    await allSaved(page);
    const [note] = await notesOf(job);
    expect(note?.body).toMatchObject({ stage: 'measure', sound: { mime: 'audio/wav' } });
    const kept = await visit.context.request.get(`${shop.address}/api/pictures/${note!.body.sound.sha256}`);
    const { samples, sampleRate } = readWav(new Uint8Array(await kept.body()));
    expect(sampleRate).toBe(16_000);
    expect(samples.length / sampleRate).toBeCloseTo(note!.body.sound.seconds, 3);
    expect(note!.body.sound.seconds).toBeGreaterThan(0.8);
    expect(Math.max(...samples)).toBeGreaterThan(0.01);
    await expectAccessible(page, 'a sheet with a spoken note');
    await playsOnSheet(page).getByRole('button').click();
    await playsOnSheet(page).getByRole('button', { name: /^Play/ }).waitFor(); // to its end
    await sayByButton(page);
    await stands(page, 2);
    await page.getByRole('button', { name: 'Undo' }).click();
    await stands(page, 1);
    await allSaved(page);
    expect((await linesOf(job)).at(-1)?.kind).toBe('strike');
  });

  test('in step mode by the pedal, held; tapped it goes on as before', async () => {
    const { page, shop } = visit;
    const job = await hang(visit, 52, { architecture: 'overhead-valve' }, [['joint', headJoint]]);
    await page.goto(`${shop.address}/job/${job}/tighten/head`);
    await page.getByText('bolt 1 of 4').waitFor();
    for (const [n, key] of ['Space', 'PageDown'].entries()) {
      await say(
        page,
        () => page.keyboard.down(key),
        () => page.keyboard.up(key),
      );
      await stands(page, 1);
      await page.keyboard.press(key);
      await page.getByText(`bolt ${n + 2} of 4`).waitFor();
    }
    await expect
      .poll(() => kindsOf(job), { timeout: 45_000 })
      .toEqual(['spoken-note', 'torque', 'spoken-note', 'torque']);
    const said = (await notesOf(job)).map(({ body }) => body.about).sort();
    expect(said).toEqual(['Cylinder head, bolt 1, pass 1 of 3', 'Cylinder head, bolt 2, pass 1 of 3']);
  });

  test('by a finger held on the lower half of a phone, and not by one that scrolls', async () => {
    const { browser, shop } = visit;
    const job = await hang(visit, 53, { architecture: 'overhead-valve' }, [['joint', headJoint]]);
    const pocket = await browser.newContext({ ...phone, permissions: ['microphone'] });
    const { page, errors } = await openPage(pocket, `${shop.address}/job/${job}/tighten/head`);
    const words = page.getByText('Cold engine only');
    await words.scrollIntoViewIfNeeded();
    const at = (await words.boundingBox())!;
    expect(at.y).toBeGreaterThan(422);
    const hand = await pocket.newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', y = at.y + 5) =>
      hand.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x: at.x + 30, y }],
      });
    await touch('touchStart');
    await touch('touchMove', at.y - 40);
    await page.waitForTimeout(600);
    await touch('touchEnd');
    expect(await talking(page).count()).toBe(0);
    await words.scrollIntoViewIfNeeded();
    await say(
      page,
      async () => void (await touch('touchStart')),
      async () => void (await touch('touchEnd')),
    );
    await stands(page, 1);
    await expectAccessible(page, 'step mode with a spoken note');
    await expect.poll(() => kindsOf(job), { timeout: 45_000 }).toEqual(['spoken-note']);
    expect(errors).toEqual([]);
    await pocket.close();
  });

  test('ten times, with the net gone, the page loaded anew and the browser closed and opened again: all ten reach the store, each whole', async () => {
    const { shop } = visit;
    // a second try has a job of its own: the notes of the first stand in the store
    const job = await hang(visit, 540 + tries++, { architecture: 'overhead-valve' });
    const sheet = `${shop.address}/job/${job}/teardown`;
    const tablet = new Phone();
    onTestFinished(() => tablet.close());
    const opened = async () => {
      const context = await tablet.open({ reached: [] }, { ...wide, permissions: ['microphone'] }, spokenTo);
      return { context, ...(await openPage(context, sheet)) };
    };
    const first = await opened();
    await first.page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await first.page.reload();
    for (let n = 1; n <= 7; n += 1) {
      if (n === 4) {
        await allSaved(first.page); // what was spoken before is in the store
        await first.context.setOffline(true);
      }
      await sayByButton(first.page);
      await stands(first.page, n);
    }
    await first.page.reload();
    await stands(first.page, 7);
    // the browser goes while four of them have not been sent
    await first.context.close();
    const sendings = /\/api\/(entries|pictures)/;
    const away = await tablet.open({ reached: [] }, { ...wide, permissions: ['microphone'] }, spokenTo);
    await away.route(sendings, (route) => route.abort());
    const { page } = await openPage(away, sheet);
    await stands(page, 7);
    for (let n = 8; n <= 10; n += 1) {
      await sayByButton(page);
      await stands(page, n);
    }
    await page.getByRole('status').filter({ hasText: 'sounds' }).first().waitFor({ state: 'attached' });
    expect(await notesOf(job)).toHaveLength(3);
    await playsOnSheet(page).nth(6).getByRole('button').click(); // from this device, spoken before it was closed
    await playsOnSheet(page).nth(6).getByRole('button', { name: /^Play/ }).waitFor();
    await away.unroute(sendings);
    await page.reload();
    await allSaved(page);
    const notes = await notesOf(job);
    expect(notes).toHaveLength(10);
    for (const { body } of notes) {
      const kept = await visit.context.request.get(`${shop.address}/api/pictures/${body.sound.sha256}`);
      expect(await kept.body()).toHaveLength(body.sound.bytes);
    }
  });

  test.each([
    [
      'refused',
      "() => Promise.reject(new DOMException('', 'NotAllowedError'))",
      'The browser refused the microphone.',
    ],
    [
      'not there',
      "() => Promise.reject(new DOMException('', 'NotFoundError'))",
      'No microphone is connected',
    ],
  ])('with the microphone %s, which is said in words', async (_, answer, words) => {
    const { browser, shop } = visit;
    const job = await hang(visit, words.length + 60, { architecture: 'overhead-valve' });
    const context = await browser.newContext();
    await context.addInitScript(`navigator.mediaDevices.getUserMedia = ${answer}`);
    const { page } = await openPage(context, `${shop.address}/job/${job}/findings`);
    await page.getByRole('button', { name: 'Hold and talk' }).click();
    await page.getByRole('alert').filter({ hasText: words }).waitFor();
    expect(await notesOf(job)).toEqual([]);
    await context.close();
  });

  test('on a plain line, where browsers open no microphone: the page says so and where it works', async () => {
    const { browser, shop } = visit;
    const job = await hang(visit, 57, { architecture: 'overhead-valve' });
    const context = await browser.newContext();
    await context.addInitScript("Object.defineProperty(navigator, 'mediaDevices', { value: undefined })");
    const { page } = await openPage(context, `${shop.address}/job/${job}/findings`);
    await page.getByRole('button', { name: 'Hold and talk' }).click();
    await page.getByRole('alert').filter({ hasText: 'came over a plain line' }).waitFor();
    await context.close();
  });

  test('nothing went wrong unseen', () => {
    expect(visit.errors).toEqual([]);
  });
});
