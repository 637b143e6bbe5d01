import type { Answers, Job, JobsTaught, Shop } from '../../job/index.js';
import type { Alternatives, BasketProblem } from '../../supply/index.js';
import type { AskedBeside, Beside, Logs } from './answers-worker.js';
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

async function askBeside(who: 'sheet' | 'bench', { jobs, ...logs }: Logs, want: keyof Beside, now = '') {
  const question: AskedBeside = { ...logs, ...(jobs && sent[who] !== jobs && { jobs }), now, want };
  sent[who] = jobs;
  try {
    return await workers[who](question);
  } catch (error) {
    sent[who] = undefined; // a fresh worker knows nothing yet
    throw error;
  }
}

const logged = ({ log }: Job | Shop) => log.map(({ entry }) => entry);

/** A member of a job's answers that takes too long for the page, worked out beside it through the same door. */
export const workedOutBeside = <M extends Exclude<keyof Beside, 'bench'>>(answers: Answers, member: M) => {
  const { job, shop, jobs } = answers;
  const logs: Logs = { shop: logged(shop), logs: [[job.id, logged(job)]], jobs };
  return askBeside('sheet', logs, member) as Promise<Beside[M]>;
};

/** The plan over several jobs, from the wall clock on. */
export const benchBeside = (logs: Logs, now: string) =>
  askBeside('bench', logs, 'bench', now) as Promise<Beside['bench']>;
