import { type Architecture, architectures, byId, type Catalog } from '../../../catalog/index.js';
import {
  countedChance,
  countFaults,
  type FaultCount,
  type FinishedJob,
  frequenciesFor,
  type Learned,
  learnedFromCounts,
} from '../../../diagnose/index.js';
import { plural } from '../../../phrase/index.js';
import type { ShopMinutes } from '../../../plan/index.js';
import type { Job, Shop } from '../../job.js';
import type { Answers } from '../answers.js';
import { lastKept } from '../once.js';

/**
 * Which faults a finished job's machine had and had not, for the shop's own frequencies; undefined while it is not
 * finished or its kind of engine is not known.
 *
 * A fault that was decided on counts as decided. In a machine that was repaired and handed over the others count by the
 * chance that what was seen leaves them: most show nothing at a run-up, so that none was found is no sign that there was
 * none. One that went as scrap, as a donor or unrepaired says nothing of the faults that nobody looked for, and only the
 * decided ones count. A job in which no fault was named says nothing: that nobody wrote one down is no sign that there was
 * none.
 */
export function faultsOfJob(answers: Answers): FinishedJob | undefined {
  const { job, architecture, faultsSaid } = answers;
  if (!job.handOver || architecture === undefined) return undefined;
  const said = Object.fromEntries(faultsSaid.map((f) => [f.fault, f.present ? 1 : 0]));
  if (!Object.values(said).includes(1)) return undefined;
  const left = wasRepaired(job) ? chancesLeft(answers) : {};
  return { architecture, faults: { ...left, ...said }, invented: job.invented };
}

/** By fault of this machine, as sure as it may be never as one that was found; none where the log contradicts itself. */
function chancesLeft({ machine, inference }: Answers): Record<string, number> {
  const place = new Map(inference?.faults.map((id, i) => [id, i]));
  return Object.fromEntries(
    machine.faults.flatMap(({ id }) => {
      const at = place.get(machine.now(id));
      return at === undefined ? [] : [[id, Math.min(surest, countedChance(inference!.posterior[at]!))]];
    }),
  );
}

/** The most that a fault counts on which nobody decided. */
const surest = 1 - 1 / 1024;

function wasRepaired(job: Job): boolean {
  const last = job.decisions.findLast((d) => d.about === 'machine');
  const kept = last === undefined || last.choice === 'repair' || last.choice === 'ask-owner';
  return kept && [...job.runUp.values()].every((r) => r.result !== 'not-ok');
}

/** A finished job as the shop's own list of them shows it. */
export interface FinishedHere extends FinishedJob {
  readonly job: string;
  readonly tag: number;
  readonly machine: string;
  /** when it was handed over */
  readonly at: string;
}

/** A finished job ready to be counted; an invented one never is. */
export function finishedHere(answers: Answers): FinishedHere | undefined {
  const { job } = answers;
  const finished = job.invented ? undefined : faultsOfJob(answers);
  if (!finished || !job.handOver) return undefined;
  const machine = job.intake.machine ?? job.title;
  return { ...finished, job: job.id, tag: job.tag, machine, at: job.handOver.at };
}

/** Finished jobs counted together: nothing in it points at one of them. */
export interface FinishedCounts {
  readonly counts: readonly FaultCount[];
  /** how many jobs stand behind the counts, by kind of engine */
  readonly jobs: Readonly<Partial<Record<Architecture, number>>>;
}

export function countFinished(finished: readonly FinishedHere[], catalog: Catalog): FinishedCounts {
  const jobs: Partial<Record<Architecture, number>> = {};
  for (const { architecture } of finished) jobs[architecture] = (jobs[architecture] ?? 0) + 1;
  return { counts: countFaults(catalog, finished), jobs };
}

/**
 * What the shop's jobs so far tell beside the catalog. Every finished job counts unless the shop has left it out; both
 * can be taken back at any time. No job speaks for itself: the one that is asked about is not among them.
 */
export interface JobsTaught extends FinishedCounts {
  /** by component or assembly, from the clock of the logs */
  readonly minutes: ShopMinutes;
}

/** What a shop knows whose first job this is. */
export const nothingTaught: JobsTaught = { counts: [], jobs: {}, minutes: {} };

/** What the shop's own finished jobs have taught. */
export interface OwnFrequencies {
  /** off: the catalog speaks alone, and nothing that was counted is lost */
  readonly on: boolean;
  readonly jobs: FinishedCounts['jobs'];
  readonly learned: Learned;
}

/** Kept for the last shop asked: it is the same for all its jobs and does not change with a tap. */
export const ownFrequencies = lastKept(learnedBy);

function learnedBy(
  { settings }: Pick<Shop, 'settings'>,
  { counts, jobs }: FinishedCounts,
  catalog: Catalog,
): OwnFrequencies {
  const all = Object.values(jobs).reduce((sum, n) => sum + n, 0);
  const learned = { ...learnedFromCounts(catalog, counts), jobs: all };
  return { on: settings['own-frequencies'] !== 'off', jobs, learned };
}

/** What the shop's own jobs say of machines like one job's. */
export interface OwnSay {
  /** by fault, in place of the catalog's */
  readonly frequencies: ReadonlyMap<string, number>;
  /** how many of the shop's own jobs stand behind them */
  readonly jobs: number;
  /** in how many of them each fault was found, and of how many that is told */
  readonly counts: ReadonlyMap<string, { readonly found: number; readonly of: number }>;
}

/**
 * What the shop's own frequencies say of a job's machine; undefined while they are off, while its kind of engine is not
 * known or while no such machine has been finished.
 */
export function ownSay(own: OwnFrequencies, job: Job): OwnSay | undefined {
  const architecture = architectures.find((a): a is Architecture => a === job.intake.architecture);
  if (!own.on || architecture === undefined) return undefined;
  return sayOf(own, architecture);
}

const sayOf = lastKept((own: OwnFrequencies, architecture: Architecture): OwnSay | undefined => {
  const jobs = own.jobs[architecture] ?? 0;
  if (jobs === 0) return undefined;
  const here = own.learned.frequencies.filter((f) => f.architecture === architecture);
  return {
    frequencies: frequenciesFor(own.learned, architecture),
    jobs,
    counts: new Map(here.map((f) => [f.fault, { found: f.found, of: f.present + f.absent }])),
  };
});

/** "Shifted by 7 of your own jobs" */
export const ownSayWords = ({ jobs }: OwnSay): string =>
  `Shifted by ${jobs} of your own ${plural(jobs, 'job')}`;

/** What leaves the shop: counts by kind of engine and fault. No job, no tag, no machine, no owner stands in it. */
export function exportedFrequencies({ on, learned }: OwnFrequencies, catalog: Catalog) {
  const names = byId(catalog.faults);
  return {
    jobs: learned.jobs,
    on,
    strength: learned.strength,
    frequencies: learned.frequencies.map((f) => ({ ...f, name: names.get(f.fault)?.name ?? f.fault })),
  };
}
