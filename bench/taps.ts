/**
 * What a person waits for on the page: the built program with the demonstration job in a Chromium. Printed: the script
 * fetched before the first screen, how far the Bench shifts while it fills, and for each sheet, opened and tapped once,
 * the time from tap to paint, the page's longest task by the clock and by the processor (the clock also counts what else
 * the computer does), and all processor time of the page's thread.
 */
import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { phone, quickHands, type RunningShop, startBrowser, startShop, wide } from '../test/e2e/running.js';
import { settled, sheetTaps, taggedJob } from '../test/e2e/taps.js';

const shop = await startShop('--demo');
const browser = await startBrowser();
await theBench('1440', wide);
await theBench('390', phone);
await theSheets(shop, browser);
await browser.close();
await shop.stop();

async function theBench(width: string, look: BrowserContextOptions): Promise<void> {
  const page = await (await browser.newContext(look)).newPage();
  await page.goto(shop.address);
  await settled(page);
  await page.waitForTimeout(4000); // the plan is worked out beside the page
  const { kB, paintMs, shift } = await page.evaluate(firstScreen);
  console.log(
    `Bench at ${width} px: ${kB.toFixed(0)} kB of script on the wire before the first paint at ${paintMs.toFixed(0)} ms, layout shift ${shift.toFixed(4)}`,
  );
  await page.context().close();
}

/** In the page. */
async function firstScreen(): Promise<{ kB: number; paintMs: number; shift: number }> {
  const paintMs = performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? Number.NaN;
  const resources = performance.getEntriesByType('resource') as PerformanceResourceTiming[];
  const scripts = resources.filter((r) => /\.js(\?|$)/.test(r.name) && r.startTime < paintMs);
  const shifts = await new Promise<PerformanceEntry[]>((done) => {
    new PerformanceObserver((list) => done(list.getEntries())).observe({
      type: 'layout-shift',
      buffered: true,
    });
    setTimeout(() => done([]), 500); // nothing shifted
  });
  const shift = shifts.reduce((sum, entry) => sum + (entry as PerformanceEntry & { value: number }).value, 0);
  return { kB: scripts.reduce((sum, r) => sum + r.transferSize, 0) / 1000, paintMs, shift };
}

async function theSheets(shop: RunningShop, browser: Browser): Promise<void> {
  const job = await taggedJob(shop.address, 17);
  const page = await (await browser.newContext(wide)).newPage();
  await page.addInitScript(quickHands);
  console.log(`\n${'ms'.padEnd(24)}to paint   longest task (processor)   page's thread in all (processor)`);
  for (const { stage, ready } of sheetTaps) {
    await page.goto(`${shop.address}/job/${job}/${stage === 'intake' ? 'parts' : 'intake'}`);
    await settled(page);
    await page.waitForTimeout(1500); // the other sheets are fetched ahead
    await printed(browser, page, `${stage}, opened`, page.locator(`nav.stages a[href$="/${stage}"]`));
    await printed(browser, page, `${stage}, a line written`, await ready(page));
  }
}

async function printed(browser: Browser, page: Page, what: string, tap: Locator): Promise<void> {
  await page.evaluate(watchPaint);
  await browser.startTracing(page, { categories: ['disabled-by-default-devtools.timeline', '__metadata'] });
  await tap.click();
  await settled(page);
  await page.waitForTimeout(1500);
  const tasks = tasksOf(JSON.parse((await browser.stopTracing()).toString()).traceEvents);
  const paint = await page.evaluate(() => (globalThis as unknown as { toPaint: number }).toPaint);
  const most = (of: 'dur' | 'tdur') => Math.max(0, ...tasks.map((task) => task[of]));
  const sum = (of: 'dur' | 'tdur') => tasks.reduce((all, task) => all + task[of], 0);
  const ms = (us: number) => (us / 1000).toFixed(0).padStart(5);
  console.log(
    `${what.padEnd(24)}${paint.toFixed(0).padStart(8)}   ${ms(most('dur'))} (${ms(most('tdur'))})   ${ms(sum('dur'))} (${ms(sum('tdur'))})`,
  );
}

/** In the page: from a tap to the paint after it, in steps of 8 ms, as the browser itself times it; under 16 it says 0. */
function watchPaint(): void {
  const here = globalThis as unknown as { toPaint: number };
  here.toPaint = 0;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) here.toPaint = Math.max(here.toPaint, duration);
  }).observe({ type: 'event', durationThreshold: 16 } as PerformanceObserverInit);
}

interface Traced {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** The tasks of the page's thread, in microseconds of the wall and of the processor. */
function tasksOf(events: readonly Traced[]): { dur: number; tdur: number }[] {
  const mains = new Set(
    events
      .filter((e) => e.name === 'thread_name' && e.args?.name === 'CrRendererMain')
      .map((e) => `${e.pid} ${e.tid}`),
  );
  return events
    .filter((e) => e.name === 'RunTask' && mains.has(`${e.pid} ${e.tid}`))
    .map(({ dur = 0, tdur = 0 }) => ({ dur, tdur }));
}
