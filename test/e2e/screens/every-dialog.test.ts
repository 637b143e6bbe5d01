import type { Page } from 'playwright-core';
import { test } from 'vitest';
import { isWhole } from '../../support/campaign.js';
import { expectAccessible } from '../support.js';
import {
  byDayAndNight,
  expectFits,
  follow,
  isOneOfEach,
  openShowroom,
  standing,
  visitRoom,
  widths,
} from './showroom.js';

/** Every dialog that a sheet of the invented jobs opens is readable, and nothing is wider than the window. */
const room = openShowroom();

/** Taps one after another; the last opens the dialog. */
type Way = readonly [screen: () => string, ...taps: (string | RegExp)[]];
const finished = (stage: string) => () => `/job/${room.finished}/${stage}`;
const underWay = (stage: string) => () => `/job/${room.underWay}/${stage}`;
const measure = (name: string | RegExp): Way => [finished('measure'), 'Add a reading', name];
const dialogs: readonly (readonly [title: string, way: Way])[] = [
  ['hang a tag', [() => '/', 'Hang a tag on a machine']],
  ['strike a line', [finished('intake'), /^Strike:/]],
  ['log something seen', [underWay('findings'), 'Log something seen']],
  ['say what a fault is', [underWay('findings'), /^Say what it is/]],
  ['is it worth it', [finished('worth-it'), 'Decide']],
  ['add a part', [finished('parts'), 'Add a part']],
  ['change a part', [finished('parts'), 'Change']],
  ['not needed', [finished('parts'), 'Not needed on this machine']],
  ['what must come off', [underWay('teardown'), 'Add a piece']],
  ['how it differs', [underWay('teardown'), 'It differs from usual']],
  ['what comes off', [underWay('teardown'), /^Something (else )?comes off$/]],
  ['the bore', measure(/^Bore, at heights/)],
  ['a face', measure('Head and block face flatness')],
  ['one reading', measure('Spark plug gap')],
  ['a reading of one’s own', measure('Something else')],
  ['a stamp looked at', measure(/stamped oversize/)],
  ['deciding about a reading', [finished('measure'), /^Decide/]],
  ['laying out a joint', [finished('assembly'), 'Lay out a joint to tighten']],
  ['a step of the run-up', [underWay('run-up'), 'Log it']],
  ['handing over', [finished('hand-over'), 'Say it anew']],
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

test.each(widths)('at %s by day and by night every dialog is accessible and fits its window', (_, options) =>
  visitRoom(
    room,
    options,
    async (page) => {
      let shown = '';
      for (const [title, [screen, ...taps]] of dialogs) {
        if (screen() !== shown) await follow(page, screen());
        shown = screen();
        await standing(page);
        for (const name of taps) await tap(page, name);
        await page.locator('dialog[open]').waitFor();
        await byDayAndNight(page, async (when) => {
          if (isWhole || isOneOfEach(page, when))
            await expectAccessible(page, `${title} ${when}`, ['main', '.log', '.stages', '.top']);
          await expectFits(page, `${title} ${when}`);
        });
        await page.keyboard.press('Escape');
        await page.locator('dialog[open]').waitFor({ state: 'detached' });
      }
    },
    /status of 404/,
  ),
);
