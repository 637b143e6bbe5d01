import { type Architecture, architectures, type Catalog } from '../../catalog/index.js';
import { faultsFor } from '../machine/faults.js';

/** What a finished job tells: which faults the machine had and which it had not. What it does not say is left out. */
export interface FinishedJob {
  readonly architecture: Architecture;
  readonly faults: Readonly<Record<string, boolean>>;
  /** made up for a demonstration: never counted */
  readonly invented?: boolean;
}

/** How often a shop has met a fault. Nothing in it points at a job, an owner or a machine. */
export interface FaultCount {
  readonly architecture: Architecture;
  readonly fault: string;
  readonly present: number;
  readonly absent: number;
}

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
      const present = said.filter(Boolean).length;
      return [{ architecture, fault, present, absent: said.length - present }];
    });
  });
}

/** Counts of several shops, or of one shop at several times, together. */
export function addCounts(...lists: readonly (readonly FaultCount[])[]): FaultCount[] {
  const sums = new Map<string, FaultCount>();
  for (const count of lists.flat()) {
    const key = `${count.architecture}/${count.fault}`;
    const { present = 0, absent = 0 } = sums.get(key) ?? {};
    sums.set(key, { ...count, present: present + count.present, absent: absent + count.absent });
  }
  return [...sums.values()];
}

/**
 * The shop's own frequencies: the catalog's, moved by what finished jobs have shown.
 *
 * Method: beta-binomial. Before any job a fault's frequency is Beta(s·m, s·(1 − m)), m the catalog's and s the
 * strength in machines; after `present` and `absent` of it the mean is (s·m + present)/(s + present + absent)
 * (Gelman et al., "Bayesian Data Analysis", conjugate priors, from memory). Counts add, so the order of jobs plays no
 * part and a job that is dropped is as if it had never been counted.
 *
 * Validity: finished jobs stand for the machines that come in; a shop that turns the worst away counts too few.
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
  const frequencies = architectures.flatMap((architecture) => {
    const here = counts.filter((c) => c.architecture === architecture);
    if (here.length === 0) return [];
    const usual = new Map(faultsFor(catalog, { architecture }).map((f) => [f.id, f.frequency]));
    return here.flatMap((count) => {
      const frequency = usual.get(count.fault);
      return frequency === undefined ? [] : [moved(count, frequency, strength)];
    });
  });
  return { strength, frequencies };
}

function moved(count: FaultCount, catalog: number, strength: number): LearnedFrequency {
  const seen = count.present + count.absent;
  const learned = (strength * catalog + count.present) / (strength + seen);
  const halfWidth = 1.96 * Math.sqrt((learned * (1 - learned)) / (strength + seen + 1));
  return { ...count, catalog, learned, halfWidth, oddsTimes: odds(learned) / odds(catalog) };
}

const odds = (p: number): number => p / (1 - p);

/** By fault, for one kind of engine: what a machine's network takes in place of the catalog's frequencies. */
export function frequenciesFor(
  learned: Pick<Learned, 'frequencies'>,
  architecture: Architecture,
): ReadonlyMap<string, number> {
  return new Map(
    learned.frequencies.filter((f) => f.architecture === architecture).map((f) => [f.fault, f.learned]),
  );
}
