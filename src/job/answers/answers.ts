import { byId, type Catalog, componentsOf } from '../../catalog/index.js';
import type { Basket } from '../../supply/index.js';
import type { From, Job, Shop } from '../job.js';
import { assemblyGates } from './assembly/asked-gates.js';
import { lastActOf } from './assembly/last-act.js';
import { assemblyPlanOf } from './assembly/plan.js';
import { dueFromProvisionals, provisionalsOf } from './assembly/provisional.js';
import { tighteningOf } from './assembly/tightening.js';
import { bellsOf } from './bells.js';
import { chargeOf, partsUsed } from './charge.js';
import { type CleaningAsked, cleaningAnswers, cleaningRefused, cleaningStates } from './cleaning.js';
import { engineOf } from './engine/engine.js';
import { evidenceLog } from './findings/evidence-log.js';
import { barredChecks, findingsAhead, findingsOf, inferenceOf, safetyFound } from './findings/findings.js';
import { faultsSaid, machineOf, servicesMade } from './findings/machine-case.js';
import { lastMove } from './findings/moved.js';
import { sightsOf } from './findings/typed-value.js';
import { boreAnswers } from './measure/bore.js';
import { compressionOf, compressionQuestion } from './measure/compression.js';
import { faceAnswers } from './measure/face.js';
import { standingLimit } from './measure/limit-for.js';
import { limitAnswers, undecided } from './measure/limits.js';
import { readingGroups, standingGroups } from './measure/readings.js';
import { valveAnswers } from './measure/valves.js';
import { lastKept, workedOutOnce } from './once.js';
import { billOfParts } from './parts/bill.js';
import { type BasketChoice, basketProblemOf, orderEntries, ordersOf, toBuy } from './parts/order.js';
import { whereWasI } from './rested/where-was-i.js';
import { acceptanceOf } from './run-up/acceptance.js';
import { heardOf } from './run-up/heard.js';
import { nextDueOf } from './run-up/next-due.js';
import { runUpOf } from './run-up/run-up.js';
import { instrumentsOwned } from './shop/instruments.js';
import { finishedHere, type JobsTaught, ownFrequencies, ownSay } from './shop/learned.js';
import { stepTimes } from './shop/step-minutes.js';
import { asItIsOf, goesWithoutWork } from './stages/as-it-is.js';
import { gates, safetyNotShown } from './stages/gates.js';
import { listedRules } from './stages/rules.js';
import { type Film, viewsOnFilm } from './steps/film.js';
import { architectureOf, inOrderDone, offNow, stillOff } from './steps/taken.js';
import { tally } from './steps/tally.js';
import { twoAccountsOf } from './steps/two-accounts.js';
import { comesOff, stepsToCome } from './teardown/comes-off.js';
import { engineGraph } from './teardown/engine-graph.js';
import { goalChoices } from './teardown/goals.js';
import { stepBy, teardownPlanOf } from './teardown/plan.js';
import { worthHistoryOf, worthOf } from './worth-it.js';

/** What every answer stands on. */
export interface AnswersAsked {
  readonly job: Job;
  readonly catalog: Catalog;
  readonly shop: Shop;
  /** what the shop's jobs so far have taught */
  readonly jobs: JobsTaught;
  /** hears of each answer that is worked out, by its name */
  readonly onWork?: (member: string) => void;
}

type Members = typeof members;

/**
 * The one door to all that is computed from a job: `answersFor` opens it.
 *
 * Each member is worked out when it is first asked and never twice, out of the other members, so that no two can
 * disagree. What depends on more than the job (a moment, a choice) is a member that is asked with it.
 */
export interface Answers extends AnswersAsked, Readonly<{ [M in keyof Members]: ReturnType<Members[M]> }> {}

export const answersFor = (asked: AnswersAsked): Answers => workedOutOnce(asked, members, asked.onWork);

/** One line a member; the work stands in the small files beside this one. */
const members = {
  /** the same door on another state of the job: without a line, or as it stood at an earlier time */
  on: (a: Answers) => (job: Job) => answersFor({ job, catalog: a.catalog, shop: a.shop, jobs: a.jobs }),

  /** what the shop's finished jobs have taught, and which of them count */
  ownFrequencies: (a: Answers) => ownFrequencies(a.shop, a.jobs, a.catalog),
  /** what they say of machines like this one; undefined while they say nothing */
  ownSay: (a: Answers) => ownSay(a.ownFrequencies, a.job),
  /** instruments that the shop has, in the words of the catalog's checks; undefined while none is on its list */
  instruments: (a: Answers) => instrumentsOwned(a.shop, a.catalog),

  /** what this job teaches once it is finished: its faults, and the minutes of its steps */
  finished: (a: Answers) => finishedHere(a),
  stepTimes: (a: Answers) => stepTimes(a),

  architecture: (a: Answers) => architectureOf(a.job),
  /** the catalog's components of this kind of engine; none while it is not known */
  components: (a: Answers) => byId(a.architecture ? componentsOf(a.catalog, a.architecture) : []),
  /** teardown steps done, in the order of taking off */
  takenOff: (a: Answers) => inOrderDone(a.job, 'teardown'),
  putBack: (a: Answers) => inOrderDone(a.job, 'assembly'),
  stillOff: (a: Answers) => stillOff(a),
  /** components that lie on the bench now */
  offNow: (a: Answers) => offNow(a),
  tally: (a: Answers) => tally(a.job),
  /** views without a picture, with the moments of a film at which to look for them */
  viewsOnFilm: (a: Answers) => (film: Film) => viewsOnFilm(a, film),
  /** acts that two devices tell of, each once; what they differ in is to be settled */
  twoAccounts: (a: Answers) => twoAccountsOf(a.job),

  /** this engine, here and now: what it has, how it stands, what cannot and must not be done */
  engine: (a: Answers) => engineOf(a),

  /** what was seen, with the outcomes that typed numbers stand for on this engine */
  sights: (a: Answers) => sightsOf(a),
  faultsSaid: (a: Answers) => faultsSaid(a.job),
  machine: (a: Answers) => machineOf(a),
  /** undefined where what was seen and what was decided rule each other out */
  inference: (a: Answers) => inferenceOf(a.machine),
  findings: (a: Answers) => findingsOf(a),
  /** the work behind it in pieces, for a page that is to stay awake meanwhile */
  findingsAhead: (a: Answers) => findingsAhead(a),
  /** checks of this engine that are not to be made now, each with why */
  barred: (a: Answers) => barredChecks(a),
  safetyFound: (a: Answers) => safetyFound(a),
  evidence: (a: Answers) => evidenceLog(a),
  lastMove: (a: Answers) => lastMove(a),

  worth: (a: Answers) => worthOf(a),
  worthHistory: (a: Answers) => worthHistoryOf(a),
  /** parts that are on the machine, by the log or with the piece that they go with */
  partsUsed: (a: Answers) => partsUsed(a),
  /** service that the owner took and that was made, by its fault */
  servicesMade: (a: Answers) => servicesMade(a.job),
  /** what the work done comes to, by the list */
  charge: (a: Answers) => chargeOf(a),

  /** how it comes apart: the catalog's graph under what is known of this engine */
  graph: (a: Answers) => engineGraph(a),
  /** without regard to the hour; `teardownAt` lets soaks and cool-downs run down */
  teardown: (a: Answers) => teardownPlanOf(a),
  teardownAt: (a: Answers) => lastKept((now: string) => teardownPlanOf(a, now)),
  stepsToCome: (a: Answers) => stepsToCome(a),
  comesOff: (a: Answers) => comesOff(a),
  goalChoices: (a: Answers) => goalChoices(a),
  /** one teardown step by its handle, whether the plan wants it or not */
  step: (a: Answers) => lastKept((handle: string) => stepBy(a, handle)),

  bill: (a: Answers) => billOfParts(a),
  toBuy: (a: Answers) => toBuy(a.job),
  basketAsked: (a: Answers) => (choice: BasketChoice) => basketProblemOf(a, choice),
  orders: (a: Answers) => (basket: Basket, today: string) => ordersOf(a, basket, today),
  orderEntries: (a: Answers) => (basket: Basket, today: string) => orderEntries(a, basket, today),

  readingGroups: (a: Answers) => readingGroups(a.job, a.shop),
  standingGroups: (a: Answers) => standingGroups(a.readingGroups),
  limits: (a: Answers) => limitAnswers(a),
  /** what bounds a reading: its own limit, or a line of the maker's sheet that came later */
  limitOf: (a: Answers) => (reading: From<'measurement'>) => standingLimit(a.job, a.catalog, reading),
  bores: (a: Answers) => boreAnswers(a),
  faces: (a: Answers) => faceAnswers(a),
  valves: (a: Answers) => valveAnswers(a),
  compressionQuestion: (a: Answers) => compressionQuestion(a),
  compression: (a: Answers) => compressionOf(a),
  /** what stands outside a limit and nobody has decided about, in words */
  undecided: (a: Answers) => undecided(a),

  cleanings: (a: Answers) => cleaningStates(a.job),
  cleaningWith: (a: Answers) => (asked: CleaningAsked) => cleaningAnswers(a, asked),
  cleaningRefused: (a: Answers) => (cleaning: From<'cleaning'>) => cleaningRefused(a, cleaning),

  assemblyGates: (a: Answers) => assemblyGates(a),
  provisionals: (a: Answers) => provisionalsOf(a.job),
  dueFromProvisionals: (a: Answers) => dueFromProvisionals(a.provisionals),
  assembly: (a: Answers) => assemblyPlanOf(a),
  /** what was done last on the way back together */
  lastAct: (a: Answers) => lastActOf(a),
  /** by joint: where its tightening stands */
  tightening: (a: Answers) => tighteningOf(a.job),

  /** what rings when its time has come */
  bells: (a: Answers) => bellsOf(a),
  /** a job that lay, told to a hand that has forgotten it; `now` as local time */
  whereWasI: (a: Answers) => lastKept((now: string) => whereWasI(a, now)),

  runUp: (a: Answers) => runUpOf(a),
  acceptance: (a: Answers) => acceptanceOf(a),
  heard: (a: Answers) => heardOf(a.job),
  nextDue: (a: Answers) => nextDueOf(a),

  listedRules: (a: Answers) => listedRules(a),
  gateRules: (a: Answers) => ({ ...a.listedRules, safetyFound: a.safetyFound }),
  gates: (a: Answers) => gates(a, a.gateRules),
  /** what the owner must know where it goes back without the work; nothing while it is to be repaired */
  asItIs: (a: Answers) => (goesWithoutWork(a) ? asItIsOf(a) : undefined),
  /** safety points that nobody has shown yet */
  safetyNotShown: (a: Answers) => safetyNotShown(a.job, a.listedRules),
};
