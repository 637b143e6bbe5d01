import type { Locator, Page } from 'playwright-core';

/** What a person's hands did so far. */
interface Done {
  touches: number;
  words: number;
  scrolls: number;
  pictures: number;
}

const nothing = (): Done => ({ touches: 0, words: 0, scrolls: 0, pictures: 0 });

/** A finger bounces and a page settles: what appeared less than this ago is read first. */
export const readingMs = 450;

/**
 * One hand of a person at a phone. It touches only what is in sight and lies open to it; what is not in sight is scrolled
 * to first, and that is counted beside. A list that opens costs a touch and its choice another; the keyboard comes up by a
 * touch on the field.
 */
export class Hand {
  private at = '';
  readonly byStage = new Map<string, Done>();

  constructor(readonly page: Page) {}

  /** What follows counts for this stage. */
  stage(name: string): void {
    this.at = name;
    if (!this.byStage.has(name)) this.byStage.set(name, nothing());
  }

  get all(): Done {
    const all = nothing();
    for (const done of this.byStage.values())
      for (const of of Object.keys(all) as (keyof Done)[]) all[of] += done[of];
    return all;
  }

  private get now(): Done {
    return this.byStage.get(this.at)!;
  }

  async touch(what: Locator): Promise<void> {
    await this.bring(what);
    await what.tap();
    this.now.touches += 1;
  }

  /** Touches the field, and writes. */
  async type(field: Locator, words: string): Promise<void> {
    await this.touch(field);
    await field.fill(words);
    this.now.words += words.trim().split(/\s+/).length;
  }

  /** Opens the list and takes one of it. */
  async choose(list: Locator, label: string): Promise<void> {
    await this.touch(list);
    await list.selectOption({ label });
    this.now.touches += 1;
  }

  /** Touches a camera; its shutter is the phone's. */
  async photograph(button: Locator, file: string): Promise<void> {
    await this.bring(button);
    const chooser = this.page.waitForEvent('filechooser');
    await button.tap();
    await (await chooser).setFiles(file);
    this.now.touches += 1;
    this.now.pictures += 1;
  }

  /** Waits until it has come and has been read, and scrolls until it is in sight. */
  private async bring(what: Locator): Promise<void> {
    await what.waitFor();
    await this.page.waitForTimeout(readingMs);
    const swipes = await what.evaluate(swipesTo);
    if (swipes === 0) return;
    await what.evaluate((element) => element.scrollIntoView({ block: 'center', behavior: 'instant' }));
    this.now.scrolls += swipes;
    await this.page.waitForTimeout(50);
  }
}

/** In the page: how many swipes of most of a screen bring the element into sight; 0 where it is. */
function swipesTo(element: Element): number {
  const { top, bottom } = element.getBoundingClientRect();
  const middle = (top + bottom) / 2;
  const box = element.closest('dialog, .act-body')?.getBoundingClientRect();
  const from = Math.max(0, box?.top ?? 0);
  const foot = element.closest('dialog, .act-page, nav.bottom')
    ? 0
    : (document.querySelector('nav.bottom')?.getBoundingClientRect().height ?? 0);
  const to = Math.min(innerHeight - foot, box?.bottom ?? innerHeight);
  if (middle >= from && middle <= to) return 0;
  const away = middle < from ? from - middle : middle - to;
  return Math.ceil(away / (0.8 * (to - from)));
}
