import { cpSync, mkdtempSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { stages } from '../../src/job/index.js';
import { loadDemo, packaged } from '../../src/shopkeep/index.js';
import { startServer } from '../server/support.js';
import { type BenchInNetwork, Phone, startBench } from './phones.js';
import { allSaved, openPage, phone, type RunningShop, startBrowser, startShop } from './support.js';
import { taggedJob } from './taps.js';

let shop: RunningShop;
let browser: Browser;
beforeAll(async () => {
  shop = await startShop('--demo');
  browser = await startBrowser();
});
afterAll(async () => {
  await browser?.close();
  await shop?.stop();
});

interface Told {
  readonly kind: string;
  readonly body: { readonly words?: string; readonly picture?: { readonly sha256: string } };
}

const opened = /^(?!Opening|One moment)/;
const isThere = (page: Page) => page.getByRole('heading', { level: 1, name: opened }).waitFor();
const waitingOf = (page: Page, words: string) =>
  page.getByRole('status').filter({ hasText: words }).first().waitFor();

/** By the stage list, as a thumb goes; without a reload, which would need the network. */
async function eachSheet(page: Page): Promise<void> {
  for (const stage of stages) {
    await page.getByRole('button', { name: 'Stages' }).click();
    await page.locator(`.stages a[href$="/${stage}"]`).click();
    await isThere(page);
    await page.locator(`.stages a[href$="/${stage}"][aria-current="page"]`).waitFor({ state: 'attached' });
    expect(await page.getByText('cannot be shown').count(), stage).toBe(0);
  }
}

/** Two names of one bench: at the first the phone is paired, the second is what is left when the network has changed. */
const lines = [
  { over: 'plain HTTP', secure: false, first: '127.0.0.2', next: '127.0.0.3' },
  { over: 'https by the shop’s own authority', secure: true, first: '10.20.30.40', next: 'bench.local' },
];

describe.each(lines)('a phone that is out of reach of the bench, over $over', ({ secure, first, next }) => {
  let bench: BenchInNetwork;
  let phone: Phone;
  // a second try begins with a bench that nobody has moved or written to
  beforeEach(async () => {
    bench = await startBench(secure, [first, next]);
    phone = new Phone();
  });
  afterEach(async () => {
    await phone?.close();
    await bench?.close();
  });
  const pictures = readdirSync('demo/pictures').slice(0, 5);
  const note = async (page: Page, words: string) => {
    await page.getByLabel('Write a note').fill(words);
    await page.getByRole('button', { name: 'Note', exact: true }).click();
  };
  const told = async (job: string, beginning: string) => {
    const { entries } = (await bench.server.get(`/api/jobs/${job}/entries`)).json as { entries: Told[] };
    return {
      entries,
      notes: entries.flatMap(({ body }) => (body.words?.startsWith(beginning) ? [body.words] : [])),
    };
  };
  const pair = async (page: Page) => {
    await page.getByLabel('What is it called?').fill('Apron phone');
    await page.getByRole('button', { name: 'Pair it' }).click();
    await page.getByRole('link', { name: /^Tag 17/ }).waitFor();
  };

  test('all nine sheets and step mode open and work; twenty lines and five pictures outlive a reload, the browser’s end and the bench’s address; then all is in the store once and in order, and what a phone that was shut out still holds is said and sent when it is let in again', async () => {
    const job = await taggedJob(bench.server.url, 17);
    const at = (path: string) => `${bench.origin(first)}/job/${job}/${path}`;
    const trusted = secure ? await phone.trust(bench, first) : [];
    let context = await phone.open({ reached: [first, next] }, {}, trusted);
    {
      const { page } = await openPage(context, await bench.pairingLink(first));
      await pair(page);
      await page.goto(at('intake'));
      await isThere(page);
      await allSaved(page);
      await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
    }

    context = await phone.open({ reached: [], gone: [first, next] }, { offline: true }, trusted);
    const { page, errors } = await openPage(context, at('intake'));
    await eachSheet(page);
    for (const step of ['tighten/cylinder-head', 'take-apart', 'put-together']) {
      await page.goto(at(step));
      await page
        .locator('.step')
        .or(page.getByRole('heading', { level: 1, name: opened }))
        .first()
        .waitFor();
      expect(await page.getByText('cannot be shown').count(), step).toBe(0);
    }
    await page.goto(at('intake'));
    const files = pictures.map((name) => `demo/pictures/${name}`);
    await page.locator('main input[type=file]').first().setInputFiles(files);
    await waitingOf(page, '5 waiting to send');
    await page.getByRole('button', { name: 'Log', exact: true }).click();
    for (let n = 1; n <= 20; n += 1) {
      await note(page, `away ${n}`);
      await waitingOf(page, `${5 + n} waiting to send, no`);
    }
    await page.reload();
    await waitingOf(page, '25 waiting to send');
    await page.goto(`${bench.origin(first)}/shop/unsent`);
    await page.getByText('25 lines and 5 pictures wait on this device').waitFor();
    // the network's own words are no fault of the page
    expect(errors.filter((words) => !/ERR_(INTERNET_DISCONNECTED|NAME_NOT_RESOLVED)/.test(words))).toEqual(
      [],
    );

    // the bench is called otherwise from here on, and the phone hears of it only by finding nobody
    bench.callIt([next]);
    const trustedThere = secure ? await phone.trust(bench, next, first) : [];
    context = await phone.open({ reached: [next], gone: [first] }, { offline: true }, trustedThere);
    const again = (await openPage(context, at('intake'))).page;
    await isThere(again);
    await waitingOf(again, '25 waiting to send');
    await context.setOffline(false);
    await again.getByRole('button', { name: 'Bench moved: go on there' }).waitFor();
    await expect.poll(async () => (await told(job, 'away ')).notes.length).toBe(20);
    await allSaved(again);
    const { entries, notes } = await told(job, 'away ');
    expect(notes).toEqual(Array.from({ length: 20 }, (_, i) => `away ${i + 1}`));
    const photographs = entries.filter(({ kind }) => kind === 'photograph').slice(-5);
    expect(new Set(photographs.map(({ body }) => body.picture!.sha256))).toEqual(
      new Set(pictures.map((name) => name.replace('.jpg', ''))),
    );
    for (const { body } of photographs)
      expect((await bench.server.get(`/api/pictures/${body.picture!.sha256}`)).status).toBe(200);

    await again.getByRole('button', { name: 'Bench moved: go on there' }).click();
    await again.waitForURL((url) => url.origin === bench.origin(next));
    await again.getByRole('link', { name: /^Tag 17/ }).click();
    await allSaved(again);
    const devices = async () =>
      (await bench.server.get('/api/devices')).json.devices as { id: string; name: string }[];
    expect((await devices()).map(({ name }) => name)).toEqual(['Apron phone']);

    await again.getByRole('button', { name: 'Log', exact: true }).click();
    await context.setOffline(true);
    for (const words of ['shut out 1', 'shut out 2']) await note(again, words);
    await waitingOf(again, '2 waiting to send');
    await bench.server.send('DELETE', `/api/devices/${(await devices())[0]!.id}`);
    await context.setOffline(false);
    await waitingOf(again, 'not paired any more');
    await again.goto(`${bench.origin(next)}/shop/unsent`);
    // the page that everybody gets who is not paired, or the application where the device has it already
    await again
      .locator('main')
      .getByText(/2 lines (wait|are still) on this device/)
      .waitFor();
    expect((await told(job, 'shut out')).notes).toEqual([]);
    await again.goto(await bench.pairingLink(next));
    await pair(again);
    await allSaved(again);
    expect((await told(job, 'shut out')).notes).toEqual(['shut out 1', 'shut out 2']);
  });
});

test('a device that has never been here says so, and does not look at the bench for ever', async () => {
  const other = await browser.newContext(phone);
  try {
    const { page } = await openPage(other, shop.address);
    await allSaved(page);
    await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
    await page.evaluate(() => indexedDB.deleteDatabase('wristpin-seen'));
    await page.close();
    await other.setOffline(true);
    const blank = (await openPage(other, shop.address)).page;
    await blank.getByRole('heading', { name: 'The bench has not been seen from this device yet' }).waitFor();
    await waitingOf(blank, 'no network');
  } finally {
    await other.close();
  }
});

test('where the browser allows no service worker, all that there is comes ahead while the page is open', async () => {
  const other = await browser.newContext({ ...phone, serviceWorkers: 'block' });
  try {
    const job = await taggedJob(shop.address, 17);
    const { page } = await openPage(other, `${shop.address}/job/${job}/intake`);
    await isThere(page);
    const files = (await (await fetch(`${shop.address}/files.json`)).json()) as string[];
    const come = () =>
      page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => new URL(name).pathname));
    await expect.poll(come).toEqual(expect.arrayContaining(files));
    await other.setOffline(true);
    await eachSheet(page);
  } finally {
    await other.close();
  }
});

test('a first visit that was cut off is made good when the bench is there again', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'wristpin-web-'));
  const webRoot = join(folder, 'web');
  cpSync(packaged().web, webRoot, { recursive: true });
  const missing = readdirSync(join(webRoot, 'assets')).filter((name) => name.startsWith('teardown-'));
  const move = (from: string, to: string) => {
    for (const name of missing) renameSync(join(from, name), join(to, name));
  };
  move(join(webRoot, 'assets'), folder);
  const server = await startServer({ webRoot, demo: packaged().demo, clock: () => new Date() });
  await loadDemo(server.store, packaged().demo);
  const other = await browser.newContext(phone);
  try {
    const job = await taggedJob(server.url, 17);
    const { page } = await openPage(other, `${server.url}/job/${job}/intake`);
    await isThere(page);
    const workers = () =>
      page.evaluate(async () =>
        (await navigator.serviceWorker.getRegistrations()).map((each) => (each.active ? 'whole' : 'begun')),
      );
    await expect.poll(workers).toEqual([]); // all or nothing
    move(folder, join(webRoot, 'assets'));
    await other.setOffline(true);
    await waitingOf(page, 'no network');
    await other.setOffline(false);
    await allSaved(page);
    await expect.poll(workers).toEqual(['whole']);
    await other.setOffline(true);
    await eachSheet(page);
  } finally {
    await other.close();
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
});

test('a part of the program that does not come costs its sheet only, and comes when the network is back', async () => {
  const other = await browser.newContext({ ...phone, serviceWorkers: 'block' });
  try {
    await other.route(/assets\/(teardown|measure)-/, (route) => route.abort());
    const job = await taggedJob(shop.address, 17);
    const { page } = await openPage(other, `${shop.address}/job/${job}/intake`);
    await isThere(page);
    const open = async (stage: string) => {
      await page.getByRole('button', { name: 'Stages' }).click();
      await page.locator(`.stages a[href$="/${stage}"]`).click();
    };
    await open('teardown');
    await page.getByText('The sheet “Teardown” cannot be shown now.').waitFor();
    await open('findings');
    await isThere(page);
    await page.getByText('cannot be shown').waitFor({ state: 'detached' });
    await open('teardown');
    // as in a browser that remembers what did not come: with the bench there, the page is loaded anew
    const again = page.getByRole('button', { name: 'Try again' });
    await Promise.all([page.waitForEvent('load'), again.click()]);
    await again.waitFor();
    await other.unroute(/assets\/(teardown|measure)-/);
    await again.click();
    await page.getByText('cannot be shown').waitFor({ state: 'detached' });
    await isThere(page);
  } finally {
    await other.close();
  }
});
