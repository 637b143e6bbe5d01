import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { wide } from '../support.js';
import { eachScreen, openShowroom } from './showroom.js';

const room = openShowroom();

test('the keyboard alone reaches every control of every screen', () =>
  eachScreen(room, wide, expectReached, 'address'));

async function expectReached(page: Page, screen: string): Promise<void> {
  const all = await page.evaluate(markControls);
  let missing: readonly string[] = all;
  for (let taps = 0; taps < all.length + 60 && missing.length > 0; taps++) {
    await page.keyboard.press('Tab');
    // asked only now and then, and after every tap once there have been enough for all
    if (taps + 1 >= all.length || taps % 20 === 0) missing = await page.evaluate(notReached);
  }
  expect(missing, screen).toEqual([]);
}

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
  const reached = new Set<string>();
  Object.assign(globalThis, { controls: controls.map((_, i) => String(i)), reached });
  controls.forEach((e, i) => {
    e.setAttribute('data-control', String(i));
  });
  document.addEventListener('focusin', () => {
    const mark = document.activeElement?.getAttribute('data-control');
    if (mark) reached.add(mark);
  });
  return controls.map((_, i) => String(i));
}

/** The marks that no tap has come to yet. */
function notReached(): string[] {
  const { controls, reached } = globalThis as unknown as { controls: string[]; reached: Set<string> };
  return controls.filter((mark) => !reached.has(mark));
}
