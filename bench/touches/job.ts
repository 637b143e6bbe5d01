import type { Locator, Page } from 'playwright-core';
import { type Stage, stageNames } from '../../src/job/index.js';
import { settled } from '../../test/e2e/taps.js';
import { Hand } from './hand.js';

type Name = string | RegExp;

/** A bound on what never comes, not a wait. */
const longestMs = 45_000;

/** A person with one machine: what is on the page by the words that stand on it. */
export class AtJob {
  readonly hand: Hand;

  constructor(
    readonly page: Page,
    /** a picture for every camera */
    readonly picture: string,
  ) {
    this.hand = new Hand(page);
  }

  get dialog(): Locator {
    return this.page.getByRole('dialog');
  }
  button(name: Name, within: Page | Locator = this.page): Locator {
    return within.getByRole('button', { name, exact: typeof name === 'string' }).first();
  }

  press(name: Name, within?: Page | Locator): Promise<void> {
    return this.hand.touch(this.button(name, within));
  }
  /** A button of the open question, which closes it. */
  async answer(name: Name): Promise<void> {
    await this.press(name, this.dialog);
    await this.dialog.waitFor({ state: 'hidden' });
  }
  follow(name: Name): Promise<void> {
    return this.hand.touch(this.page.getByRole('link', { name, exact: typeof name === 'string' }).first());
  }
  /** One of several, or a tick. */
  tick(label: Name, within: Page | Locator = this.page): Promise<void> {
    const exact = typeof label === 'string';
    return this.hand.touch(
      within
        .locator('label')
        .filter({
          has: this.page.locator('input'),
          hasText: exact ? new RegExp(`^\\s*${label}\\s*$`) : label,
        })
        .first(),
    );
  }
  type(label: Name, words: string, within: Page | Locator = this.page): Promise<void> {
    return this.hand.type(within.getByLabel(label, { exact: typeof label === 'string' }).first(), words);
  }
  choose(label: string, what: string, within: Page | Locator = this.page): Promise<void> {
    return this.hand.choose(within.getByLabel(label, { exact: true }).first(), what);
  }
  photograph(name: Name): Promise<void> {
    return this.hand.photograph(
      this.page.locator('label.button').filter({ hasText: name }).first(),
      this.picture,
    );
  }
  unfold(name: Name): Promise<void> {
    return this.hand.touch(this.page.locator('summary').filter({ hasText: name }).first());
  }

  /** To another sheet: by the way onward at the foot, or by the list of stages. */
  async go(stage: Stage, way: 'onward' | 'stages' = 'onward'): Promise<void> {
    if (way === 'onward') await this.press(`On to ${stageNames[stage]}`);
    else {
      await this.press('Stages');
      await this.follow(new RegExp(`^\\S?\\s*${stageNames[stage].replace('?', '\\?')}`));
    }
    await this.page.waitForURL(`**/${stage}`);
    await settled(this.page);
    this.hand.stage(stageNames[stage]);
  }
  /** Does it, and waits until what is read in the page is another. */
  async untilOther(read: () => string, act: () => Promise<void>): Promise<void> {
    const before = await this.page.evaluate(read);
    await act();
    const since = Date.now();
    while ((await this.page.evaluate(read)) === before) {
      if (Date.now() - since > longestMs) throw new Error(`after the touch it still reads “${before}”`);
      await this.page.waitForTimeout(50);
    }
  }
  settled(): Promise<void> {
    return settled(this.page);
  }
}
