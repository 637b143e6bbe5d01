import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { isWhole } from '../support/campaign.js';
import { expectAccessible, hang, headJoint, openPage, visitShop, wide } from './support.js';

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
  // a compressor starts beside the bench: as loud as the voice and louder
  const roar = () => {
    const made = context.createBuffer(1, context.sampleRate, context.sampleRate);
    let seed = 1;
    made.getChannelData(0).forEach((_, n, all) => {
      seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
      all[n] = 0.2 * (seed / 2 ** 31 - 1);
    });
    const machine = new AudioBufferSourceNode(context, { buffer: made, loop: true });
    machine.connect(line);
    machine.start();
    return () => machine.stop();
  };
  // what the program says is counted; a browser of a test has no voice to say it with
  const aloud: string[] = [];
  speechSynthesis.speak = (words) => {
    aloud.push(words.text);
    setTimeout(() => words.dispatchEvent(new Event('end')), 30);
  };
  Object.assign(globalThis, { play, roar, aloud });
}
declare global {
  var play: (name: string) => Promise<void>;
  var roar: () => () => void;
  var aloud: string[];
}

const isOn = (more: object = {}) =>
  `localStorage.setItem('wristpin.device', ${JSON.stringify(JSON.stringify({ theme: 'auto', spokenAnswers: true, ...more }))})`;

async function listeningPage(path: string, more: object = {}): Promise<{ page: Page; errors: string[] }> {
  const context = await visit.browser.newContext({ ...wide, permissions: ['microphone'] });
  await context.addInitScript(isOn(more));
  await context.addInitScript(madeMicrophone, voices);
  return openPage(context, visit.shop.address + path, 'a person’s');
}

const heard = (page: Page) => page.locator('.heard-now > b');
/** What stands there large; nothing where nothing was told, or where the program only told something. */
const heardWords = async (page: Page): Promise<string | undefined> => (await heard(page).allInnerTexts())[0];
const now = (page: Page) => page.getByRole('status');

/** Holds the pedal while it is said. */
async function hold(page: Page, name: string): Promise<void> {
  await page.keyboard.down('PageDown');
  await now(page).filter({ hasText: 'Say it' }).waitFor();
  await page.evaluate((which) => play(which), name);
  await page.keyboard.up('PageDown');
}

/** The same, and waits for what the ears make of it: it is said back, told, or nothing. */
async function say(page: Page, name: string): Promise<void> {
  const spoken = await page.evaluate(() => aloud.length);
  await hold(page, name);
  await Promise.race([
    page.waitForFunction((before) => aloud.length > before, spoken),
    now(page)
      .filter({ hasText: /Nobody|Too loud|Not understood/ })
      .waitFor(),
  ]);
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

/** Four bolts, two passes and a last round, twelve turns, in `npm test`; all forty in `npm run trust`. */
const played = isWhole
  ? { joint: tenBolts, turns: 40, firstPass: '57 inch pounds', mostAgain: 4 }
  : { joint: headJoint, turns: 12, firstPass: '95 inch pounds', mostAgain: 2 };
const bolts = played.joint.holes.length;
const boltAt = (turn: number) => (turn % bolts) + 1;

describe('an assembly by voice and one pedal', () => {
  test('turn by turn: no touch, each turn once, and no wrong line left standing', async () => {
    const job = await hang(visit, 71, { architecture: 'overhead-valve' }, [['joint', played.joint]]);
    const { page, errors } = await listeningPage(`/job/${job}/tighten/head`);
    const place = page.locator('.step > header');
    await place.filter({ hasText: `bolt 1 of ${bolts}` }).waitFor();
    let again = 0;
    const clicked = async (n: number) => {
      await say(page, n % 2 === 0 ? 'that-one-clicked-m3' : 'that-one-clicked-f4');
      // what was heard stands there large: where it is something else, or nothing, it is said again as a person would
      for (; (await heardWords(page)) !== '“that one clicked”'; again += 1) {
        console.log(
          `step ${n}: heard ${await heardWords(page)}, said ${await page.evaluate(() => aloud.at(-1))}`,
        );
        await say(page, 'that-one-clicked-m3');
      }
      await tap(page);
      await heard(page).waitFor({ state: 'detached' });
    };
    for (let n = 0; n < played.turns; n += 1) {
      await place.filter({ hasText: `bolt ${boltAt(n)} of ${bolts}` }).waitFor();
      if (n === 3) {
        // only told: nothing waits, and nothing is written
        await say(page, 'how-tight-m3');
        await expect.poll(() => page.evaluate(() => aloud.at(-1))).toContain(played.firstPass);
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
        await page.getByRole('button', { name: new RegExp(`^Take back bolt ${boltAt(n - 1)}`) }).waitFor();
      }
      if (n === 10) {
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
    // the clicks, one word of trouble, its strike
    await expect
      .poll(async () => (await linesOf(job)).length, { timeout: 45_000 })
      .toBe(3 + played.turns + 2);
    const lines = (await linesOf(job)).slice(3);
    const struck = new Set(lines.flatMap(({ kind, body }) => (kind === 'strike' ? [body.entry] : [])));
    const standing = lines.filter(({ id, kind }) => kind === 'torque' && !struck.has(id));
    expect(standing.map(({ body }) => [body.bolt, body.pass, body.result])).toEqual(
      Array.from({ length: played.turns }, (_, n) => [boltAt(n), Math.floor(n / bolts) + 1, 'clicked']),
    );
    expect(lines.map(({ kind }) => kind).filter((kind) => kind !== 'torque')).toEqual(['strike']);
    expect(lines.every(({ spoken }) => spoken === true)).toBe(true);
    expect(again).toBeLessThanOrEqual(played.mostAgain);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

/** The voice of a person who taught it: takes of the phrases that the question in hand has. */
async function teach(page: Page, phrase: string, name: string): Promise<void> {
  const row = page.getByRole('listitem').filter({ hasText: `“${phrase}”` });
  await row.waitFor();
  await page.waitForTimeout(450);
  for (let n = 1; n <= 3; n += 1) {
    await row.getByRole('button').focus();
    await page.keyboard.press('Enter');
    await row.getByRole('button', { name: /^Say it/ }).waitFor();
    await page.waitForTimeout(300);
    await page.evaluate((which) => play(which), name);
    await page.keyboard.press('Enter');
    await row.getByText(`${n} take`).waitFor();
    await page.waitForTimeout(350);
  }
}

describe('pieces go back by voice', () => {
  test('with what is looked at, what is left over and the gate; a touch would write the same', async () => {
    const off = (component: string, title: string, more: object = {}): [string, object] => [
      'step',
      { step: component, stage: 'teardown', title, component, state: 'done', ...more },
    ];
    const nuts = [{ what: 'nut', size: 'M6', count: 2 }];
    const job = await hang(visit, 72, { architecture: 'overhead-valve' }, [
      off('fuel-hose', 'Fuel hose', { fasteners: nuts }),
    ]);
    const { page, errors } = await listeningPage(`/job/${job}/put-together`);
    await page.getByRole('heading', { name: 'Fuel hose back on' }).waitFor();
    await page.getByRole('list', { name: 'What may be said' }).getByText('it is so').waitFor();
    await say(page, 'it-is-so-m3');
    await heard(page).filter({ hasText: 'it is so' }).waitFor();
    await tap(page);
    await expect.poll(async () => (await linesOf(job)).length, { timeout: 45_000 }).toBe(4);
    const line = (await linesOf(job)).at(-1)!;
    expect(line).toMatchObject({
      kind: 'step',
      spoken: true,
      body: { putsBack: 'fuel-hose', state: 'done' },
    });
    await page.waitForTimeout(450);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await linesOf(job)).at(-1)?.kind).toBe('strike');
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe('a cover goes on by voice', () => {
  test('with one bolt missing, and the gate before what it hides: something is wrong, looked at again, all of it is so', async () => {
    const off = {
      ...{ step: 'blower-housing', stage: 'teardown', title: 'Fan cover', component: 'blower-housing' },
      ...{ state: 'done', fasteners: [{ what: 'bolt', size: 'M6', count: 4 }] },
    };
    const job = await hang(visit, 78, { architecture: 'overhead-valve' }, [['step', off]]);
    const { page, errors } = await listeningPage(`/job/${job}/put-together`);
    await page.getByRole('heading', { name: 'Fan cover back on' }).waitFor();
    const writes = async (name: string, phrase: string, lines: number) => {
      await say(page, name);
      await heard(page).filter({ hasText: phrase }).waitFor();
      await tap(page);
      await expect.poll(async () => (await linesOf(job)).length, { timeout: 45_000 }).toBe(lines);
      return (await linesOf(job)).at(-1)!;
    };
    const missing = await writes('one-is-missing-m3', 'one is missing', 4);
    expect(missing).toMatchObject({ kind: 'step', spoken: true, body: { putsBack: 'blower-housing' } });
    expect(missing.body.fasteners).toMatchObject([{ what: 'bolt', count: 3 }]);

    const gate = page.getByRole('heading', { name: 'Before you go on: shroud' });
    await gate.waitFor();
    const notSo = await writes('something-is-wrong-m3', 'something is wrong', 5);
    expect(notSo).toMatchObject({ kind: 'step', spoken: true, body: { state: 'planned', checked: [] } });
    await page.goto(`${visit.shop.address}/job/${job}/put-together`);
    await gate.waitFor();
    const allSo = await writes('all-of-it-is-so-m3', 'all of it is so', 6);
    expect(allSo).toMatchObject({ kind: 'step', spoken: true, body: { state: 'done' } });
    expect(allSo.body.checked).toEqual(['no rub', 'no trapped wire']);
    await gate.waitFor({ state: 'detached' });
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe('at Findings', () => {
  test('the check in hand is answered by its own outcomes, and the log and the record say that it was said', async () => {
    const job = await hang(visit, 73, { architecture: 'overhead-valve', complaints: ['will-not-start'] });
    const { page, errors } = await listeningPage(`/job/${job}/findings`);
    const card = page.getByRole('region', { name: 'Check next' });
    const may = card.getByRole('list', { name: 'What may be said' }).getByRole('listitem');
    await may.first().waitFor();
    expect(await may.count()).toBeGreaterThanOrEqual(3);
    expect(await may.count()).toBeLessThanOrEqual(8);
    for (const phrase of await may.allInnerTexts())
      expect(phrase.trim().split(' ').length).toBeGreaterThan(1);
    await expectAccessible(page, 'Findings with answers by voice');
    const check = await card.locator('article header b').textContent();
    const offered = (await may.allTextContents()).map((phrase) => `${phrase.replaceAll(' ', '-')}-m3`);
    const name = offered.find((each) => each in voices);
    expect(offered, 'one of these has a voice').toContain(name);
    await say(page, name!);
    await tap(page);
    await expect.poll(async () => (await linesOf(job)).at(-1)?.kind, { timeout: 45_000 }).toBe('observation');
    const line = (await linesOf(job)).at(-1)!;
    expect(line).toMatchObject({ spoken: true, body: { title: check } });
    await page.locator('.log').getByText('spoken').waitFor();
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe('a number that was read', () => {
  test('is said digit by digit near the one looked for, said back, and written by the tap as the reading it is', async () => {
    const job = await hang(visit, 80, { architecture: 'overhead-valve', complaints: ['no-power'] });
    const { page, errors } = await listeningPage(`/job/${job}/findings`);
    const card = page.getByRole('region', { name: 'Check next' });
    await card.getByText('Leak-down').first().waitFor();
    const may = card.getByRole('list', { name: 'What may be said' });
    await may.getByText('take a number').waitFor();
    await hold(page, 'take-a-number-m3');
    await may.getByText('one five').waitFor();
    expect(await may.getByRole('listitem').allInnerTexts()).toEqual([
      ...['zero five', 'one zero', 'one five', 'two zero', 'two five'],
      ...['a higher number', 'further down', 'leave the numbers'],
    ]);
    await expectAccessible(page, 'numbers by voice');
    await say(page, 'one-five-m3');
    await heard(page).filter({ hasText: 'one five' }).waitFor();
    await page.locator('.heard-now').getByText('15 %').waitFor();
    expect(await page.evaluate(() => aloud.at(-1))).toBe('one five?');
    // replaced by a higher one before the tap: nothing of it stands
    await hold(page, 'a-higher-number-m3');
    await may.getByText('three five').waitFor();
    expect(await heard(page).count()).toBe(0);
    await say(page, 'three-five-m3');
    await page.locator('.heard-now').getByText('35 %').waitFor();
    expect(await linesOf(job)).toHaveLength(2);
    await tap(page);
    await expect
      .poll(async () => (await linesOf(job)).map(({ kind }) => kind), { timeout: 45_000 })
      .toEqual(['open', 'intake', 'observation', 'measurement']);
    const [seen, read] = (await linesOf(job)).slice(2);
    expect(seen).toMatchObject({ spoken: true, body: { check: 'leak-down', value: '35 %' } });
    expect(read).toMatchObject({ spoken: true, body: { measure: 'leak-down', value: { written: '35 %' } } });
    expect(errors).toEqual([]);
    await page.context().close();
  });

  test('is left again by voice, and the outcomes are listened for as before', async () => {
    const job = await hang(visit, 81, { architecture: 'overhead-valve', complaints: ['no-power'] });
    const { page, errors } = await listeningPage(`/job/${job}/findings`);
    const may = page.getByRole('list', { name: 'What may be said' });
    await may.getByText('take a number').waitFor();
    const before = await may.allInnerTexts();
    await hold(page, 'take-a-number-m3');
    await may.getByText('one five').waitFor();
    await hold(page, 'leave-the-numbers-m3');
    await may.getByText('take a number').waitFor();
    expect(await may.allInnerTexts()).toEqual(before);
    expect(await linesOf(job)).toHaveLength(2);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe('a voice that it was taught', () => {
  test('writes without the tap where both ears heard the same and that is switched on; forgotten by one touch', async () => {
    const job = await hang(visit, 74, { architecture: 'overhead-valve' }, [['joint', headJoint]]);
    const { page, errors } = await listeningPage('/shop/voice', { answersWithoutTap: true });
    await teach(page, 'that one clicked', 'that-one-clicked-m3');
    await teach(page, 'how tight', 'how-tight-m3');
    await teach(page, 'keeps turning', 'keeps-turning-m3');
    await expectAccessible(page, 'teaching a voice');
    await page.goto(`${visit.shop.address}/job/${job}/tighten/head`);
    await page.getByText('bolt 1 of 4').waitFor();
    await hold(page, 'that-one-clicked-m3');
    await page.getByText('bolt 2 of 4').waitFor();
    await expect.poll(async () => (await linesOf(job)).length, { timeout: 45_000 }).toBe(4);
    expect((await linesOf(job)).at(-1)).toMatchObject({ kind: 'torque', spoken: true, body: { bolt: 1 } });
    await page.goto(`${visit.shop.address}/shop/voice`);
    await page.getByText('3 of').first().waitFor();
    await page.waitForTimeout(450);
    await page.getByRole('button', { name: 'Forget my voice' }).click();
    await page.getByText('0 of').first().waitFor();
    await page.reload();
    await page.getByText('0 of').first().waitFor();
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe('nothing is written', () => {
  test('off, as it is at first: held, the pedal talks into the log as before', async () => {
    const job = await hang(visit, 75, { architecture: 'overhead-valve' }, [['joint', headJoint]]);
    const { page } = await listeningPage(`/job/${job}/tighten/head`, { spokenAnswers: false });
    await page.getByText('bolt 1 of 4').waitFor();
    expect(await page.getByRole('region', { name: 'Answer by voice' }).count()).toBe(0);
    await page.keyboard.down('PageDown');
    await now(page).filter({ hasText: 'Talk now' }).waitFor();
    await page.evaluate(() => play('how-tight-m3'));
    await page.keyboard.up('PageDown');
    await expect.poll(async () => (await linesOf(job)).at(-1)?.kind, { timeout: 45_000 }).toBe('spoken-note');
    await page.context().close();
  });

  test('where nobody speaks, and where a pedal is let go at once', async () => {
    const job = await hang(visit, 76, { architecture: 'overhead-valve' }, [['joint', headJoint]]);
    const { page, errors } = await listeningPage(`/job/${job}/tighten/head`);
    await page.getByText('bolt 1 of 4').waitFor();
    await page.keyboard.down('PageDown');
    await now(page).filter({ hasText: 'Say it' }).waitFor();
    await page.waitForTimeout(900);
    await page.keyboard.up('PageDown');
    await now(page).filter({ hasText: 'Nobody was heard' }).waitFor();
    await page.keyboard.press('PageDown');
    await page.waitForTimeout(500);
    await page.getByText('bolt 1 of 4').waitFor();
    expect(await linesOf(job)).toHaveLength(3);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe('too loud', () => {
  test('is said in place of a guess while a machine drowns the voice; once it stops the same voice is heard', async () => {
    const job = await hang(visit, 79, { architecture: 'overhead-valve' }, [['joint', headJoint]]);
    const { page, errors } = await listeningPage(`/job/${job}/tighten/head`);
    await page.getByText('bolt 1 of 4').waitFor();
    await say(page, 'that-one-clicked-m3');
    await heard(page).waitFor();
    const machine = await page.evaluateHandle(() => ({ stop: roar() }));
    await page.waitForTimeout(1200); // what stands before the press is the machine alone
    await say(page, 'that-one-clicked-m3');
    await now(page).filter({ hasText: 'Too loud here: nothing is taken for an answer.' }).waitFor();
    expect(await heard(page).count()).toBe(0);
    await page.keyboard.press('PageDown');
    await page.waitForTimeout(1700);
    await page.getByText('bolt 1 of 4').waitFor();
    await machine.evaluate(({ stop }) => stop());
    await page.waitForTimeout(1200);
    await say(page, 'that-one-clicked-m3');
    await heard(page).filter({ hasText: 'that one clicked' }).waitFor();
    expect(await linesOf(job)).toHaveLength(3);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe('once it has come', () => {
  test('it hears without a network, and an answer is there within 0.7 s of letting go', async () => {
    const job = await hang(visit, 77, { architecture: 'overhead-valve' }, [['joint', headJoint]]);
    const { page } = await listeningPage(`/job/${job}/tighten/head`);
    await page.getByText('bolt 1 of 4').waitFor();
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await page.reload();
    await page.getByText('bolt 1 of 4').waitFor();
    await page.context().setOffline(true);
    const took: number[] = [];
    for (const name of ['that-one-clicked-m3', 'how-tight-m3', 'keeps-turning-m3', 'that-one-clicked-f4']) {
      await page.keyboard.down('PageDown');
      await now(page).filter({ hasText: 'Say it' }).waitFor();
      await page.evaluate((which) => play(which), name);
      const heardAfter = page.evaluate(
        () =>
          new Promise<number>((done) => {
            const from = performance.now();
            const count = globalThis.aloud.length;
            const look = () =>
              globalThis.aloud.length > count ? done(performance.now() - from) : setTimeout(look, 5);
            look();
          }),
      );
      await page.keyboard.up('PageDown');
      took.push(await heardAfter);
      await page.waitForTimeout(500);
    }
    console.log(`heard after, ms: ${took.map(Math.round).join(', ')} (the first opens the recognizer)`);
    // the quickest of three: a test machine is shared; bench/hear-hour.ts has the processor time
    expect(Math.min(...took.slice(1))).toBeLessThan(700);
    await page.context().close();
  });
});
