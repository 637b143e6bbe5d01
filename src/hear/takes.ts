import type { Sound } from '../listen/index.js';
import { bandsOf } from './frames.js';
import { apart, type Likeness, likenessOf } from './sounds-like.js';
import { spokenStretch } from './stretch.js';

/** What an ear took a sound for; `doubt` 0 to 1, comparable within one ear only. */
export interface Guess {
  readonly phrase: string;
  readonly doubt: number;
}

/** A phrase by a person's own takes; `far` is how far they lie, 0 for the same sound and about 1 for any other talk. */
export interface OwnGuess extends Guess {
  readonly far: number;
}

/** Phrases as one person says them. */
export type Takes = ReadonlyMap<string, readonly Likeness[]>;

/** One take of a phrase; undefined where nobody speaks in it. */
export function takeOf(sound: Sound, before?: Sound): Likeness | undefined {
  const stretch = spokenStretch(bandsOf(sound), before ? bandsOf(before) : []);
  return stretch && likenessOf(stretch.frames);
}

/**
 * The phrase whose takes lie nearest: the mean of its two nearest takes, for one may have been a slip. The doubt is how near
 * the next phrase comes: 1 where both are as near. Undefined where no phrase can be stretched to fit.
 */
export function nearestPhrase(
  said: Likeness,
  takes: Takes,
  phrases: readonly string[],
): OwnGuess | undefined {
  const ranked = phrases
    .flatMap((phrase) => {
      const near = (takes.get(phrase) ?? []).map((take) => apart(said, take)).sort((a, b) => a - b);
      const two = near.slice(0, 2).filter(Number.isFinite);
      return two.length === 0 ? [] : [{ phrase, far: two.reduce((sum, each) => sum + each, 0) / two.length }];
    })
    .sort((a, b) => a.far - b.far);
  const [first, second] = ranked;
  if (!first) return undefined;
  return { ...first, doubt: second ? first.far / second.far : 0 };
}
