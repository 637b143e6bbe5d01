import { type Architecture, architectures, type Catalog } from '../../catalog/index.js';
import { faultsFor } from '../machine/faults.js';

/**
 * What a finished job tells of each fault: the chance, 0 … 1, that the machine had it. 1 was found, 0 ruled out; between them
 * stands what nobody decided on. What it does not say is left out.
 */
export interface FinishedJob {
  readonly architecture: Architecture;
  readonly faults: Readonly<Record<string, number>>;
  /** made up for a demonstration: never counted */
  readonly invented?: boolean;
}

/** How often a shop has met a fault. Nothing in it points at a job, an owner or a machine. */
export interface FaultCount {
  readonly architecture: Architecture;
  readonly fault: string;
  /** jobs in which it was found */
  readonly found: number;
  /** jobs in which it was there, what nobody decided on counted by its chance; with `absent` all jobs that tell of it */
  readonly present: number;
  readonly absent: number;
}

/**
 * A chance as it is counted: in steps of 1/1024. Sums of such are exact, so that a job which is dropped leaves nothing.
 *
 * Example: 0.3 is counted as 307/1024.
 */
export const countedChance = (p: number): number => Math.round(1024 * p) / 1024;

export interface LearnedFrequency extends FaultCount {
  /** in such machines as the catalog has it */
  readonly catalog: number;
  readonly learned: number;
  /** half-width of the middle 95 of 100, normal approximation */
  readonly halfWidth: number;
  /** how much likelier the shop's own machines make it: odds over the catalog's odds */
  readonly oddsTimes: number;
}

export interface Learned {
  /** jobs that were counted */
  readonly jobs: number;
  readonly strength: number;
  /** only what was counted; for all else the catalog stands */
  readonly frequencies: readonly LearnedFrequency[];
}

/** The catalog speaks with the weight of so many machines. Trade judgement, no source. */
export const usualStrength = 30;

/** Counts of finished jobs, by kind of engine and fault, in the catalog's order. Invented jobs are left out. */
export function countFaults(catalog: Catalog, finished: readonly FinishedJob[]): FaultCount[] {
  const real = finished.filter((job) => !job.invented);
  return architectures.flatMap((architecture) => {
    const jobs = real.filter((job) => job.architecture === architecture);
    return catalog.faults.flatMap(({ id: fault }) => {
      const said = jobs.map((job) => job.faults[fault]).filter((there) => there !== undefined);
      if (said.length === 0) return [];
      const present = said.reduce((sum, p) => sum + countedChance(p), 0);
      const found = said.filter((p) => p === 1).length;
      return [{ architecture, fault, found, present, absent: said.length - present }];
    });
  });
}

/** Counts of several shops, or of one shop at several times, together. */
export function addCounts(...lists: readonly (readonly FaultCount[])[]): FaultCount[] {
  const sums = new Map<string, FaultCount>();
  for (const count of lists.flat()) {
    const key = `${count.architecture}/${count.fault}`;
    const before = sums.get(key) ?? { found: 0, present: 0, absent: 0 };
    sums.set(key, {
      ...count,
      found: before.found + count.found,
      present: before.present + count.present,
      absent: before.absent + count.absent,
    });
  }
  return [...sums.values()];
}

/**
 * The shop's own frequencies: the catalog's, moved by what finished jobs have shown.
 *
 * Method: beta-binomial. Before any job a fault's frequency is Beta(s·m, s·(1 − m)), s the strength in machines; after
 * `present` and `absent` of it the mean is (s·m + present)/(s + present + absent) (Gelman et al., "Bayesian Data Analysis",
 * conjugate priors, from memory). m is the catalog's, at odds as many times as high as the shop's other kinds of engine
 * have made them, by the same rule: fuel, storage and owners are the shop's, whatever the engine. What nobody decided on
 * counts by its chance (the first step of expectation and maximization: Dempster, Laird and Rubin 1977, from memory);
 * counted as absent, faults that stayed unseen would seem rarer with every job. Counts add, so the order of jobs plays no part
 * and a job that is dropped is as if it had never been counted.
 *
 * Validity: finished jobs stand for the machines that come in; a shop that turns the worst away counts too few. How fast
 * frequencies that are three times off heal: `npm run bench heal`.
 * @throws RangeError for a strength that is not above 0
 * @example m = 0.1, s = 30, 3 of 10 present: (3 + 3)/(30 + 10) = 0.15
 */
export function learnedPriors(
  catalog: Catalog,
  finished: readonly FinishedJob[],
  strength: number = usualStrength,
): Learned {
  const jobs = finished.filter((job) => !job.invented).length;
  return { ...learnedFromCounts(catalog, countFaults(catalog, finished), strength), jobs };
}

/** The same from counts alone, as they are exported. */
export function learnedFromCounts(
  catalog: Catalog,
  counts: readonly FaultCount[],
  strength: number = usualStrength,
): Omit<Learned, 'jobs'> {
  if (!(strength > 0 && Number.isFinite(strength)))
    throw new RangeError(`strength: ${strength} is not a number of machines above 0`);
  const usual = new Map(
    architectures.flatMap((architecture) =>
      faultsFor(catalog, { architecture }).map((f) => [`${architecture}/${f.id}`, f.frequency] as const),
    ),
  );
  const known = counts.flatMap((count): Known[] => {
    const frequency = usual.get(`${count.architecture}/${count.fault}`);
    return frequency === undefined ? [] : [{ ...count, catalog: frequency }];
  });
  const byFault = new Map<string, Known[]>();
  for (const k of known) byFault.set(k.fault, [...(byFault.get(k.fault) ?? []), k]);
  const frequencies = architectures.flatMap((architecture) =>
    known
      .filter((k) => k.architecture === architecture)
      .map((k) => {
        const others = byFault.get(k.fault)!.filter((other) => other !== k);
        return moved(k, atOdds(k.catalog, timesOf(others, strength)), strength);
      }),
  );
  return { strength, frequencies };
}

interface Known extends FaultCount {
  readonly catalog: number;
}

/** The odds of a fault over the catalog's, by counts of several kinds of engine; 1 for none. */
function timesOf(counts: readonly Known[], strength: number): number {
  const seen = counts.reduce((sum, c) => sum + c.present + c.absent, 0);
  if (seen === 0) return 1;
  const mean = counts.reduce((sum, c) => sum + c.catalog * (c.present + c.absent), 0) / seen;
  const present = counts.reduce((sum, c) => sum + c.present, 0);
  return odds((strength * mean + present) / (strength + seen)) / odds(mean);
}

function moved(known: Known, before: number, strength: number): LearnedFrequency {
  const seen = known.present + known.absent;
  const learned = (strength * before + known.present) / (strength + seen);
  const halfWidth = 1.96 * Math.sqrt((learned * (1 - learned)) / (strength + seen + 1));
  return { ...known, learned, halfWidth, oddsTimes: odds(learned) / odds(known.catalog) };
}

const odds = (p: number): number => p / (1 - p);

/** A probability whose odds are so many times as high. */
export const atOdds = (p: number, times: number): number => (times * p) / (1 - p + times * p);

/** By fault, for one kind of engine: what a machine's network takes in place of the catalog's frequencies. */
export function frequenciesFor(
  learned: Pick<Learned, 'frequencies'>,
  architecture: Architecture,
): ReadonlyMap<string, number> {
  return new Map(
    learned.frequencies.filter((f) => f.architecture === architecture).map((f) => [f.fault, f.learned]),
  );
}
