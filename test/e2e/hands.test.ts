import type { CDPSession, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { allSaved, hang, headJoint, openPage, phone, visitShop } from './support.js';

/** A finger bounces, a pedal bounces, a key is held down: on 0.1.0 each of them logged bolts that nobody had tightened. */
const visit = visitShop();

const linesOf = async (job: string) => {
  const answer = await fetch(`${visit.shop.address}/api/jobs/${job}/entries`);
  const { entries } = (await answer.json()) as { entries: { id: string; kind: string; body: object }[] };
  return entries;
};
const kinds = async (job: string) => (await linesOf(job)).slice(3).map(({ kind }) => kind);
const calm = (page: Page) => page.waitForTimeout(450);

/**
 * A contact that bounces: each touch so many milliseconds after the one before it, as the browser is told, however long a
 * busy computer takes to hand them on.
 */
async function bounce(
  page: Page,
  gapsMs: readonly number[],
  touch: (type: 'down' | 'up') => Parameters<CDPSession['send']>,
): Promise<void> {
  const cdp = await page.context().newCDPSession(page);
  let at = Date.now() / 1000;
  const sent: Promise<unknown>[] = [];
  for (const gap of gapsMs) {
    at += gap / 1000;
    for (const type of ['down', 'up'] as const) {
      const [method, params] = touch(type);
      sent.push(cdp.send(method, { ...params, timestamp: at } as never));
    }
  }
  await Promise.all(sent);
  await cdp.detach();
}

const pedal = (type: 'down' | 'up'): Parameters<CDPSession['send']> => [
  'Input.dispatchKeyEvent',
  {
    type: type === 'down' ? 'rawKeyDown' : 'keyUp',
    key: 'PageDown',
    code: 'PageDown',
    windowsVirtualKeyCode: 34,
  },
];
const finger =
  (x: number, y: number) =>
  (type: 'down' | 'up'): Parameters<CDPSession['send']> => [
    'Input.dispatchMouseEvent',
    { type: type === 'down' ? 'mousePressed' : 'mouseReleased', x, y, button: 'left', clickCount: 1 },
  ];

async function tightening(
  tag: number,
  context = visit.context,
  hands: Parameters<typeof openPage>[2] = 'a person’s',
): Promise<{ page: Page; job: string }> {
  const job = await hang(visit, tag, { architecture: 'overhead-valve' }, [['joint', headJoint]]);
  const { page } = await openPage(context, `${visit.shop.address}/job/${job}/tighten/head`, hands);
  await page.getByRole('button', { name: 'Clicked · next bolt' }).waitFor();
  await calm(page);
  return { page, job };
}

test('a held key or pedal logs one bolt, a bouncing one too', async () => {
  const { page, job } = await tightening(41);
  await page.keyboard.down('ArrowRight');
  for (let held = 0; held < 11; held += 1) {
    await page.waitForTimeout(50);
    await page.keyboard.down('ArrowRight');
  }
  await page.keyboard.up('ArrowRight');
  await expect.poll(() => kinds(job)).toEqual(['torque']);
  await page.getByText('bolt 2 of 4').waitFor();
  await calm(page);
  await bounce(page, [0, 60, 120], pedal);
  await expect.poll(() => kinds(job)).toEqual(['torque', 'torque']);
  await calm(page);
  expect(await kinds(job)).toEqual(['torque', 'torque']);
  await page.close();
});

test('a press at the very moment in which the next bolt is shown counts for that bolt', async () => {
  const { page, job } = await tightening(40, visit.context, 'quick');
  await page.evaluate(() => {
    let answered = '';
    const press = () => {
      const shown = document.querySelector('.step > header')?.textContent ?? '';
      if (shown === answered) return;
      answered = shown;
      window.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', cancelable: true }));
    };
    new MutationObserver(press).observe(document.body, {
      childList: true,
      subtree: true,
      characterData: true,
    });
    press();
  });
  await page.getByText('tight', { exact: true }).waitFor();
  await expect.poll(() => kinds(job)).toEqual(Array(12).fill('torque'));
  await page.close();
});

test('a double tap logs one bolt; Back takes the click back, and clicking again counts it once', async () => {
  const { page, job } = await tightening(42);
  const clicked = page.getByRole('button', { name: 'Clicked · next bolt' });
  const at = (await clicked.boundingBox())!;
  await bounce(page, [0, 80, 150], finger(at.x + 20, at.y + 20));
  await expect.poll(() => kinds(job)).toEqual(['torque']);
  await page.getByText('bolt 2 of 4').waitFor();
  await calm(page);
  await page.getByRole('button', { name: 'Take back bolt 1' }).click();
  await page.getByText('bolt 1 of 4').waitFor();
  await expect.poll(() => kinds(job)).toEqual(['torque', 'strike']);
  await calm(page);
  await clicked.click();
  await page.getByText('bolt 2 of 4').waitFor();
  const lines = (await linesOf(job)).slice(3);
  expect(lines.map(({ kind }) => kind)).toEqual(['torque', 'strike', 'torque']);
  expect((lines[1]!.body as { entry: string }).entry).toBe(lines[0]!.id);
  await page.close();
});

test('at Findings a double tap answers the check that it was meant for, and one touch takes the answer back', async () => {
  const job = await hang(visit, 43, { architecture: 'overhead-valve', complaint: 'does not start' });
  const { page } = await openPage(visit.context, `${visit.shop.address}/job/${job}/findings`, 'a person’s');
  const answer = page.locator('.card.first .outcomes button').first();
  await answer.waitFor();
  await calm(page);
  await answer.scrollIntoViewIfNeeded();
  const at = (await answer.boundingBox())!;
  await bounce(page, [0, 100, 140], finger(at.x + 10, at.y + 10));
  await page.getByRole('button', { name: 'Undo' }).waitFor();
  await calm(page);
  const said = async () => (await linesOf(job)).slice(2).map(({ kind }) => kind);
  expect(await said()).toEqual(['observation']);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(said).toEqual(['observation', 'strike']);
  await page.getByRole('button', { name: 'Undo' }).waitFor({ state: 'detached' });
  await page.close();
});

test('what was answered cannot be answered again while the sheet follows', async () => {
  const job = await hang(visit, 44, { architecture: 'overhead-valve', complaint: 'does not start' });
  const { page } = await openPage(visit.context, `${visit.shop.address}/job/${job}/findings`);
  const title = page.locator('.card.first header b');
  const answered = await title.textContent();
  await page.evaluate(() => {
    const shown = () => document.querySelector('.card.first header b')?.textContent;
    const before = shown();
    const press = () => {
      const button = document.querySelector<HTMLElement>('.card.first .outcomes button:enabled');
      if (shown() === before) button?.click();
    };
    press();
    new MutationObserver(press).observe(document.body, {
      childList: true,
      subtree: true,
      attributes: true,
      characterData: true,
    });
  });
  await expect.poll(() => title.textContent()).not.toBe(answered);
  await allSaved(page);
  expect((await linesOf(job)).filter(({ kind }) => kind === 'observation')).toHaveLength(1);

  await page.goto(`${visit.shop.address}/job/${job}/run-up`);
  const dialog = page.getByRole('dialog');
  for (let step = 0, asked = ''; step < 3; step += 1) {
    await page.getByRole('button', { name: 'Next step' }).first().click();
    const asks = dialog.getByRole('heading').first();
    expect(await asks.textContent()).not.toBe(asked);
    asked = (await asks.textContent()) ?? '';
    await dialog.getByRole('button', { name: 'Does not apply' }).click();
    await dialog.waitFor({ state: 'hidden' });
  }
  await page.close();
});

test.each([
  ['a phone', { width: 390, height: 844 }, 100],
  ['a phone on its side', { width: 844, height: 390 }, 100],
  ['a phone with text twice as large', { width: 390, height: 844 }, 200],
  ['a phone on its side with text twice as large', { width: 844, height: 390 }, 200],
] as const)('on %s the torque is in sight while “Clicked” can be pressed', async (_, viewport, percent) => {
  const context = await visit.browser.newContext({ ...phone, viewport });
  const { page } = await tightening(50 + visit.browser.contexts().length + viewport.width + percent, context);
  await page.evaluate((size) => {
    document.documentElement.style.fontSize = `${size}%`;
  }, percent);
  const inSight = (part: string) =>
    page.locator(part).evaluate((element) => {
      const { x, y, width, height } = element.getBoundingClientRect();
      const on = document.elementFromPoint(x + Math.min(width, 60) / 2, y + height / 2);
      const isWhole = x >= 0 && y >= 0 && x + width <= innerWidth + 1 && y + height <= innerHeight + 1;
      return { isWhole, isOnTop: element === on || element.contains(on), height };
    });
  expect(await inSight('.step .big')).toMatchObject({ isWhole: true, isOnTop: true });
  expect(await inSight('.step > footer .go')).toMatchObject({ isWhole: true, isOnTop: true });
  expect((await inSight('.step .also')).isWhole).toBe(true);
  const cautionBegins = await page
    .locator('.step .caution')
    .first()
    .evaluate((caution) => {
      const { x, y } = caution.getBoundingClientRect();
      return caution.contains(document.elementFromPoint(x + 40, y + 26));
    });
  expect(cautionBegins).toBe(true);
  if (percent === 100 && viewport.width === 390)
    expect((await inSight('.step .big')).height).toBeGreaterThan(100);
  await context.close();
});

test('a button that has just come to say another thing is read before it is an act', async () => {
  const part = (id: string, name: string) =>
    ['part', { part: id, name, count: 1, state: 'wanted' }] as [string, object];
  const job = await hang(visit, 45, { architecture: 'overhead-valve' }, [
    part('head-gasket', 'Head gasket'),
    part('air-filter', 'Air filter'),
  ]);
  const { page } = await openPage(visit.context, `${visit.shop.address}/job/${job}/parts`);
  const clicks = page.locator('.wide-primary');
  await clicks.filter({ hasText: 'All 2 are ordered' }).waitFor();
  // the button has stood there for a while; from now on whatever changes is fresh, however slow this machine is
  await page.waitForTimeout(2000);
  await page.evaluate(() => {
    const from = performance.now();
    globalThis.quickHands = {
      bounceMs: 0,
      get freshMs() {
        return performance.now() - from;
      },
    };
  });
  const states = async () =>
    (await linesOf(job)).slice(2).map(({ body }) => (body as { state: string }).state);
  await clicks.click();
  await clicks.filter({ hasText: 'All 2 are here and match the old ones' }).waitFor();
  await clicks.click();
  await clicks.click();
  const ordered = ['wanted', 'wanted', 'ordered', 'ordered'];
  await expect.poll(states).toEqual(ordered);
  await page.evaluate(() => {
    globalThis.quickHands = { bounceMs: 0, freshMs: 0 };
  });
  await clicks.click();
  await expect.poll(states).toEqual([...ordered, 'arrived', 'arrived']);
  await page.close();
});

test('Assembly goes by three keys: on looks at what can hurt somebody point by point, back puts a question away, each step is said aloud', async () => {
  const off = (component: string, title: string) =>
    ['step', { step: component, stage: 'teardown', title, component, state: 'done' }] as [string, object];
  const ordered = { part: 'head-gasket', name: 'Head gasket', count: 1, state: 'ordered', due: '2030-01-05' };
  const job = await hang(visit, 46, { architecture: 'overhead-valve' }, [
    off('cylinder-head', 'Cylinder head'),
    off('muffler-guard', 'Muffler guard'),
    off('flywheel-brake', 'Flywheel brake'),
    off('fuel-hose', 'Fuel hose'),
    ['part', ordered],
  ]);
  const { page } = await openPage(visit.context, `${visit.shop.address}/job/${job}/put-together`);
  await page.evaluate(() => {
    const said: string[] = [];
    Object.assign(window, { said });
    // the browser's own voice, and nothing of the application
    speechSynthesis.speak = ({ text }) => void said.push(text);
  });
  const title = page.getByRole('heading', { level: 1 });
  const go = page.locator('.act-page > footer > .go');
  const on = () => page.keyboard.press('ArrowRight');
  await title.filter({ hasText: 'Fuel hose back on' }).waitFor();
  await page.getByRole('button', { name: 'Say it aloud' }).click();
  await title.click();
  await go.filter({ hasText: 'Back on, clear of the muffler · next' }).waitFor();
  await on();
  await title.filter({ hasText: 'Flywheel brake back on' }).waitFor();
  await go.filter({ hasText: 'It is so: releases fully' }).waitFor();
  await on();
  await go.filter({ hasText: 'Back on, stops in time · next' }).waitFor();
  await on();
  await title.filter({ hasText: 'Muffler guard back on' }).waitFor();
  await go.filter({ hasText: 'Back on, fitted (burn) · next' }).waitFor();
  await on();
  await page.getByRole('heading', { name: 'So far and no further' }).waitFor();
  const said = await page.evaluate(() => (window as unknown as { said: string[] }).said);
  const aloud = [
    ...['Put back: Fuel hose', 'Put back: Flywheel brake'],
    ...['Look: stops in time', 'Put back: Muffler guard', 'So far and no further'],
  ];
  expect(said.map((words) => words.split('.')[0])).toEqual(aloud);
  const steps = (await linesOf(job)).map(({ body }) => body as { putsBack?: string; checked?: string[] });
  const hose = steps.find(({ putsBack }) => putsBack === 'fuel-hose');
  expect(hose?.checked).toContain('clear of the muffler');
  await page.goto(`${visit.shop.address}/job/${job}/put-together/cylinder-head`);
  await go.filter({ hasText: 'It is back on' }).waitFor();
  await on();
  await page.getByRole('dialog').getByText('not here').first().waitFor();
  await page.keyboard.press('PageUp');
  await page.getByRole('dialog').waitFor({ state: 'hidden' });
  await page.close();
});
