import './interpreted-schemas.js';
import load from 'highs';
import runtime from 'highs/runtime?url';
import { alternatives, type BasketProblem, type IntegerSolver } from '../../supply/index.js';
import { answerAll } from './ask-worker.js';

/** The solver is loaded with the first question. The types promise a namespace where the bundle hands over the function. */
const start = load as unknown as (options: { locateFile: () => string }) => Promise<IntegerSolver>;
let solver: Promise<IntegerSolver> | undefined;

/** Long enough for any repair's list; beyond it the best so far is shown as such. */
const secondsAtMost = 20;

answerAll(async (problem: BasketProblem) => {
  solver ??= start({ locateFile: () => runtime });
  return alternatives(problem, await solver, { secondsAtMost });
});
