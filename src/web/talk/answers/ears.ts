import type { Heard, Likeness, Takes } from '../../../hear/index.js';
import { byWorker } from '../../work/ask-worker.js';
import type { EarAnswer, EarQuestion } from './ear-worker.js';
import type { CameIn } from './open-ear-line.js';

/** Both ears, beside the page. They are started with the first question and stay. */
const ask = byWorker<EarQuestion, EarAnswer>(
  () => new Worker(new URL('./ear-worker.ts', import.meta.url), { type: 'module' }),
);

/** Of these words those whose sound nobody knows. @throws Error in words while the recognizer cannot be fetched */
export const wordsNotKnown = async (words: readonly string[]): Promise<ReadonlySet<string>> =>
  new Set(((await ask({ ask: 'which words are not known', words })) as { words: readonly string[] }).words);

/** @throws Error in words while the recognizer cannot be fetched */
export const whatWasSaid = (came: CameIn, phrases: readonly string[], takes: Takes): Promise<Heard> =>
  ask({ ask: 'what was said', phrases, takes, ...came }) as Promise<Heard>;

/** One take of a phrase; nothing where nobody speaks in it. */
export const takeOfThis = async (came: CameIn): Promise<Likeness | undefined> =>
  ((await ask({ ask: 'for a take', ...came })) as { take?: Likeness }).take;
