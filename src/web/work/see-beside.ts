import type { Comparison, Plate, Seen, SightStep } from '../../sight/index.js';
import type { ComparisonAsked, SightAsked, SightSaid } from './sight-worker.js';

interface Reading {
  readonly signal?: AbortSignal;
  readonly onStep?: (step: SightStep | 'open') => void;
}

/** On a thread of its own, which ends with the answer: its memory is then free again. */
function askOnce<T>(
  asked: SightAsked | ComparisonAsked,
  answerIn: (said: SightSaid) => T | undefined,
  { signal, onStep }: Reading,
): Promise<T> {
  const worker = new Worker(new URL('./sight-worker.ts', import.meta.url), { type: 'module' });
  return new Promise<T>((done, failed) => {
    signal?.addEventListener('abort', () => failed(signal.reason));
    worker.onmessage = ({ data }: MessageEvent<SightSaid>) => {
      const answer = answerIn(data);
      if (answer !== undefined) done(answer);
      else if ('step' in data) onStep?.(data.step);
      else if ('wrong' in data) failed(new Error(data.wrong));
    };
    worker.onerror = (event) => failed(new Error(event.message || 'the reading broke off'));
    worker.postMessage(asked);
  }).finally(() => worker.terminate());
}

/**
 * Reads a photograph beside the page.
 * @throws DOMException AbortError once `signal` stops it, Error in words when the picture cannot be opened
 */
export const seeBeside = (asked: SightAsked, reading: Reading): Promise<Seen> =>
  askOnce(asked, (said) => ('seen' in said ? said.seen : undefined), reading);

/** Lays one part over the other beside the page. */
export const compareBeside = (asked: { first: Plate; second: Plate }): Promise<Comparison> =>
  askOnce(asked, (said) => ('comparison' in said ? said.comparison : undefined), {});
