import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Acts on the Findings sheet as a person does. */
export class FindingsSheet {
  constructor(readonly page: Page) {}

  readonly dialog = () => this.page.getByRole('dialog');
  readonly fault = (name: string) =>
    this.page.locator('.fault', { has: this.page.locator('> b', { hasText: name }) });
  readonly changed = () => this.page.getByRole('region', { name: 'What the last line changed' });
  readonly evidence = (check: string) => this.page.locator('.evidence > li', { hasText: check });

  /** The tap is answered first, the faults follow. */
  async settled(): Promise<void> {
    await this.page.locator('main[aria-busy="false"]').waitFor();
  }

  /** The evidence from the beginning, not only the latest lines. */
  async unfoldEvidence(): Promise<void> {
    const earlier = this.page.getByRole('button', { name: /^\d+ earlier$/ });
    if (await earlier.isVisible()) await earlier.click();
  }

  /** Logs a check with an outcome by its words, from the search field. */
  async see(check: string, outcome: string, { doubtful = false } = {}): Promise<void> {
    await this.page.getByLabel('Find a check').fill(check);
    await this.page
      .locator('section:has(> h2:text-is("Other checks")) li', { hasText: check })
      .first()
      .getByRole('button')
      .click();
    await this.answer(outcome, { doubtful });
  }

  /** Answers the open dialog of a check. */
  async answer(outcome: string, { doubtful = false } = {}): Promise<void> {
    const dialog = this.dialog();
    await dialog.waitFor();
    if (doubtful) await dialog.getByLabel(/^Doubtful/).check();
    await dialog.getByRole('button', { name: outcome, exact: true }).click();
    await dialog.waitFor({ state: 'hidden' });
    await this.settled();
  }

  /** How likely a fault stands, in percent; 0 when it is too unlikely to be listed. */
  async likely(name: string): Promise<number> {
    await this.settled();
    const more = this.page.getByRole('button', { name: /^\d+ more$/ });
    if (await more.isVisible()) await more.click();
    const line = this.fault(name);
    if ((await line.count()) === 0) return 0;
    return Number(/\d+/.exec((await line.first().locator('.likely').textContent()) ?? '')?.[0]);
  }

  /** Says what a fault is, seen with the eyes. */
  async decide(name: string, choice: string): Promise<void> {
    await this.likely(name); // brings it into sight
    await this.fault(name)
      .first()
      .getByRole('button', { name: /^Say what it is/ })
      .click();
    await this.dialog().getByRole('button', { name: choice }).click();
    await this.dialog().waitFor({ state: 'hidden' });
    await this.settled();
  }

  /** Follows the advice, each best check answered as healthy, until it says that enough is seen; how many taps. */
  async followUntilEnough(most: number): Promise<number> {
    const enough = this.page.getByText('Enough is seen');
    for (let taps = 0; taps <= most; taps++) {
      if (await enough.isVisible()) return taps;
      const best = this.page.locator('.card.first', { has: this.page.locator('.outcomes') });
      const title = await best.locator('header b').textContent();
      await best.locator('.outcomes button').first().click();
      await expect
        .poll(
          async () => (await enough.isVisible()) || (await best.locator('header b').textContent()) !== title,
        )
        .toBe(true);
    }
    throw new Error(`after ${most} taps it still wants to look further`);
  }
}
