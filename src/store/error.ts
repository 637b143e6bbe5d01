export type StoreErrorCode =
  /** an id that is already kept, with a different content */
  | 'conflict'
  | 'no-such-job'
  | 'bad-entry'
  | 'bad-picture'
  /** only a job that was opened as invented may be removed */
  | 'not-invented'
  | 'not-empty'
  | 'exists'
  /** the thing at this path or address is no Wristpin log */
  | 'not-a-log'
  | 'cut-short'
  | 'corrupt'
  | 'newer'
  | 'no-permission'
  | 'cannot-open'
  /** it was there and is not any more, or is another one */
  | 'gone'
  | 'unreachable'
  /** set up so that it would lose something: a commit in a power cut, a character */
  | 'unfit'
  | 'busy'
  | 'disk-full'
  | 'disk-failed'
  | 'closed';

/** Says what happened, what is safe and what to do, in that order; `message` is the three together. */
export class StoreError extends Error {
  override readonly name = 'StoreError';
  constructor(
    readonly code: StoreErrorCode,
    readonly happened: string,
    readonly safe: string,
    readonly todo: string,
    cause?: unknown,
  ) {
    super(`${happened} ${safe} ${todo}`, { cause });
  }
}

export const nothingStored = 'Nothing of this was stored, and what was there before is as it was.';

export function closedError(): StoreError {
  return new StoreError(
    'closed',
    'The log has been closed.',
    'All that was said to be saved is saved.',
    'Open it again.',
  );
}
