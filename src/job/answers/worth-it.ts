import { byId } from '../../catalog/index.js';
import type { Machine } from '../../diagnose/index.js';
import type { Inference } from '../../infer/index.js';
import {
  type PartsKnown,
  type Worth,
  type WorthAsked,
  type WorthThen,
  worthHistory,
  worthIt,
} from '../../worth/index.js';
import type { From, Job, Shop } from '../job.js';
import type { Answers } from './answers.js';
import { contradiction } from './contradiction.js';
import { servicesTaken } from './findings/machine-case.js';
import { kindOfPart } from './parts/part-kind.js';
import { doneSteps } from './steps/tally.js';

/** What has gone into a job already. It plays no part in what is worth doing from here on. */
export interface Spent {
  /** of checks made and pieces taken off and put back, by the catalog's minutes */
  readonly minutes: number;
  /** for parts bought */
  readonly parts: number;
  /** both in money, where the rate is known */
  readonly cost?: number;
}

export type WorthVerdict =
  | { readonly state: 'cannot'; readonly because: 'architecture' | 'contradiction'; readonly words: string }
  | ({ readonly state: 'answered'; readonly worth: Worth } & Terms);

/** The money it is judged by. */
export interface Terms {
  readonly currency: string;
  readonly ratePerHour?: number;
  readonly value?: number;
  readonly limit?: number;
  readonly spent: Spent;
  /** amounts that were left out because they are in another currency or not a number */
  readonly leftOut: readonly string[];
  /** set once the machine is handed over: the answer is that of the time when it was decided */
  readonly asOf?: string;
}

/** Whether a job's machine is worth making right, from its log, the catalog and the shop's rate. */
export function worthOf(answers: Answers, draws?: number): WorthVerdict {
  if (answers.architecture === undefined) {
    return {
      state: 'cannot',
      because: 'architecture',
      words: 'The kind of engine is not known: side-valve, overhead-valve or two-stroke.',
    };
  }
  const decided = asDecided(answers.job);
  const then = decided === answers.job ? answers : answers.on(decided);
  if (!then.inference) return contradiction;
  const terms = termsOf(then);
  return { state: 'answered', worth: worthIt(askedFor(then, then.inference, terms, draws)), ...terms };
}

/** More points than this say no more to the eye. */
const mostPoints = 24;
export const historyDraws = 800;

/**
 * How the answer stood at intake and after each finding, at today’s rate, value and limit; lines struck since are left
 * out. Of more than two dozen findings an even choice is taken, the first and the last among them.
 */
export function worthHistoryOf(answers: Answers): WorthThen[] {
  const { job, architecture } = answers;
  if (architecture === undefined) return [];
  const terms = termsOf(answers);
  const all = [undefined, ...asDecided(job).observations];
  const steps = evenly(all, mostPoints).flatMap((o) => {
    const then = answers.on(o ? asOf(job, o) : beforeFindings(job));
    if (!then.inference) return [];
    const asked = askedFor(then, then.inference, terms, historyDraws);
    return [{ title: o?.title ?? 'Intake', entry: o?.entry ?? 'intake', asked }];
  });
  return worthHistory(steps);
}

function evenly<T>(all: readonly T[], most: number): T[] {
  if (all.length <= most) return [...all];
  return Array.from({ length: most }, (_, i) => all[Math.round((i * (all.length - 1)) / (most - 1))]!);
}

const beforeFindings = (job: Job): Job => ({
  ...job,
  observations: [],
  decisions: [],
  steps: new Map(),
  parts: new Map(),
});

/** What remains to be done on a machine that is gone is no question; whether it was worth it then, is. */
function asDecided(job: Job): Job {
  const decision = job.handOver && job.decisions.findLast((d) => d.about === 'machine');
  return decision ? asOf(job, decision) : job;
}

/** The job as it stood when a line was written. */
function asOf(job: Job, { at, entry }: From<'observation' | 'decision'>): Job {
  const then = Date.parse(at);
  const before = (x: { readonly at: string }): boolean => Date.parse(x.at) <= then;
  const last = job.observations.findIndex((o) => o.entry === entry);
  const parts = new Map<string, From<'part'>>();
  for (const { known, struck } of job.log) {
    if (struck || known?.kind !== 'part' || !before(known)) continue;
    parts.set(known.body.part, { ...known.body, entry: known.id, at: known.at, by: known.by });
  }
  return {
    ...job,
    observations: last < 0 ? job.observations.filter(before) : job.observations.slice(0, last + 1),
    decisions: job.decisions.filter(before),
    steps: new Map([...job.steps].filter(([, s]) => before(s))),
    parts,
  };
}

/** The same question gets the same answer. */
const seed = 1;

function askedFor(
  answers: Answers,
  inference: Inference,
  terms: Terms,
  draws: number | undefined,
): WorthAsked {
  const { job, catalog, machine } = answers;
  const { currency, ratePerHour, value, limit } = terms;
  const services = servicesTaken(job);
  const declined = declinedFaults(answers);
  const settled = (fault: string): boolean => services.get(fault) === 'made' || declined.has(fault);
  return {
    catalog,
    architecture: answers.architecture!,
    facts: answers.engine.facts,
    inference,
    standing: standingFaults(machine, settled),
    chosenService: new Set([...services.keys()].filter((fault) => services.get(fault) === 'wanted')),
    off: new Set(answers.tally.notPutBack.flatMap((s) => s.component ?? [])),
    parts: partsKnown(answers, currency),
    currency,
    ...(ratePerHour !== undefined && { ratePerHour }),
    ...(value !== undefined && { value }),
    ...(limit !== undefined && { limit }),
    seed,
    ...(draws !== undefined && { draws }),
  };
}

/** What has still to be made right, by its name in the network. */
function standingFaults(machine: Machine, settled: (fault: string) => boolean): ReadonlyMap<string, string> {
  const wanted = machine.faults.filter(({ id }) => !settled(id));
  return new Map(wanted.map(({ id }) => [machine.now(id), id]));
}

/** What the owner will not pay for. Nobody can decline what bars the hand-over: it counts. */
function declinedFaults({ catalog, faultsSaid }: Answers): ReadonlySet<string> {
  const faults = byId(catalog.faults);
  const declined = faultsSaid.filter((f) => f.declined && !faults.get(f.fault)?.blocksHandOver);
  return new Set(declined.map((f) => f.fault));
}

function termsOf(answers: Answers): Terms {
  const { job, shop } = answers;
  const currency = shop.settings.currency ?? '$';
  const leftOut: string[] = [];
  const inCurrency = (name: string, m: { amount: number; currency: string } | undefined) => {
    if (!m || m.currency === currency) return m?.amount;
    leftOut.push(`${name} is in ${m.currency}, the shop counts in ${currency}`);
    return undefined;
  };
  const limit = inCurrency('the owner’s limit', job.intake.stopLimit);
  const value = inCurrency('what it is worth', job.intake.worthRunning);
  const ratePerHour = rateOf(shop, currency, leftOut);
  const spent = spentOn(answers, currency, ratePerHour);
  return {
    currency,
    ...(ratePerHour !== undefined && { ratePerHour }),
    ...(value !== undefined && { value }),
    ...(limit !== undefined && { limit }),
    spent,
    leftOut,
    ...(job.handOver && {
      asOf: job.decisions.findLast((d) => d.about === 'machine')?.at ?? job.handOver.at,
    }),
  };
}

/** What an hour costs here, where it is written down as a number. */
export const shopRate = (shop: Shop, currency: string): number | undefined => rateOf(shop, currency, []);

function rateOf(shop: Shop, currency: string, leftOut: string[]): number | undefined {
  const written = shop.settings['hour-rate']?.replace(currency, '').trim() ?? '';
  if (written === '') return undefined;
  const rate = Number(written);
  if (rate >= 0 && Number.isFinite(rate)) return rate;
  leftOut.push(`the shop’s rate an hour, “${written}”, is not a number`);
  return undefined;
}

const bought: ReadonlySet<string> = new Set(['ordered', 'arrived', 'fitted']);

function spentOn(answers: Answers, currency: string, ratePerHour: number | undefined): Spent {
  const { job } = answers;
  const minutes = lookedMinutes(answers) + benchMinutes(answers);
  const parts = [...job.parts.values()]
    .filter((p) => bought.has(p.state) && p.price?.currency === currency)
    .reduce((sum, p) => sum + p.price!.amount * p.count, 0);
  const cost = ratePerHour === undefined ? undefined : (minutes / 60) * ratePerHour + parts;
  return { minutes, parts, ...(cost !== undefined && { cost }) };
}

/** Of the checks made, by the catalog's minutes. */
export function lookedMinutes({ job, catalog }: Answers): number {
  const checks = byId(catalog.checks);
  return job.observations.reduce((sum, o) => sum + (checks.get(o.check ?? '')?.minutes ?? 0), 0);
}

/** Of the pieces taken off and put back. */
export function benchMinutes({ job, catalog, components }: Answers): number {
  const off = (id: string | undefined): number => components.get(id ?? '')?.minutesOff ?? 0;
  const back = catalog.workFactors.find((f) => f.id === 'put-back')?.likely ?? 1;
  const taken = doneSteps(job, 'teardown').reduce((sum, s) => sum + off(s.component), 0);
  return taken + doneSteps(job, 'assembly').reduce((sum, s) => sum + off(s.component) * back, 0);
}

/** The job's parts in terms of the catalog's prices, by the words that name them. */
function partsKnown({ job, catalog }: Answers, currency: string): PartsKnown {
  const atHand = new Set<string>();
  const quoted = new Map<string, number>();
  for (const part of job.parts.values()) {
    const price = kindOfPart(catalog, part);
    if (price === undefined) continue;
    if (bought.has(part.state)) atHand.add(price);
    else if (part.state === 'wanted' && part.price?.currency === currency)
      quoted.set(price, part.price.amount * part.count);
  }
  return { atHand, quoted };
}
