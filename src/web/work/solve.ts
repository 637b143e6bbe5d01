import type { Answers, JobsTaught } from '../../job/index.js';
import type { Alternatives, BasketProblem } from '../../supply/index.js';
import type { AskedBeside, Beside } from './answers-worker.js';
import { byWorker } from './ask-worker.js';

export const solveBasket = byWorker<BasketProblem, Alternatives>(
  () => new Worker(new URL('./basket-worker.ts', import.meta.url), { type: 'module' }),
);

const answersWorker = () =>
  byWorker<AskedBeside, unknown>(
    () => new Worker(new URL('./answers-worker.ts', import.meta.url), { type: 'module' }),
  );

/** A sheet does not wait for the bench. */
const workers = { sheet: answersWorker(), bench: answersWorker() };
const sent: { sheet?: JobsTaught | undefined; bench?: JobsTaught | undefined } = {};

async function askBeside(who: 'sheet' | 'bench', doors: readonly Answers[], want: keyof Beside, now = '') {
  const [{ shop, jobs } = {}] = doors;
  const question: AskedBeside = {
    shop: shop?.log.map(({ entry }) => entry) ?? [],
    logs: doors.map(({ job }) => [job.id, job.log.map(({ entry }) => entry)]),
    ...(jobs && sent[who] !== jobs && { jobs }),
    now,
    want,
  };
  sent[who] = jobs;
  try {
    return await workers[who](question);
  } catch (error) {
    sent[who] = undefined; // a fresh worker knows nothing yet
    throw error;
  }
}

/** A member of a job's answers that takes too long for the page, worked out beside it through the same door. */
export const workedOutBeside = <M extends Exclude<keyof Beside, 'bench'>>(answers: Answers, member: M) =>
  askBeside('sheet', [answers], member) as Promise<Beside[M]>;

/** The plan over several jobs, from the wall clock on. */
export const benchBeside = (doors: readonly Answers[], now: string) =>
  askBeside('bench', doors, 'bench', now) as Promise<Beside['bench']>;
