import type { Spread } from './spread.js';
import { type Worth, type WorthAsked, worthIt } from './worth.js';

/** What was known at one time. */
export interface WorthStep {
  /** what had just come in */
  readonly title: string;
  /** the log entry that brought it, or `intake` */
  readonly entry: string;
  readonly asked: WorthAsked;
}

/** The answer at one time. */
export interface WorthThen {
  readonly title: string;
  readonly entry: string;
  readonly cost?: Spread;
  readonly scrapChance: number;
  readonly chanceBelowValue?: number;
  readonly stop?: Worth['stop'];
}

/** How the answer changed as findings came in. */
export function worthHistory(steps: readonly WorthStep[]): WorthThen[] {
  return steps.map(({ title, entry, asked }) => {
    const { cost, scrap, chanceBelowValue, stop } = worthIt(asked);
    return {
      title,
      entry,
      ...(cost && { cost }),
      scrapChance: scrap.chance,
      ...(chanceBelowValue !== undefined && { chanceBelowValue }),
      ...(stop && { stop }),
    };
  });
}
