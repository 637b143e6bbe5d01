import { plural, roughSpan, sentence } from '../phrase/index.js';
import type { Worth } from './worth.js';

/** What an answer says to a mechanic. `money` writes an amount with its currency. */
export interface WorthWords {
  /** three or four words */
  readonly headline: string;
  /** the chances, counted out on twenty machines, with what may still turn up */
  readonly chance: string;
  /** the stop point as it is written down, with its reason */
  readonly stop?: string;
}

export function worthWords(
  worth: Worth,
  terms: { readonly value?: number; readonly limit?: number; readonly money: (amount: number) => string },
): WorthWords {
  const stop = stopWords(worth, terms.money);
  return {
    headline: headline(worth),
    chance: chanceWords(worth, terms),
    ...(stop !== undefined && { stop }),
  };
}

function headline({ chanceBelowValue, stop, cost, scrap, drivers, rest }: Worth): string {
  if (scrap.chance > 0.5) return 'Most likely scrap';
  if (drivers.length === 0 && rest.chance > hardlyAny) return 'Nothing found yet';
  if (chanceBelowValue === undefined) return cost ? 'What it will cost' : 'What it will take';
  if (stop?.rule === 'not-worth-starting')
    return chanceBelowValue >= 0.5 ? 'Even at best' : 'Hardly worth it as it stands';
  if (chanceBelowValue >= 0.8) return 'Worth it, most likely';
  return chanceBelowValue >= 0.5 ? 'Worth it, more likely than not' : 'A risk';
}

/** A chance that is not worth a word. */
const hardlyAny = 0.02;

/** What may still turn up, as one line. */
export function restWords(
  { rest, drivers }: Pick<Worth, 'rest' | 'drivers'>,
  money: ((amount: number) => string) | undefined,
): string {
  if (rest.chance <= hardlyAny) return 'Hardly anything more can turn up: what matters was looked at.';
  const more = drivers.length > 0 ? 'something more that matters' : 'something that matters';
  const adds =
    money && rest.cost
      ? `half of them for ${money(rest.cost.p25)} to ${money(rest.cost.p75)}`
      : `half of them ${roughSpan(rest.minutes!.p25, rest.minutes!.p75)} of work`;
  return `Not looked at yet: ${machinesHave(rest.chance)} ${more}, ${adds}.`;
}

function machinesHave(chance: number): string {
  const often = Math.round(10 * chance);
  if (often === 10) return 'nearly all machines like this one have';
  if (often === 0) return 'few machines like this one (1 in 20 or so) have';
  return `${often} of 10 machines like this one ${plural(often, 'has', 'have')}`;
}

function chanceWords(
  { ofTwenty, minutes, rest }: Worth,
  { value, limit, money }: Parameters<typeof worthWords>[1],
): string {
  if (ofTwenty.length === 0 && minutes)
    return `Reckon with ${roughSpan(minutes.p25, minutes.p75)} at the bench; one in four takes less, one in four more.`;
  const scrap = 20 - ofTwenty.length;
  const like = `Of 20 machines like this one${rest.chance > hardlyAny ? ', with what may still turn up' : ''}`;
  const most = value ?? limit;
  const ends = scrap > 0 ? [`${counted(scrap, 'ends', 'end')} as scrap`] : [];
  if (most === undefined)
    return sentence([`${like}, ${counted(ofTwenty.length, 'is', 'are')} made right`, ...ends].join(', '));
  const below = ofTwenty.filter((c) => c <= most).length;
  const above = ofTwenty.length - below;
  const right = `${like}, ${counted(below, 'is', 'are')} made right for ${money(most)} or less`;
  const more = above > 0 ? [`${counted(above, 'costs', 'cost')} more`] : [];
  return sentence([right, ...more, ...ends].join(', '));
}

function stopWords({ stop, ofTwenty }: Worth, money: (amount: number) => string): string | undefined {
  if (!stop) return undefined;
  const call = `Call above ${money(stop.amount)}`;
  const below = ofTwenty.filter((c) => c <= stop.amount).length;
  switch (stop.rule) {
    case 'most-left':
      return `${call}: past that, going on costs more on average than it brings.`;
    case 'value':
      return `${call}, what it is worth when it runs.`;
    case 'limit':
      return `${call}, the owner’s limit: of 20, ${counted(below, 'is', 'are')} made right within it.`;
    case 'four-in-five':
      return `${call}: four in five are made right for less.`;
    case 'not-worth-starting':
      return 'No stop point leaves anything on average. Repair in part, use as a donor, or look further before deciding.';
  }
}

const counted = (n: number, one: string, many: string): string => `${n || 'none'} ${plural(n, one, many)}`;
