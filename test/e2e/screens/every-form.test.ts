import type { BrowserContextOptions } from 'playwright-core';
import { test } from 'vitest';
import { isWhole } from '../../support/campaign.js';
import { expectAccessible, phone } from '../support.js';
import { eachScreen, expectFits, openShowroom } from './showroom.js';

/** What the two usual widths leave out: a tablet, and a phone on its side. */
const room = openShowroom();

const forms: readonly (readonly [string, BrowserContextOptions])[] = [
  ['820 px', { viewport: { width: 820, height: 1180 }, hasTouch: true }],
  ['a phone on its side', { ...phone, viewport: { width: 844, height: 390 } }],
];

test.each(forms)('on %s every screen is accessible by night and nothing scrolls sideways', (_, options) =>
  eachScreen(room, { ...options, colorScheme: 'dark' }, async (page, screen) => {
    const except = screen.endsWith('/intake') ? [] : ['.log .entries'];
    await expectAccessible(page, screen, except, isWhole ? 'all' : 'but colors');
    await expectFits(page, screen);
  }),
);

test('with text twice as large no screen is wider than a phone', () =>
  eachScreen(room, phone, async (page, screen) => {
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
    });
    await expectFits(page, screen);
  }));
