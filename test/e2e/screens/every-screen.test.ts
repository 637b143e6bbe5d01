import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { isWhole } from '../../support/campaign.js';
import { expectAccessible } from '../support.js';
import { byDayAndNight, eachScreen, expectFits, isOneOfEach, openShowroom, widths } from './showroom.js';

/** Every screen of the invented job is readable, and nothing is wider than the window. */
const room = openShowroom();

/** The log is the same on every sheet of a job and long: it is judged once, on the intake sheet. */
const partsOf = (screen: string) => (screen.endsWith('/intake') ? [] : ['.log .entries']);

async function expectThumbs(page: Page, screen: string): Promise<void> {
  const small = await page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        'main button, .bottom button, .log button, main input:not([type=checkbox], [type=radio]), main select',
      ),
    ]
      .filter((e) => e.offsetParent !== null && !e.matches('.number, .hidden'))
      .filter((e) => e.getBoundingClientRect().height < 44)
      .map((e) => e.outerHTML.slice(0, 90)),
  );
  expect(small, `${screen} has controls smaller than a thumb`).toEqual([]);
}

test.each(widths)(
  'at %s by day and by night every screen is accessible, fits its window, and has controls for a thumb',
  (_, options) =>
    eachScreen(room, options, (page, screen) =>
      byDayAndNight(page, async (when) => {
        const title = `${screen} ${when}`;
        if (isWhole || isOneOfEach(page, when)) await expectAccessible(page, title, partsOf(screen));
        await expectFits(page, title);
        await expectThumbs(page, title);
      }),
    ),
);
