import { type Architecture, architectures, byId, type Catalog, componentsOf } from '../../catalog/index.js';
import type { Machine } from '../../diagnose/index.js';
import { infer } from '../../infer/index.js';
import {
  type PartsKnown,
  type Worth,
  type WorthAsked,
  type WorthThen,
  worthHistory,
  worthIt,
} from '../../worth/index.js';
import type { From, Job, Shop } from '../job.js';
import { contradiction, isContradiction } from './contradiction.js';
import { faultsSaid, machineOf } from './findings/machine-case.js';
import { kindOfPart } from './parts/part-kind.js';
import { doneSteps, tally } from './steps/tally.js';

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

export interface WorthOptions {
  readonly seed?: number;
  readonly draws?: number;
  /** the shop's own frequencies of faults, see `frequenciesFor` */
  readonly frequencies?: ReadonlyMap<string, number>;
}

/** Whether a job's machine is worth making right, from its log, the catalog and the shop's rate. */
export function worthOf(job: Job, catalog: Catalog, shop: Shop, options: WorthOptions = {}): WorthVerdict {
  if (architectureOf(job) === undefined) {
    return {
      state: 'cannot',
      because: 'architecture',
      words: 'The kind of engine is not known: side-valve, overhead-valve or two-stroke.',
    };
  }
  const then = asDecided(job);
  const terms = termsOf(then, catalog, shop);
  try {
    return { state: 'answered', worth: worthIt(askedFor(then, catalog, terms, options)), ...terms };
  } catch (error) {
    if (!isContradiction(error)) throw error;
    return contradiction;
  }
}

/** More points than this say no more to the eye. */
const mostPoints = 24;
const historyDraws = 800;

/**
 * How the answer stood at intake and after each finding, at today’s rate, value and limit; lines struck since are left
 * out. Of more than two dozen findings an even choice is taken, the first and the last among them.
 */
export function worthHistoryOf(
  job: Job,
  catalog: Catalog,
  shop: Shop,
  options: WorthOptions = {},
): WorthThen[] {
  if (architectureOf(job) === undefined) return [];
  const terms = termsOf(job, catalog, shop);
  const all = [undefined, ...asDecided(job).observations];
  const steps = evenly(all, mostPoints).map((o) => ({
    title: o?.title ?? 'Intake',
    entry: o?.entry ?? 'intake',
    asked: askedFor(o ? asOf(job, o) : beforeFindings(job), catalog, terms, {
      draws: historyDraws,
      ...options,
    }),
  }));
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

function architectureOf(job: Job): Architecture | undefined {
  return architectures.find((a) => a === job.intake.architecture);
}

function askedFor(job: Job, catalog: Catalog, terms: Terms, options: WorthOptions): WorthAsked {
  const machine = machineOf(job, catalog, options.frequencies);
  const { currency, ratePerHour, value, limit } = terms;
  return {
    catalog,
    architecture: architectureOf(job)!,
    facts: job.intake,
    inference: infer(machine.network),
    standing: standingFaults(machine, declinedFaults(job, catalog)),
    off: new Set(tally(job).notPutBack.flatMap((s) => s.component ?? [])),
    parts: partsKnown(job, catalog, currency),
    currency,
    ...(ratePerHour !== undefined && { ratePerHour }),
    ...(value !== undefined && { value }),
    ...(limit !== undefined && { limit }),
    seed: options.seed ?? 1,
    ...(options.draws !== undefined && { draws: options.draws }),
  };
}

/** What has still to be made right, by its name in the network. */
function standingFaults(machine: Machine, declined: ReadonlySet<string>): ReadonlyMap<string, string> {
  const wanted = machine.faults.filter(({ id }) => !declined.has(id));
  return new Map(wanted.map(({ id }) => [machine.now(id), id]));
}

/** What the owner will not pay for. Nobody can decline what bars the hand-over: it counts. */
function declinedFaults(job: Job, catalog: Catalog): ReadonlySet<string> {
  const faults = byId(catalog.faults);
  const declined = faultsSaid(job).filter((f) => f.declined && !faults.get(f.fault)?.blocksHandOver);
  return new Set(declined.map((f) => f.fault));
}

function termsOf(job: Job, catalog: Catalog, shop: Shop): Terms {
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
  const spent = spentOn(job, catalog, currency, ratePerHour);
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

function rateOf(shop: Shop, currency: string, leftOut: string[]): number | undefined {
  const written = shop.settings['hour-rate']?.replace(currency, '').trim() ?? '';
  if (written === '') return undefined;
  const rate = Number(written);
  if (rate >= 0 && Number.isFinite(rate)) return rate;
  leftOut.push(`the shop’s rate an hour, “${written}”, is not a number`);
  return undefined;
}

const bought: ReadonlySet<string> = new Set(['ordered', 'arrived', 'fitted']);

function spentOn(job: Job, catalog: Catalog, currency: string, ratePerHour: number | undefined): Spent {
  const checks = byId(catalog.checks);
  const looked = job.observations.reduce((sum, o) => sum + (checks.get(o.check ?? '')?.minutes ?? 0), 0);
  const minutes = looked + benchMinutes(job, catalog);
  const parts = [...job.parts.values()]
    .filter((p) => bought.has(p.state) && p.price?.currency === currency)
    .reduce((sum, p) => sum + p.price!.amount * p.count, 0);
  const cost = ratePerHour === undefined ? undefined : (minutes / 60) * ratePerHour + parts;
  return { minutes, parts, ...(cost !== undefined && { cost }) };
}

function benchMinutes(job: Job, catalog: Catalog): number {
  const architecture = architectureOf(job);
  if (architecture === undefined) return 0;
  const components = byId(componentsOf(catalog, architecture));
  const off = (id: string | undefined): number => components.get(id ?? '')?.minutesOff ?? 0;
  const back = catalog.workFactors.find((f) => f.id === 'put-back')?.likely ?? 1;
  const taken = doneSteps(job, 'teardown').reduce((sum, s) => sum + off(s.component), 0);
  return taken + doneSteps(job, 'assembly').reduce((sum, s) => sum + off(s.component) * back, 0);
}

/** The job's parts in terms of the catalog's prices, by the words that name them. */
function partsKnown(job: Job, catalog: Catalog, currency: string): PartsKnown {
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
