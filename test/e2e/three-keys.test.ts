import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Body, RawEntry } from '../../src/job/index.js';
import { jobId, torque } from '../job/entries.js';
import { bench } from '../job/plan-job.js';
import { allSaved, expectAccessible, hang, headJoint, openPage, phone, visitShop } from './support.js';

/** Assembly with both hands busy: three keys, a voice, and bells that ring wherever one is. Invented. */
const visit = visitShop({
  browser: [
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-audio-capture=${resolve('demo/sounds/pump-after.wav')}`,
  ],
});

const reached = [
  ...[
    'crankshaft',
    'valves',
    'push-rods',
    'governor-gear',
    'camshaft',
    'followers',
    'piston-rings',
    'piston-pin',
  ],
  ...['oil-seals', 'breather', 'ignition-coil', 'muffler', 'carburetor-bowl'],
];

/** A joint of four bolts in one pass and a last round. */
const joint = (id: string, name: string, target: string): Body<'joint'> => ({
  joint: id,
  name,
  holes: [
    { xMm: -40, yMm: 30 },
    { xMm: 40, yMm: 30 },
    { xMm: 40, yMm: -30 },
    { xMm: -40, yMm: -30 },
  ],
  target: torque(target),
  targetOrigin: { from: "maker's sheet" },
  passes: [0.5, 1],
  finalRound: true,
  order: [1, 3, 2, 4],
  orderOrigin: { from: 'rule of thumb' },
});

/** An engine of which all is off, with the joints of head and crankcase cover laid out. */
function allApart(): { lines: RawEntry[]; steps: number } {
  const at = bench('overhead-valve', { starter: 'rope', shaft: 'horizontal', governor: 'flyweight' });
  for (const component of reached) at.want(component);
  const { steps } = at.plan();
  for (const step of steps)
    at.takeOff(step, {
      component: step.id,
      fasteners: [{ what: 'bolt', size: 'M6', count: 2 }],
      ...(step.bag && { bag: step.bag }),
      plugged: step.plugs.map(({ name }) => name),
    });
  at.add('joint', joint('cylinder-head', 'Cylinder head', '190 in-lb'));
  at.add('joint', joint('crankcase-cover', 'Crankcase cover', '100 in-lb'));
  return { lines: at.lines, steps: steps.length };
}

async function post(entries: readonly RawEntry[]): Promise<void> {
  const { address } = visit.shop;
  const answer = await visit.context.request.post(`${address}/api/entries`, {
    data: { entries },
    headers: { origin: address },
  });
  expect(answer.status(), await answer.text()).toBe(200);
}

const linesOf = async (job: string) => {
  const answer = await visit.context.request.get(`${visit.shop.address}/api/jobs/${job}/entries`);
  return ((await answer.json()) as { entries: { id: string; kind: string; body: Record<string, unknown> }[] })
    .entries;
};

/** The browser's own voice, and nothing of the application. */
const hearVoice = (page: Page) =>
  page.addInitScript(() => {
    const said: string[] = [];
    Object.assign(window, { said });
    speechSynthesis.speak = ({ text }) => void said.push(text);
  });
const saidOn = (page: Page) => page.evaluate(() => (window as unknown as { said: string[] }).said);

/** What stands on the screen that a key would answer; its button may say another thing while its word is being kept. */
const stood = (page: Page) =>
  page.evaluate(() => {
    const words = (part: string) => document.querySelector(part)?.textContent ?? '';
    return `${words('.step > header')}${words('.step .verdict.large')}${words('h1')} | ${words('dialog[open] h2')}`;
  });

test('forty steps and more go back by three keys in at most sixty presses beside the clicks of the wrench, told aloud, each key with its undo', async () => {
  const { lines, steps } = allApart();
  expect(steps).toBeGreaterThanOrEqual(40);
  await post(lines);
  const page = await visit.context.newPage();
  page.setDefaultTimeout(45_000);
  await page.addInitScript('globalThis.quickHands = { bounceMs: 0, freshMs: 0 }');
  await hearVoice(page);
  await page.goto(`${visit.shop.address}/job/${jobId}/put-together`);
  await page.getByRole('button', { name: 'Say it aloud' }).click();
  await page.getByRole('heading', { level: 1 }).click();
  const shown: string[] = [];
  let presses = 0;
  let clicks = 0;
  const isOver = async () => /^Everything is back on/.test(await stood(page));
  /** A press, and the wait for what it changes on the screen. */
  const press = async (key: 'ArrowRight' | 'ArrowLeft') => {
    const before = await stood(page);
    await page.keyboard.press(key);
    await expect.poll(() => stood(page), { timeout: 30_000, interval: 15 }).not.toBe(before);
  };
  const on = async () => {
    const atBolts = (await page.locator('.step .torque-now').count()) > 0;
    if (atBolts) clicks += 1;
    else {
      presses += 1;
      if ((await page.locator('.step').count()) === 0)
        shown.push((await page.getByRole('heading', { level: 1 }).textContent()) ?? '');
    }
    await press('ArrowRight');
    expect(await page.locator('dialog[open]').count(), await stood(page)).toBe(0);
  };
  for (let n = 0; n < 3; n += 1) await on();

  // back: what was put back last is off again, and goes back with the next press
  const at = await stood(page);
  await press('ArrowLeft');
  await press('ArrowRight');
  presses += 2;
  expect(await stood(page)).toBe(at);

  // a note, and back takes the note back and nothing else
  await page.keyboard.down('n');
  await page.getByRole('status').filter({ hasText: 'Talk now' }).waitFor();
  await page.waitForTimeout(900);
  await page.keyboard.up('n');
  await page.getByRole('button', { name: 'Take back the note' }).waitFor();
  await page.keyboard.press('ArrowLeft');
  presses += 2;
  await page.getByRole('button', { name: 'Take back the note' }).waitFor({ state: 'detached' });
  expect(await stood(page)).toBe(at);

  while (!(await isOver())) await on();
  await allSaved(page);

  console.log(`${steps} steps, ${presses} presses, ${clicks} clicks of the wrench`);
  expect(clicks).toBe(24);
  expect(presses).toBeLessThanOrEqual(60);
  const all = await linesOf(jobId);
  const struck = new Set(all.filter(({ kind }) => kind === 'strike').map(({ body }) => body.entry));
  const standing = all.filter(({ id, kind }) => kind !== 'strike' && !struck.has(id));
  expect(standing.filter(({ body }) => body.putsBack !== undefined)).toHaveLength(steps);
  expect(standing.filter(({ kind }) => kind === 'spoken-note')).toHaveLength(0);
  expect(all.filter(({ kind }) => kind === 'spoken-note')).toHaveLength(1);
  expect(struck.size).toBe(2);
  // every piece, every look before it is covered and every bolt was said
  const said = await saidOn(page);
  const titles = new Set(shown.map((title) => title.replace(/ back on$/, '')));
  for (const title of titles) {
    if (title === '' || title.startsWith('Before you go on')) continue;
    expect(
      said.some((words) => words.startsWith(`Put back: ${title}`)),
      title,
    ).toBe(true);
  }
  expect(said.filter((words) => words.startsWith('Before you go on')).length).toBeGreaterThan(5);
  expect(said).toContain('Cylinder head: tight.');
  expect(said.at(-1)).toContain('Everything is back on');
  expect(said.filter((words) => /^Bolt \d/.test(words)).length).toBeGreaterThanOrEqual(24);
  await page.close();
}, 400_000);

test('a soak rings on another sheet after a reload, by the title, the notification and the buzz, until somebody has heard it', async () => {
  const soak = (left: number) =>
    new Date(Date.now() + left - 30 * 60_000).toISOString().replace('Z', '+00:00');
  const job = await hang(visit, 61, { architecture: 'overhead-valve', machine: 'Pump' });
  const context = await visit.browser.newContext();
  await context.addInitScript(() => {
    const rung: string[] = [];
    Object.assign(window, { rung });
    // a page with a service worker lets that show it
    ServiceWorkerRegistration.prototype.showNotification = async (title, options) =>
      void rung.push(`notified: ${title}: ${options?.body}`);
    Object.defineProperty(Notification, 'permission', { get: () => 'granted' });
    navigator.vibrate = () => rung.push('buzzed') > 0;
  });
  const { page } = await openPage(context, `${visit.shop.address}/job/${job}/measure`);
  await page.getByRole('heading', { name: 'Cleaning' }).waitFor();
  await post([
    {
      ...{
        id: '01900000-0000-7000-8000-006100000099',
        job,
        at: soak(12_000),
        by: 'bench',
        kind: 'cleaning',
        v: 1,
      },
      body: {
        cleaning: 'bowl',
        title: 'Carburetor bowl',
        materials: ['zinc-alloy'],
        agent: 'carburetor-dip',
        state: 'soaking',
        soakMinutes: 30,
      },
    },
  ]);
  await page.getByText('soaks until').waitFor();
  await page.waitForTimeout(1000); // what rings is told to the device after the touch was answered
  await page.goto(`${visit.shop.address}/shop`);
  await page.reload();
  const rung = () => page.evaluate(() => (window as unknown as { rung: string[] }).rung);
  const bell = page.getByRole('alert').filter({ hasText: 'Time is up' });
  await bell.waitFor({ timeout: 30_000 });
  expect(await page.title()).toBe('! Time is up: Tag 61, carburetor bowl: its soak is over');
  await expect
    .poll(rung)
    .toEqual(['buzzed', 'notified: Time is up: Tag 61, carburetor bowl: its soak is over']);
  await page.reload();
  await bell.waitFor();
  await bell.getByRole('button', { name: 'Heard' }).click();
  await bell.waitFor({ state: 'detached' });
  expect(await page.title()).toBe('Wristpin');
  await page.reload();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.waitForTimeout(1500);
  expect(await bell.count()).toBe(0);
  await context.close();
});

test.each([
  ['a phone', { width: 390, height: 844 }],
  ['a phone on its side', { width: 844, height: 390 }],
])('on %s what rings covers neither the torque nor the buttons under it', async (_, viewport) => {
  const tag = 62 + (viewport.width > viewport.height ? 1 : 0);
  const job = await hang(visit, tag, { architecture: 'overhead-valve' }, [['joint', headJoint]]);
  const began = new Date(Date.now() - 31 * 60_000).toISOString().replace('Z', '+00:00');
  const id = `01900000-0000-7000-8000-00${tag}00000099`;
  const soaking = {
    cleaning: 'bowl',
    title: 'Carburetor bowl',
    materials: ['zinc-alloy'],
    agent: 'carburetor-dip',
  };
  await post([
    {
      ...{ id, job, at: began, by: 'bench', kind: 'cleaning', v: 1 },
      body: { ...soaking, state: 'soaking', soakMinutes: 30 },
    },
  ]);
  const context = await visit.browser.newContext({ ...phone, viewport });
  const { page } = await openPage(context, `${visit.shop.address}/job/${job}/tighten/head`);
  await page.getByRole('alert').filter({ hasText: 'Time is up' }).waitFor();
  for (const part of ['.step .big', '.step > footer .go']) {
    const isOnTop = await page.locator(part).evaluate((element) => {
      const { x, y, width } = element.getBoundingClientRect();
      const on = document.elementFromPoint(x + Math.min(width, 60) / 2, y + 4);
      return element === on || element.contains(on);
    });
    expect(isOnTop, part).toBe(true);
  }
  await expectAccessible(page, 'a bell in step mode');
  await page.screenshot({ path: `test-results/bell-${viewport.width}.png` });
  await context.close();
});
