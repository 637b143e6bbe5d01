import type { Sound } from '../listen/index.js';
import { bandsOf } from './frames.js';
import { likenessOf } from './sounds-like.js';
import { spokenStretch } from './stretch.js';
import { type Guess, nearestPhrase, type Takes } from './takes.js';

/** An ear that knows the language and no person; gives the phrase out of a closed set, or nothing. */
export type GeneralEar = (sound: Sound, phrases: readonly string[]) => Guess | undefined;

export interface Asked {
  /** from the press to letting go */
  readonly sound: Sound;
  /** what was heard before the press: the noise that is taken out */
  readonly before?: Sound;
  /** a closed set */
  readonly phrases: readonly string[];
  readonly general?: GeneralEar | undefined;
  /** this person's own takes */
  readonly takes?: Takes | undefined;
}

export interface Heard {
  readonly heard: string | undefined;
  /** both ears heard the same */
  readonly agree: boolean;
  /** 0 to 1 */
  readonly doubt: number;
  /** why nothing is said to be heard */
  readonly why?: 'nothing said' | 'too loud' | 'not told';
}

/** No phrase of the voices that guided was heard rightly with more, see bench/hear.ts; engines are taken for words with it. */
const mostDoubt = 0.7;
/**
 * Of the phrases of the voices that guided, 95 % lie nearer to their own takes down to 10 dB, and of an hour's talk that
 * both ears would have taken for one none does, see bench/hear-hour.ts: without it a closed set has an answer for everything.
 */
const farthestAgreed = 0.85;
/** Below it both ears guess on voices that guided nothing, see bench/hear.ts. */
const leastAboveNoiseDb = 0;

/**
 * What was said, out of a few phrases. Nothing where nobody speaks or where the place is too loud for the voice; where the
 * ears hear two things, what the general one heard, and not as agreed.
 */
export function heard({ sound, before, phrases, general, takes }: Asked): Heard {
  const stretch = spokenStretch(bandsOf(sound), before ? bandsOf(before) : []);
  if (!stretch) return none('nothing said');
  if (stretch.aboveNoiseDb < leastAboveNoiseDb) return none('too loud');
  const own = takes && nearestPhrase(likenessOf(stretch.frames), takes, phrases);
  const guess = general?.(sound, phrases);
  const common = guess && guess.doubt <= mostDoubt ? guess : undefined;
  // what the general ear will not have for a word is none, however near a take may lie
  const said = general ? common : own;
  if (!said) return none('not told');
  const agree = own !== undefined && own.far <= farthestAgreed && own.phrase === common?.phrase;
  const doubt = agree ? own.doubt * common!.doubt : said.doubt;
  return { heard: said.phrase, agree, doubt };
}

const none = (why: NonNullable<Heard['why']>): Heard => ({ heard: undefined, agree: false, doubt: 1, why });
