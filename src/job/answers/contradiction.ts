import { NetworkError } from '../../infer/index.js';

/** The answer where what was seen and what was decided rule each other out. */
export const contradiction = {
  state: 'cannot',
  because: 'contradiction',
  words: 'What was seen and what was decided cannot both be so. Strike the line that is wrong.',
} as const;

export const isContradiction = (error: unknown): boolean =>
  error instanceof NetworkError && error.code === 'impossible';
