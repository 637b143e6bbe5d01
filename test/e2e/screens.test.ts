import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findWorksheet } from '../../src/desk/index.js';
import { isPublished } from '../../src/worksheet/index.js';
import {
  expectAccessible,
  openPage,
  phone,
  type RunningShop,
  startBrowser,
  startShop,
  wide,
} from './support.js';

/** Every screen of the invented job: readable, reachable by keyboard, nothing wider than the window. */
let shop: RunningShop;
let browser: Browser;
let screens: readonly string[];
/** the finished job and the one under way */
let [done, open] = ['', ''];

beforeAll(async () => {
  shop = await startShop('--demo');
  browser = await startBrowser();
  const listed = (await (await fetch(`${shop.address}/api/jobs`)).json()) as {
    jobs: { id: string; summary: { tag: number } }[];
  };
  const tagged = (tag: number) => listed.jobs.find((j) => j.summary.tag === tag)!.id;
  const full = tagged(17);
  [done, open] = [full, tagged(18)];
  const { entries } = (await (await fetch(`${shop.address}/api/jobs/${full}/entries`)).json()) as {
    entries: { kind: string; body: { joint?: string } }[];
  };
  const joint = entries.find((e) => e.kind === 'joint')!.body.joint;
  const stages = [
    'intake',
    'findings',
    'worth-it',
    'parts',
    'teardown',
    'measure',
    'assembly',
    'run-up',
    'hand-over',
  ];
  screens = [
    '/',
    '/desk',
    '/desk/tightening-order',
    '/shop',
    '/shop/unsent',
    ...stages.map((s) => `/job/${full}/${s}`),
    `/job/${full}/tighten/${joint}`,
    `/job/${full}/take-apart/carburetor`,
    `/job/${full}/put-together/cylinder-head`,
  ];
});
afterAll(async () => {
  await browser?.close();
  await shop?.stop();
});

const looks: readonly [string, BrowserContextOptions][] = [
  ['1440 px by day', { ...wide, colorScheme: 'light' }],
  ['1440 px by night', { ...wide, colorScheme: 'dark' }],
  ['390 px by day', { ...phone, colorScheme: 'light' }],
  ['390 px by night', { ...phone, colorScheme: 'dark' }],
];

async function visit(
  options: BrowserContextOptions,
  look: (page: Page, screen: string) => Promise<void>,
): Promise<void> {
  const context = await browser.newContext(options);
  const { page, errors } = await openPage(context, shop.address);
  for (const screen of screens) {
    await page.goto(shop.address + screen);
    await page.getByRole('heading').or(page.getByRole('img')).first().waitFor();
    await page.waitForLoadState('networkidle').catch(() => {}); // the live-update stream stays open
    await look(page, screen);
  }
  expect(errors).toEqual([]);
  await context.close();
}

/** The log is the same on every sheet of a job and long: it is judged once, on the intake sheet. */
const partsOf = (screen: string) => (screen.endsWith('/intake') ? [] : ['.log .entries']);

async function expectFits(page: Page, screen: string): Promise<void> {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(over, `${screen} is wider than its window`).toBeLessThanOrEqual(0);
}

async function expectThumbs(page: Page, screen: string): Promise<void> {
  const small = await page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        'main button, .bottom button, main input:not([type=checkbox], [type=radio]), main select',
      ),
    ]
      .filter((e) => e.offsetParent !== null && !e.matches('.number, .hidden'))
      .filter((e) => e.getBoundingClientRect().height < 44)
      .map((e) => e.outerHTML.slice(0, 90)),
  );
  expect(small, `${screen} has controls smaller than a thumb`).toEqual([]);
}

test.each(looks)(
  'at %s every screen is accessible, fits its window, and has controls for a thumb',
  (_, options) =>
    visit(options, async (page, screen) => {
      await expectAccessible(page, screen, partsOf(screen));
      await expectFits(page, screen);
      await expectThumbs(page, screen);
    }),
);

/** Taps one after another; the last opens the dialog. */
type Way = readonly [screen: () => string, ...taps: (string | RegExp)[]];
const on = (job: () => string, stage: string) => () => `/job/${job()}/${stage}`;
const [finished, underWay] = [() => done, () => open];
const measure = (name: string | RegExp): Way => [on(finished, 'measure'), 'Add a reading', name];
const dialogs: readonly (readonly [title: string, way: Way])[] = [
  ['hang a tag', [() => '/', 'Hang a tag on a machine']],
  ['strike a line', [on(finished, 'intake'), /^Strike:/]],
  ['log something seen', [on(underWay, 'findings'), 'Log something seen']],
  ['say what a fault is', [on(underWay, 'findings'), /^Say what it is/]],
  ['is it worth it', [on(finished, 'worth-it'), 'Decide']],
  ['add a part', [on(finished, 'parts'), 'Add a part']],
  ['change a part', [on(finished, 'parts'), 'Change']],
  ['not needed', [on(finished, 'parts'), 'Not needed on this machine']],
  ['what must be reached', [on(underWay, 'teardown'), 'Add a goal']],
  ['how it differs', [on(underWay, 'teardown'), 'It differs from usual']],
  ['what comes off', [on(underWay, 'teardown'), /^Something (else )?comes off$/]],
  ['the bore', measure(/^Bore, at heights/)],
  ['a face', measure('Head and block face flatness')],
  ['one reading', measure('Spark plug gap')],
  ['a reading of one’s own', measure('Something else')],
  ['a stamp looked at', measure(/stamped oversize/)],
  ['deciding about a reading', [on(finished, 'measure'), /^Decide/]],
  ['laying out a joint', [on(finished, 'assembly'), 'Lay out a joint to tighten']],
  ['a step of the run-up', [on(underWay, 'run-up'), 'Log it']],
  ['handing over', [on(finished, 'hand-over'), 'Hand over']],
];

async function tap(page: Page, name: string | RegExp): Promise<void> {
  const button = page
    .getByRole('button', { name, exact: typeof name === 'string' })
    .filter({ visible: true })
    .first();
  // on a phone the log is one thumb away
  if (String(name).includes('Strike') && page.viewportSize()!.width < 900)
    await page.getByRole('button', { name: 'Log', exact: true }).click();
  await button.click();
}

test.each(looks)('at %s every dialog is accessible and fits its window', async (_, options) => {
  const context = await browser.newContext(options);
  const { page, errors } = await openPage(context, shop.address);
  for (const [title, [screen, ...taps]] of dialogs) {
    await page.goto(shop.address + screen());
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    for (const name of taps) await tap(page, name);
    await page.locator('dialog[open]').waitFor();
    await expectAccessible(page, title, ['main', '.log', '.stages', '.top']);
    await expectFits(page, title);
  }
  expect(errors.filter((e) => !/status of 404/.test(e))).toEqual([]);
  await context.close();
});

test('every worksheet of the reference desk answers its example within its window, and calls it published only where it is', async () => {
  const context = await browser.newContext(phone);
  const { page, errors } = await openPage(context, `${shop.address}/desk`);
  await page.locator('main li a').first().waitFor();
  const addresses = await page
    .locator('main li a')
    .evaluateAll((links) => links.map((a) => (a as HTMLAnchorElement).href));
  expect(addresses.length).toBeGreaterThanOrEqual(40);
  for (const address of addresses) {
    await page.goto(address);
    const [example] = findWorksheet(address.split('/').at(-1)!)!.examples;
    const kind = isPublished(example!) ? 'published' : 'worked';
    await page.getByRole('button', { name: `Fill in a ${kind} example`, exact: true }).click();
    await page.locator('.answers li, .wrong-box').first().waitFor();
    await expectFits(page, address);
  }
  expect(errors).toEqual([]);
  await context.close();
});

test('the keyboard alone reaches every control of every screen', () =>
  visit(wide, async (page, screen) => {
    const all = await page.evaluate(markControls);
    const reached = new Set<string>();
    for (let i = 0; i < all.length + 60 && reached.size < all.length; i++) {
      await page.keyboard.press('Tab');
      const mark = await page.evaluate(() => document.activeElement?.getAttribute('data-control'));
      if (mark) reached.add(mark);
    }
    expect(
      all.filter((mark) => !reached.has(mark)),
      screen,
    ).toEqual([]);
  }));

/** Marks what a person can act on; of a group of radio buttons one stop is enough, arrows do the rest. */
function markControls(): string[] {
  const seen = new Set<string>();
  const controls = [
    ...document.querySelectorAll<HTMLElement>(
      'a[href], button, input, select, textarea, summary, [tabindex="0"]',
    ),
  ].filter((e) => {
    if (e.offsetParent === null && !(e instanceof SVGElement)) return false;
    if (e.matches(':disabled') || e.closest('details:not([open]) > :not(summary)')) return false;
    const group = e instanceof HTMLInputElement && e.type === 'radio' ? e.name : undefined;
    if (group === undefined) return true;
    if (seen.has(group)) return false;
    seen.add(group);
    const checked = document.querySelector<HTMLElement>(`input[name="${CSS.escape(group)}"]:checked`);
    return checked === null || checked === e;
  });
  return controls.map((e, i) => {
    e.setAttribute('data-control', String(i));
    return String(i);
  });
}
