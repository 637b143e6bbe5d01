import './interpreted-schemas.js';
import { type BenchProblem, benchSchedule } from '../../plan/index.js';
import { answerAll } from './ask-worker.js';

answerAll((problem: BenchProblem) =>
  benchSchedule(problem, { budgetMs: 1200, clock: () => performance.now() }),
);
