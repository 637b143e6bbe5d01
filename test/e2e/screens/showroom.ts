import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { stages } from '../../../src/job/index.js';
import { openPage, phone, type RunningShop, startBrowser, startShop, wide } from '../support.js';
import { opened } from '../taps.js';

/** The invented jobs, opened for tests that go over all screens: the finished one and the one under way. */
export interface Showroom {
  readonly shop: RunningShop;
  readonly browser: Browser;
  readonly finished: string;
  readonly underWay: string;
  /** every screen, as a path: the bench, the desk, the shop and all that the finished job has */
  readonly screens: readonly string[];
}

/** Filled before the first test of the file runs; read it inside tests only. */
export function openShowroom(): Showroom {
  const room = {} as { -readonly [K in keyof Showroom]: Showroom[K] };
  beforeAll(async () => {
    room.shop = await startShop('--demo');
    room.browser = await startBrowser();
    Object.assign(room, await invented(room.shop.address));
  });
  afterAll(async () => {
    await room.browser?.close();
    await room.shop?.stop();
  });
  return room;
}

async function invented(address: string): Promise<Pick<Showroom, 'finished' | 'underWay' | 'screens'>> {
  const read = async <T>(path: string) => (await (await fetch(address + path)).json()) as T;
  const { jobs } = await read<{ jobs: { id: string; summary: { tag: number } }[] }>('/api/jobs');
  const tagged = (tag: number) => jobs.find((j) => j.summary.tag === tag)!.id;
  const [finished, underWay] = [tagged(17), tagged(18)];
  const { entries } = await read<{ entries: { kind: string; body: { joint?: string } }[] }>(
    `/api/jobs/${finished}/entries`,
  );
  const joint = entries.find((e) => e.kind === 'joint')!.body.joint;
  const ofJob = [
    ...stages,
    `tighten/${joint}`,
    'take-apart/carburetor',
    'put-together/cylinder-head',
    'film',
  ].map((path) => `/job/${finished}/${path}`);
  const lay = `/job/${underWay}/where-was-i`;
  const screens = ['/', '/desk', '/desk/tightening-order', '/shop', '/shop/unsent', ...ofJob, lay];
  return { finished, underWay, screens };
}

/** One context and page for all that `look` does; it ends with no error on the page but those let through. */
export async function visitRoom(
  { browser, shop }: Showroom,
  options: BrowserContextOptions,
  look: (page: Page) => Promise<void>,
  harmless = /^$/,
): Promise<void> {
  const context = await browser.newContext(options);
  const { page, errors } = await openPage(context, shop.address);
  await look(page);
  expect(errors.filter((error) => !harmless.test(error))).toEqual([]);
  await context.close();
}

/** Every screen in turn, when all that it fetches has come: by its address, or from the one before as by a link. */
export const eachScreen = (
  room: Showroom,
  options: BrowserContextOptions,
  look: (page: Page, screen: string) => Promise<void>,
  by: 'address' | 'link' = 'link',
): Promise<void> =>
  visitRoom(room, options, async (page) => {
    for (const screen of room.screens) {
      if (by === 'address') await page.goto(room.shop.address + screen);
      else await follow(page, screen);
      await standing(page);
      await look(page, screen);
    }
  });

/** Waits until the screen stands with its pictures and follows nothing more; some screens have no word of what is saved. */
export async function standing(page: Page): Promise<void> {
  await opened(page);
  await page.waitForFunction(
    () =>
      document.querySelector('[aria-busy="true"]') === null &&
      [...document.images].every((i) => i.complete || i.loading === 'lazy'),
  );
}

/** As a link does it: the program is not loaded anew, which is four fifths of a visit's time. */
export async function follow(page: Page, screen: string): Promise<void> {
  await page.evaluate((path) => history.pushState(null, '', path), screen);
}

export const widths: readonly [string, BrowserContextOptions][] = [
  ['1440 px', wide],
  ['390 px', phone],
];

/** Of each width and of each theme one: the wide one by day, a phone by night. */
export const isOneOfEach = (page: Page, when: string): boolean =>
  when === (page.viewportSize()!.width > 900 ? 'by day' : 'by night');

/** What stands on the page now, by day and by night: a change of theme loads nothing anew. */
export async function byDayAndNight(page: Page, look: (when: string) => Promise<void>): Promise<void> {
  for (const [when, colorScheme] of [
    ['by day', 'light'],
    ['by night', 'dark'],
  ] as const) {
    await page.emulateMedia({ colorScheme });
    await look(when);
  }
}

export async function expectFits(page: Page, screen: string): Promise<void> {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(over, `${screen} is wider than its window`).toBeLessThanOrEqual(0);
}
