import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { quickHands, type RunningShop, startBrowser, startShop, wide } from './running.js';

export * from './running.js';

/** `SLOWED=4`: a processor four times slower, to see what only holds on a quick one. */
const slowed = Number(process.env.SLOWED ?? 1);

/** A page that fails the test when the application throws or logs an error. */
export async function openPage(
  context: BrowserContext,
  address: string,
  hands: 'quick' | 'a person’s' = 'quick',
): Promise<{ page: Page; errors: string[] }> {
  const page = await context.newPage();
  if (slowed > 1) {
    const devTools = await context.newCDPSession(page);
    await devTools.send('Emulation.setCPUThrottlingRate', { rate: slowed });
  }
  if (hands === 'quick') await page.addInitScript(quickHands);
  const errors: string[] = [];
  page.on('pageerror', (e) => errors.push(e.message));
  page.on('console', (m) => {
    if (m.type() === 'error') errors.push(m.text());
  });
  page.setDefaultTimeout(45_000 * Math.min(slowed, 3)); // a bound on what never comes, not a wait: a busy machine takes its time
  await page.goto(address);
  return { page, errors };
}

/** Colors against what lies behind them: two thirds of the checker's time. */
const withoutColors = { 'color-contrast': { enabled: false } };

/** No serious or critical finding of the accessibility checker on what is shown now, or on all of it but its colors. */
export async function expectAccessible(
  page: Page,
  where: string,
  except: readonly string[] = [],
  rules: 'all' | 'but colors' = 'all',
): Promise<void> {
  // in the page itself and without a list of all that is well: the same rules find the same, in half the time
  const whole = new AxeBuilder({ page })
    .setLegacyMode()
    .options({ resultTypes: ['violations'], rules: rules === 'all' ? {} : withoutColors });
  const builder = except.reduce((b, part) => b.exclude(part), whole);
  const { violations } = await builder.analyze();
  const bad = violations
    .filter((v) => v.impact === 'serious' || v.impact === 'critical')
    .map(
      (v) =>
        `${where}: ${v.id} ${v.help} — ${v.nodes
          .map((n) => n.target.join(' '))
          .slice(0, 4)
          .join(' | ')}`,
    );
  expect(bad).toEqual([]);
}

export async function allSaved(page: Page): Promise<void> {
  await page.getByRole('status').filter({ hasText: 'all saved' }).first().waitFor({ state: 'attached' });
}

/** A shop, a browser and one page of it for all tests of a file; a failed test leaves a picture of what was shown. */
export interface Visit {
  readonly shop: RunningShop;
  readonly browser: Browser;
  readonly context: BrowserContext;
  readonly page: Page;
  readonly errors: string[];
}

/** Filled before the first test of the file runs; read it inside tests only. */
export function visitShop({ browser = [] }: { browser?: readonly string[] } = {}): Visit {
  const visit = {} as { -readonly [K in keyof Visit]: Visit[K] };
  beforeAll(async () => {
    visit.shop = await startShop();
    visit.browser = await startBrowser(browser);
    visit.context = await visit.browser.newContext(wide);
    Object.assign(visit, await openPage(visit.context, visit.shop.address));
  });
  afterEach(async ({ task }) => {
    if (task.result?.state === 'fail')
      await visit.page.screenshot({
        path: `test-results/${task.name.slice(0, 40).replace(/\W+/g, '-')}.png`,
        fullPage: true,
      });
  });
  afterAll(async () => {
    await visit.browser?.close();
    await visit.shop?.stop();
  });
  return visit;
}

export type Line = readonly [kind: string, body: unknown];

/** Ids of one job, told apart by its tag; 0 is the job itself. */
export const idOf = (tag: number, n: number): string =>
  `01900000-0000-7000-8000-${String(tag).padStart(4, '0')}${String(n).padStart(8, '0')}`;

/** A tagged machine and what its log holds, a minute apart, written through the same door as a device uses. */
export async function hang(
  visit: Visit,
  tag: number,
  intake: Record<string, unknown>,
  more: readonly Line[] = [],
  from = `2026-05-0${1 + (tag % 9)}T09:00:00.000+00:00`,
): Promise<string> {
  const job = idOf(tag, 0);
  await send(visit, job, tag, [['open', { tag, title: 'invented' }], ['intake', intake], ...more], from);
  return job;
}

/** Lines of the shop's own log. */
export const tellShop = (visit: Visit, lines: readonly Line[]): Promise<void> =>
  send(visit, 'shop', 9000, lines, '2026-05-01T08:00:00.000+00:00');

/** Lines of a job, a minute apart; their ids are told apart by the tag. */
export async function send(
  { context, shop }: Visit,
  job: string,
  tag: number,
  lines: readonly Line[],
  from: string,
): Promise<void> {
  const at = (n: number) => new Date(Date.parse(from) + n * 60_000).toISOString().replace('Z', '+00:00');
  const entries = lines.map(([kind, body], n) => ({
    ...{ id: idOf(tag, n + 1), job, at: at(n), by: 'bench', kind, v: 1, body },
  }));
  const answer = await context.request.post(`${shop.address}/api/entries`, {
    data: { entries },
    headers: { origin: shop.address },
  });
  expect(answer.status(), await answer.text()).toBe(200);
}

/** A head's four bolts at half and full torque with a last round: twelve clicks. */
export const headJoint = {
  joint: 'head',
  name: 'Cylinder head',
  holes: [
    [-40, 30],
    [40, 30],
    [40, -30],
    [-40, -30],
  ].map(([xMm, yMm]) => ({ xMm, yMm })),
  thread: 'M8x1.25',
  target: { written: '190 in-lb', kind: 'torque', si: 21.46711751524717, unit: 'in-lb' },
  targetOrigin: { from: "maker's sheet" },
  passes: [0.5, 1],
  finalRound: true,
  order: [1, 3, 2, 4],
  orderOrigin: { from: 'rule of thumb' },
  condition: 'clean and dry',
};
