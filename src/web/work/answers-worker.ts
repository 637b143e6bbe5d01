import './interpreted-schemas.js';
import {
  type Answers,
  type BenchAsked,
  type BenchPlan,
  benchPlanOf,
  benchProblemOf,
  type JobsTaught,
  nothingTaught,
  type RawEntry,
  type Shop,
  shopLog,
} from '../../job/index.js';
import { benchSchedule } from '../../plan/index.js';
import { answersOf } from '../data/answers-of.js';
import { linesOf, sameLines, shopOf } from '../data/lines.js';
import { answerAll } from './ask-worker.js';

/** What the door is opened with. */
export interface Logs {
  readonly shop: readonly RawEntry[];
  readonly logs: readonly (readonly [job: string, lines: readonly RawEntry[]])[];
  /** left out where it is what was sent last, or not known */
  readonly jobs?: JobsTaught;
}

/** Logs with what is to be worked out of them, through the same door as on the page. */
export interface AskedBeside extends Logs {
  /** the wall clock of a bench plan */
  readonly now: string;
  readonly want: keyof Beside;
}

/** What takes too long for the page's own thread. */
export interface Beside {
  readonly worth: Answers['worth'];
  readonly worthHistory: Answers['worthHistory'];
  readonly compression: Answers['compression'];
  readonly bench: { readonly asked: BenchAsked; readonly plan: BenchPlan };
}

let jobs: JobsTaught = nothingTaught;

const benchOf = (doors: readonly Answers[], shop: Shop, now: string): Beside['bench'] => {
  const asked = benchProblemOf(doors, shop, now);
  const schedule = benchSchedule(asked.problem, { budgetMs: 1200, clock: () => performance.now() });
  return { asked, plan: benchPlanOf(asked, schedule) };
};

answerAll((asked: AskedBeside): Beside[keyof Beside] => {
  jobs = asked.jobs ?? jobs;
  const lines = (log: string, sent: readonly RawEntry[]) => linesOf(log, sameLines(sent), []);
  const shop = shopOf(lines(shopLog, asked.shop));
  const doors = asked.logs.map(([job, sent]) => answersOf(job, lines(job, sent), shop, jobs));
  return asked.want === 'bench' ? benchOf(doors, shop, asked.now) : doors[0]![asked.want];
});
