/** What goes to a worker and what comes back: a question by number, an answer or a word of what went wrong. */
export interface Asked<Q> {
  readonly number: number;
  readonly question: Q;
}
export type Answered<A> =
  | { readonly number: number; readonly answer: A }
  | { readonly number: number; readonly wrong: string };

/** A worker as a function. It is started with the first question and stays. */
export function byWorker<Q, A>(start: () => Worker): (question: Q) => Promise<A> {
  const open = new Map<number, { done: (answer: A) => void; failed: (error: Error) => void }>();
  let worker: Worker | undefined;
  let number = 0;
  const running = (): Worker => {
    if (worker) return worker;
    worker = start();
    worker.onmessage = ({ data }: MessageEvent<Answered<A>>) => {
      const asked = open.get(data.number);
      open.delete(data.number);
      if ('wrong' in data) asked?.failed(new Error(data.wrong));
      else asked?.done(data.answer);
    };
    worker.onerror = (event) => {
      for (const { failed } of open.values()) failed(new Error(event.message || 'the calculation broke off'));
      open.clear();
      worker?.terminate();
      worker = undefined; // the next question starts a fresh one
    };
    return worker;
  };
  return (question) =>
    new Promise((done, failed) => {
      number += 1;
      open.set(number, { done, failed });
      running().postMessage({ number, question } satisfies Asked<Q>);
    });
}

/** The worker’s end: answers each question in turn. */
export function answerAll<Q, A>(answer: (question: Q) => A | Promise<A>): void {
  self.onmessage = async ({ data }: MessageEvent<Asked<Q>>) => {
    const { number, question } = data;
    try {
      self.postMessage({ number, answer: await answer(question) } satisfies Answered<A>);
    } catch (error) {
      const wrong = error instanceof Error ? error.message : String(error);
      self.postMessage({ number, wrong } satisfies Answered<A>);
    }
  };
}
