import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { allSaved, hang, headJoint, openPage, visitShop, wide } from './support.js';

/** Answers by voice: made voices of our own (`voices/make.sh`) in place of a microphone, and one pedal. */
const visit = visitShop({ browser: ['--autoplay-policy=no-user-gesture-required'] });

const folder = 'test/e2e/voices';
const voices = Object.fromEntries(
  readdirSync(folder)
    .filter((file) => file.endsWith('.ogg'))
    .map((file) => [file.replace('.ogg', ''), readFileSync(join(folder, file)).toString('base64')]),
);

/** Run in the page: its microphone is a line into which made voices are played. */
function madeMicrophone(sounds: Record<string, string>): void {
  const context = new AudioContext();
  const line = context.createMediaStreamDestination();
  // a microphone is never without a hiss
  const hiss = context.createBuffer(1, context.sampleRate, context.sampleRate);
  hiss.getChannelData(0).forEach((_, n, all) => {
    all[n] = 4e-4 * Math.sin(n * n * 12.9898);
  });
  const room = new AudioBufferSourceNode(context, { buffer: hiss, loop: true });
  room.connect(line);
  room.start();
  navigator.mediaDevices.getUserMedia = async () => line.stream.clone();
  const play = async (name: string) => {
    const bytes = Uint8Array.from(atob(sounds[name]!), (letter) => letter.charCodeAt(0));
    const source = new AudioBufferSourceNode(context, {
      buffer: await context.decodeAudioData(bytes.buffer),
    });
    source.connect(line);
    const ended = new Promise((done) => source.addEventListener('ended', done));
    source.start();
    await ended;
  };
  // what the program says is counted; a browser of a test has no voice to say it with
  const aloud: string[] = [];
  speechSynthesis.speak = (words) => {
    aloud.push(words.text);
    setTimeout(() => words.dispatchEvent(new Event('end')), 30);
  };
  Object.assign(globalThis, { play, aloud });
}
declare const play: (name: string) => Promise<void>;
declare const aloud: string[];

const isOn = (more: object = {}) =>
  `localStorage.setItem('wristpin.device', ${JSON.stringify(JSON.stringify({ theme: 'auto', spokenAnswers: true, ...more }))})`;

async function listeningPage(path: string, more: object = {}): Promise<{ page: Page; errors: string[] }> {
  const context = await visit.browser.newContext({ ...wide, permissions: ['microphone'] });
  await context.addInitScript(isOn(more));
  await context.addInitScript(madeMicrophone, voices);
  return openPage(context, visit.shop.address + path, 'a person’s');
}

const heard = (page: Page) => page.locator('.heard-now > b');
/** Once the ears have worked. */
async function heardWords(page: Page): Promise<string | undefined> {
  await now(page)
    .filter({ hasText: /Heard|Nobody|Too loud|Not understood/ })
    .waitFor();
  return (await heard(page).allInnerTexts())[0];
}
const now = (page: Page) => page.getByRole('status');

/** Holds the pedal while it is said. */
async function say(page: Page, name: string): Promise<void> {
  await page.keyboard.down('PageDown');
  await now(page).filter({ hasText: 'Say it' }).waitFor();
  await page.evaluate((which) => play(which), name);
  await page.keyboard.up('PageDown');
  await now(page).filter({ hasText: 'Hearing' }).waitFor({ state: 'detached' });
}

/** As soon as somebody can have read it: an earlier tap is none. */
async function tap(page: Page): Promise<void> {
  await page.waitForTimeout(450);
  await page.keyboard.press('PageDown');
}

interface Line {
  readonly id: string;
  readonly kind: string;
  readonly spoken?: boolean;
  readonly body: Record<string, unknown>;
}

async function linesOf(job: string): Promise<Line[]> {
  const answer = await visit.context.request.get(`${visit.shop.address}/api/jobs/${job}/entries`);
  const { entries } = (await answer.json()) as { entries: Line[] };
  return entries.sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** Ten bolts, three passes and a last round: forty turns. */
const tenBolts = {
  ...headJoint,
  holes: Array.from({ length: 10 }, (_, n) => ({
    xMm: 60 * Math.cos((2 * Math.PI * n) / 10),
    yMm: 60 * Math.sin((2 * Math.PI * n) / 10),
  })),
  passes: [0.3, 0.7, 1],
  order: [1, 6, 3, 8, 5, 10, 2, 7, 4, 9],
};

describe('an assembly by voice and one pedal', () => {
  test('of forty steps: no touch, each turn once, and no wrong line left standing', async () => {
    const job = await hang(visit, 71, { architecture: 'overhead-valve' }, [['joint', tenBolts]]);
    const { page, errors } = await listeningPage(`/job/${job}/tighten/head`);
    const place = page.locator('.step > header');
    await place.filter({ hasText: 'bolt 1 of 10' }).waitFor();
    let again = 0;
    const clicked = async (n: number) => {
      await say(page, n % 2 === 0 ? 'that-one-clicked-m3' : 'that-one-clicked-f4');
      // what was heard stands there large: where it is something else, or nothing, it is said again as a person would
      for (; (await heardWords(page)) !== '“that one clicked”'; again += 1) {
        console.log(n, await heardWords(page), await now(page).allInnerTexts());
        await say(page, 'that-one-clicked-m3');
      }
      await tap(page);
      await heard(page).waitFor({ state: 'detached' });
    };
    for (let n = 0; n < 40; n += 1) {
      const bolt = (n % 10) + 1;
      await place.filter({ hasText: `bolt ${bolt} of 10` }).waitFor();
      if (n === 3) {
        // only told: nothing waits, and nothing is written
        await say(page, 'how-tight-m3');
        await expect.poll(() => page.evaluate(() => aloud.at(-1))).toContain('57 inch pounds');
        expect(await heard(page).count()).toBe(0);
      }
      if (n === 5) {
        // the wrong thing said, and the right one over it before the tap
        await say(page, 'keeps-turning-m3');
        await heard(page).filter({ hasText: 'keeps turning' }).waitFor();
      }
      if (n === 8) {
        // said and tapped by mistake, and taken back
        await say(page, 'keeps-turning-f4');
        await heard(page).waitFor();
        await tap(page);
        await heard(page).waitFor({ state: 'detached' });
        await page.getByRole('button', { name: 'Take that back' }).waitFor();
        await say(page, 'cancel-the-last-one-m3');
        await heard(page).filter({ hasText: 'cancel the last one' }).waitFor();
        await tap(page);
        await page.getByRole('button', { name: /^Take back bolt 8/ }).waitFor();
      }
      if (n === 12) {
        // silence drops it, and the tap that comes too late does nothing
        await say(page, 'keeps-turning-m3');
        await heard(page).waitFor();
        await now(page).filter({ hasText: 'Dropped. Nothing' }).waitFor();
        await page.keyboard.press('PageDown');
        await now(page).filter({ hasText: 'Dropped. Nothing' }).waitFor({ state: 'detached' });
      }
      await clicked(n);
    }
    await page.locator('.step .verdict.pass').filter({ hasText: 'tight' }).waitFor();
    await allSaved(page);
    const lines = (await linesOf(job)).slice(3);
    const struck = new Set(lines.flatMap(({ kind, body }) => (kind === 'strike' ? [body.entry] : [])));
    const standing = lines.filter(({ id, kind }) => kind === 'torque' && !struck.has(id));
    expect(standing.map(({ body }) => [body.bolt, body.pass, body.result])).toEqual(
      [1, 2, 3, 4].flatMap((pass) => Array.from({ length: 10 }, (_, n) => [n + 1, pass, 'clicked'])),
    );
    expect(lines.map(({ kind }) => kind).filter((kind) => kind !== 'torque')).toEqual(['strike']);
    expect(lines.every(({ spoken }) => spoken === true)).toBe(true);
    expect(again).toBeLessThanOrEqual(4);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
