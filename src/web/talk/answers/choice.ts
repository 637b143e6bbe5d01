import { mostPhrases, type Sayable } from '../../../hear/index.js';
import { sayAloud } from './aloud.js';

/** One way to answer the question in hand: its button and its phrase are made of the same. */
export interface Choice {
  /** what is said for it, two words or more; left out, it is only touched */
  readonly say?: string | undefined;
  /** on the button, and large where it was heard; what has no button only tells something */
  readonly label: string;
  /** into the log, or takes out of it; what does neither acts at once */
  readonly writes: boolean;
  readonly act: () => unknown;
  readonly disabled?: boolean | undefined;
  readonly look?: 'plain' | 'go' | 'quiet' | 'danger';
}

/** What stands before the person now. */
export interface Question {
  /** another question has another: what was said to this one is no answer to that */
  readonly key: string;
  readonly choices: readonly Choice[];
}

/** Of a question's choices those that can be said now: the first eight. */
export function sayables({ choices }: Question): Sayable[] {
  return choices
    .flatMap(({ say, writes, disabled }) => (say === undefined || disabled ? [] : [{ phrase: say, writes }]))
    .slice(0, mostPhrases);
}

/** What is asked and only told. */
export const toldAloud = (say: string, words: string): Choice => ({
  ...{ say, label: words, writes: false, act: () => sayAloud(words) },
});
