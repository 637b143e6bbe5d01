import { byId, type Catalog, type Fault, type RunUpStep, roleOf } from '../../../catalog/index.js';
import { type Kind, type Origin, of } from '../../../quantity/index.js';
import type { Written } from '../../entry.js';
import type { From, Job } from '../../job.js';
import type { Answers } from '../answers.js';
import { piecesOf } from '../steps/taken.js';

/** What a number of the run-up must keep to, SI, and who says so. */
export interface RunUpLimit {
  readonly kind: Kind;
  readonly min?: number;
  readonly max?: number;
  /** unit in which its source speaks */
  readonly unit: string;
  readonly origin: Origin;
}

export type RunUpState = 'open' | 'ok' | 'read' | 'outside' | 'not-ok' | 'not-applicable';

export interface RunUpItem {
  readonly step: RunUpStep;
  readonly said?: From<'run-up'>;
  readonly limit?: RunUpLimit;
  /** a reading outside its limit is `outside` whatever was said about it */
  readonly state: RunUpState;
  /** why this job asks for it: it bars the hand-over; hands were on a piece of it; it is a number to leave with. Else it is not asked for */
  readonly asked?: 'safety' | 'touched' | 'number';
}

export interface RunUp {
  readonly items: readonly RunUpItem[];
  /** reasons to stop the engine at once, in words; no run and no hand-over while one stands */
  readonly stops: readonly string[];
}

/** The run-up of this machine: its steps in order, each with what was said, held against its limit. */
export function runUpOf(answers: Answers): RunUp {
  const { job, catalog, engine } = answers;
  const touched = touchedPieces(answers);
  const items = catalog.runUp
    .filter((step) => engine.concerns(step) || job.runUp.has(step.id))
    .map((step): RunUpItem => {
      const asked = askedFor(step, touched, catalog);
      return { ...itemOf(step, job, catalog), ...(asked && { asked }) };
    });
  const barred = items.filter(
    ({ step, state }) => step.barsHandOver && (state === 'not-ok' || state === 'outside'),
  );
  return {
    items,
    stops: [...barred.map(stopWords), ...heardTooFast(job, items, roleOf(catalog, 'top-speed'))],
  };
}

/** Sized to the job: what can hurt someone always, the rest where hands were or a number is written down at the end. */
function askedFor(step: RunUpStep, touched: ReadonlySet<string>, catalog: Catalog): RunUpItem['asked'] {
  if (step.barsHandOver) return 'safety';
  if (piecesIn(step).some((id) => touched.has(id))) return 'touched';
  return step.answer === 'reading' && isLeftWith(step, catalog) ? 'number' : undefined;
}

const piecesIn = ({ when }: RunUpStep | Fault): readonly string[] => [
  ...(when?.pieces ?? []),
  ...(when?.anyPiece ?? []),
];

/** Where hands were: what was off, and what a repaired fault sits in. */
function touchedPieces(answers: Answers): ReadonlySet<string> {
  const repaired = new Set(answers.faultsSaid.filter((f) => f.repairedAt).map(({ fault }) => fault));
  const faults = answers.catalog.faults.filter(({ id }) => repaired.has(id));
  return new Set([...answers.takenOff.flatMap((off) => piecesOf(answers, off)), ...faults.flatMap(piecesIn)]);
}

const isLeftWith = ({ id, spec, measurement }: RunUpStep, { acceptance }: Catalog): boolean =>
  acceptance.some(
    (number) =>
      number.id === id ||
      (spec !== undefined && number.spec === spec) ||
      (measurement !== undefined && number.measurement === measurement),
  );

function itemOf(step: RunUpStep, job: Job, catalog: Catalog): RunUpItem {
  const said = job.runUp.get(step.id);
  const limit = limitOf(step, job, catalog);
  return { step, ...(said && { said }), ...(limit && { limit }), state: stateOf(said, limit) };
}

function stateOf(said: From<'run-up'> | undefined, limit: RunUpLimit | undefined): RunUpState {
  if (!said) return 'open';
  if (said.result === 'not-ok' || said.result === 'not-applicable') return said.result;
  if (said.value && limit && isOutside(said.value, limit)) return 'outside';
  if (said.result === 'ok') return 'ok';
  return said.value && limit ? 'ok' : 'read';
}

const isOutside = (value: Written, { kind, min, max }: RunUpLimit) =>
  value.kind === kind && ((min !== undefined && value.si < min) || (max !== undefined && value.si > max));

/** A rule that holds on every such machine comes first, then this engine's sheet. Class figures bind nobody. */
function limitOf(step: RunUpStep, job: Job, catalog: Catalog): RunUpLimit | undefined {
  return limitOfRule(step) ?? limitOfSheet(step, job, catalog);
}

function limitOfRule({ rule, kind }: RunUpStep): RunUpLimit | undefined {
  if (!rule || !kind) return undefined;
  const si = (value: number) => of(value, rule.unit).si;
  return {
    kind,
    unit: rule.unit,
    origin: rule.origin,
    ...(rule.from !== undefined && { min: si(rule.from) }),
    ...(rule.to !== undefined && { max: si(rule.to) }),
  };
}

function limitOfSheet(step: RunUpStep, job: Job, catalog: Catalog): RunUpLimit | undefined {
  const said = step.spec === undefined ? undefined : job.specs.get(step.spec);
  const binds = step.spec === undefined ? undefined : byId(catalog.specs).get(step.spec)?.binds;
  if (!said?.value || !binds || binds === 'words' || binds === 'set to') return undefined;
  const { value, upTo } = said;
  const base = { kind: value.kind, unit: value.unit, origin: said.origin as Origin };
  if (binds === 'at most') return { ...base, max: (upTo ?? value).si };
  if (binds === 'at least') return { ...base, min: value.si };
  return upTo ? { ...base, min: value.si, max: upTo.si } : undefined;
}

const stopWords = ({ step, said, state }: RunUpItem) =>
  state === 'outside'
    ? `${step.title}: ${said!.value!.written} is outside the limit`
    : `${step.title}: not in order`;

/**
 * Overspeed heard in the latest recording after the work, unless the top speed was said later. Two standard
 * uncertainties above the limit, so that the tool's own doubt stops no engine; a speed that the sound leaves
 * ambiguous stops none either, and the sheet asks for a second way to count.
 */
function heardTooFast(job: Job, items: readonly RunUpItem[], topSpeed: string): string[] {
  const top = items.find(({ limit, step }) => step.spec === topSpeed && limit?.max !== undefined);
  const heard = lastHeard(job);
  if (!top || !heard?.mean || heard.rivalsRpm.length > 0) return [];
  if (top.said && Date.parse(top.said.at) > Date.parse(heard.at)) return [];
  const fastest = Math.max(heard.mean.rpm - 2 * heard.mean.u, ...heldSpeeds(heard.track));
  const limit = of(1, 'rpm').si;
  const most = top.limit!.max! / limit;
  if (fastest <= most) return [];
  return [`Overspeed: ${heard.name} turns ${Math.round(fastest)} rpm, ${Math.round(most)} rpm is the most`];
}

/** For each moment the speed that was not undercut for a second from there on, less two standard uncertainties. */
function heldSpeeds(track: From<'recording'>['track']): number[] {
  const last = track.at(-1)?.t ?? 0;
  return track
    .filter(({ t }) => t + 1 <= last)
    .map((from) => {
      const second = track.filter(({ t }) => t >= from.t && t <= from.t + 1);
      return Math.min(...second.map(({ rpm, u }) => rpm - 2 * u));
    });
}

function lastHeard(job: Job): From<'recording'> | undefined {
  const heard = [...job.recordings.values()].filter(({ phase, mean }) => phase === 'after' && mean);
  return heard.toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at)).at(-1);
}
