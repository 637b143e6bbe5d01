import {
  type Answers,
  answersFor,
  catalogOf,
  fold,
  type JobsTaught,
  type RawEntry,
  type Shop,
} from '../../job/index.js';
import { knowJob } from './known-jobs.js';

/** For tests: hears of each answer that is worked out on this page. */
declare global {
  var answerWorkedOut: ((member: string) => void) | undefined;
}

const opened = new Map<string, { readonly asked: readonly unknown[]; readonly answers: Answers }>();

/** The door to a job's answers: the same one until its lines, the shop or what its jobs taught is another. */
export function answersOf(id: string, lines: readonly RawEntry[], shop: Shop, jobs: JobsTaught): Answers {
  const asked = [lines, shop, jobs];
  const last = opened.get(id);
  if (last && asked.every((each, i) => each === last.asked[i])) return last.answers;
  const answers = answersFor({
    job: fold(id, lines),
    catalog: catalogOf(shop),
    shop,
    jobs,
    onWork: (member) => globalThis.answerWorkedOut?.(member),
  });
  opened.set(id, { asked, answers });
  knowJob(id, { facts: answers.job.intake, catalog: answers.catalog });
  return answers;
}
