import { afterEach, describe, expect, test, vi } from 'vitest';
import { type Answered, type Asked, answerAll, byWorker } from '../../../src/web/work/ask-worker.js';

/** A worker in this thread: what is posted to it is kept until the test answers. */
class HandWorker {
  static all: HandWorker[] = [];
  readonly asked: Asked<string>[] = [];
  ended = false;
  onmessage?: (event: { data: Answered<string> }) => void;
  onerror?: (event: { message: string }) => void;
  constructor() {
    HandWorker.all.push(this);
  }
  postMessage(asked: Asked<string>) {
    this.asked.push(asked);
  }
  terminate() {
    this.ended = true;
  }
  answer(at: number, answer: string) {
    this.onmessage?.({ data: { number: this.asked[at]!.number, answer } });
  }
}

const start = () => {
  HandWorker.all = [];
  return byWorker<string, string>(() => new HandWorker() as unknown as Worker);
};

afterEach(() => vi.unstubAllGlobals());

describe('a worker as a function', () => {
  test('is started with the first question, stays, and gives each question its own answer in any order', async () => {
    const ask = start();
    expect(HandWorker.all).toHaveLength(0);
    const [one, two] = [ask('one'), ask('two')];
    expect(HandWorker.all).toHaveLength(1);
    const worker = HandWorker.all[0]!;
    worker.answer(1, 'second');
    worker.answer(0, 'first');
    expect(await Promise.all([one, two])).toEqual(['first', 'second']);
  });

  test('says what went wrong of one question, and answers the next', async () => {
    const ask = start();
    const bad = ask('bad');
    const worker = HandWorker.all[0]!;
    worker.onmessage?.({ data: { number: worker.asked[0]!.number, wrong: 'no basket' } });
    await expect(bad).rejects.toThrow('no basket');
    const good = ask('good');
    worker.answer(1, 'fine');
    expect(await good).toBe('fine');
  });

  test('that breaks off fails every open question and is started afresh by the next', async () => {
    const ask = start();
    const both = [ask('one'), ask('two')];
    const broken = HandWorker.all[0]!;
    broken.onerror?.({ message: '' });
    for (const each of both) await expect(each).rejects.toThrow('the calculation broke off');
    expect(broken.ended).toBe(true);
    const next = ask('three');
    expect(HandWorker.all).toHaveLength(2);
    HandWorker.all[1]!.answer(0, 'three');
    expect(await next).toBe('three');
  });
});

describe('the worker’s end', () => {
  const posted: Answered<string>[] = [];
  const self = {
    postMessage: (answer: Answered<string>) => posted.push(answer),
    onmessage: undefined as never,
  };
  const hear = (question: string) =>
    (self.onmessage as (event: { data: Asked<string> }) => Promise<void>)({ data: { number: 7, question } });

  test('answers each question under its number, and says in words what it threw', async () => {
    vi.stubGlobal('self', self);
    answerAll<string, string>((question) => {
      if (question === 'bad') throw new Error('cannot');
      if (question === 'odd') throw 'odd';
      return question.toUpperCase();
    });
    await hear('good');
    await hear('bad');
    await hear('odd');
    expect(posted).toEqual([
      { number: 7, answer: 'GOOD' },
      { number: 7, wrong: 'cannot' },
      { number: 7, wrong: 'odd' },
    ]);
  });
});
