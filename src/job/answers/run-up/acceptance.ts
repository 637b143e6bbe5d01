import { type Acceptance, applies, type Catalog } from '../../../catalog/index.js';
import type { Written } from '../../entry.js';
import type { From, Job } from '../../job.js';
import type { Answers } from '../answers.js';

/** One number (or word) that is written down before the machine leaves, with where it was said. */
export interface AcceptanceRow {
  readonly acceptance: Acceptance;
  /** the entry that says it; absent while nothing does */
  readonly said?: {
    readonly entry: string;
    readonly at: string;
    readonly words: string;
    /** how it is known: "measured, inductive tachometer" */
    readonly from: string;
    readonly value?: Written;
  };
}

/**
 * The acceptance numbers of this machine, each from the latest line of the log that says it: a run-up step, a
 * measurement after the work, a check, or a recording after the work (pulls until it caught; speed).
 */
export function acceptanceOf({ job, catalog, engine }: Answers): AcceptanceRow[] {
  return catalog.acceptance
    .filter(({ when }) => applies(when, engine.facts) !== 'no')
    .map((acceptance) => {
      const said = latest([
        ...fromRunUp(job, catalog, acceptance),
        ...fromMeasurements(job, acceptance),
        ...fromChecks(job, acceptance),
        ...fromRecordings(job, acceptance),
      ]);
      return { acceptance, ...(said && { said }) };
    });
}

type Said = NonNullable<AcceptanceRow['said']>;

const latest = (said: readonly Said[]): Said | undefined =>
  said.toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at)).at(-1);

/** A step says an acceptance number that has its id, or reads the same spec or measurement. */
function fromRunUp(job: Job, catalog: Catalog, { id, spec, measurement, kind }: Acceptance): Said[] {
  const same = catalog.runUp.filter(
    (step) =>
      step.id === id ||
      (spec !== undefined && step.spec === spec) ||
      (measurement !== undefined && step.measurement === measurement),
  );
  return same.flatMap((step) => {
    const said = job.runUp.get(step.id);
    if (!said?.value || said.value.kind !== kind) return [];
    return [saidBy(said, said.value.written, `run-up: ${step.title.toLowerCase()}`, said.value)];
  });
}

function fromMeasurements(job: Job, { measurement }: Acceptance): Said[] {
  return job.measurements
    .filter((m) => m.measure === measurement && m.phase === 'after')
    .map((m) => saidBy(m, m.value.written, measuredWith(m), m.value));
}

/** What a check found before the work is the complaint, not the proof. */
function fromChecks(job: Job, { check, kind }: Acceptance): Said[] {
  const since = firstRunUp(job);
  if (check === undefined || since === undefined || kind !== 'words') return [];
  return job.observations
    .filter((o) => o.check === check && Date.parse(o.at) >= since)
    .map((o) =>
      saidBy(o, [o.value, ...o.outcomes, o.words].filter(Boolean).join(', '), 'seen at the run-up'),
    );
}

const firstRunUp = (job: Job): number | undefined => {
  const times = [...job.runUp.values()].map(({ at }) => Date.parse(at));
  return times.length > 0 ? Math.min(...times) : undefined;
};

const heard: Readonly<
  Record<NonNullable<Acceptance['heard']>, (r: From<'recording'>) => string | undefined>
> = {
  'pulls, cold': (r) => (r.temperature === 'cold' ? pulls(r) : undefined),
  'pulls, hot': (r) => (r.temperature === 'hot' ? pulls(r) : undefined),
  speed: (r) =>
    r.mean && r.rivalsRpm.length === 0
      ? `${Math.round(r.mean.rpm)} ± ${Math.ceil(2 * r.mean.u)} rpm`
      : undefined,
};

const pulls = ({ starts }: From<'recording'>) =>
  starts && (starts.caught ? `${starts.attempts}` : `${starts.attempts}, did not catch`);

function fromRecordings(job: Job, { heard: what }: Acceptance): Said[] {
  const words = what && heard[what];
  if (!words) return [];
  return [...job.recordings.values()]
    .filter(({ phase }) => phase === 'after')
    .flatMap((r) => {
      const said = words(r);
      return said === undefined ? [] : [saidBy(r, said, `heard in ${r.name}`)];
    });
}

const measuredWith = ({ instrument }: From<'measurement'>): string =>
  ['measured', instrument?.replaceAll('-', ' ')].filter(Boolean).join(', ');

const saidBy = (by: { entry: string; at: string }, words: string, from: string, value?: Written): Said => ({
  entry: by.entry,
  at: by.at,
  words,
  from,
  ...(value && { value }),
});
