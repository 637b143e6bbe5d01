import type { BrowserContextOptions, Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { expectAccessible, hang, openPage, phone, visitShop, wide } from './support.js';

/** The dialogs that come up in the middle of an act: by day and by night, on the bench and in the apron. */
const visit = visitShop();
let job: string;

const off = (component: string, title: string) =>
  [
    'step',
    {
      ...{ step: component, stage: 'teardown', component, title, state: 'done', bag: title },
      fasteners: [{ what: 'bolt', count: 4 }],
    },
  ] as const;

beforeAll(async () => {
  job = await hang(visit, 51, { architecture: 'overhead-valve', carburetor: 'float-bowl' }, [
    ['decision', { about: 'machine', title: 'To be repaired', choice: 'repair', reason: 'sound bore' }],
    off('rocker-cover', 'Rocker cover'),
    off('cylinder-head', 'Cylinder head'),
    ['goal', { component: 'carburetor', title: 'Carburetor', why: 'it leaks', state: 'wanted' }],
    ['part', { part: 'head-gasket', name: 'Head gasket', count: 1, state: 'ordered', due: '2030-01-05' }],
  ]);
});

const looks: readonly [string, BrowserContextOptions][] = [
  ['1440 px by day', { ...wide, colorScheme: 'light' }],
  ['1440 px by night', { ...wide, colorScheme: 'dark' }],
  ['390 px by day', { ...phone, colorScheme: 'light' }],
  ['390 px by night', { ...phone, colorScheme: 'dark' }],
];
const dialogs: readonly (readonly [title: string, sheet: string, tap: string | RegExp])[] = [
  ['A piece of film', 'teardown', 'Name a piece of film'],
  ['Old head gasket for now', 'assembly', 'Old head gasket back in for now'],
  ['Before it is covered', 'put-together/cylinder-head', /^It is back on/],
  ['Take it off without the picture?', 'take-apart/carburetor', /^(It is off|Off and plugged)/],
  ['Off up to which?', 'take-apart', 'Several are off'],
];

async function expectDialogWell(page: Page, title: string): Promise<void> {
  await page.getByRole('dialog', { name: title }).waitFor();
  await expectAccessible(page, title);
  const { over, small } = await page.evaluate(() => ({
    over: document.documentElement.scrollWidth - window.innerWidth,
    small: [...document.querySelectorAll<HTMLElement>('dialog[open] :is(button, input, textarea, select)')]
      .filter((e) => e.offsetParent !== null && e.getBoundingClientRect().height < 44)
      .map((e) => e.outerHTML.slice(0, 80)),
  }));
  expect(over, title).toBeLessThanOrEqual(0);
  expect(small, title).toEqual([]);
}

test.each(looks)(
  'at %s each is accessible, fits its window and has controls for a thumb',
  async (_, look) => {
    const context = await visit.browser.newContext(look);
    const { page, errors } = await openPage(context, visit.shop.address);
    for (const [title, sheet, tap] of dialogs) {
      await page.goto(`${visit.shop.address}/job/${job}/${sheet}`);
      await page.getByRole('button', { name: tap }).filter({ visible: true }).first().click();
      await expectDialogWell(page, title);
    }
    expect(errors).toEqual([]);
    await context.close();
  },
);
