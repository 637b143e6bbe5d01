import type { Catalog } from '../../../catalog/index.js';
import { type Decision, decide, type Limit as GaugeLimit } from '../../../gauge/index.js';
import { show, to } from '../../../quantity/index.js';
import type { Limit } from '../../entry.js';
import { type From, type Job, quantityOf, type Shop } from '../../job.js';
import { decisionHandle } from '../../valve.js';
import type { Answers } from '../answers.js';
import { boreAnswers, type WorkedFigure } from './bore.js';
import { faceAnswers } from './face.js';
import { standingLimit } from './limit-for.js';
import { inUnit, type ReadingGroup, readingGroups, standingGroups } from './readings.js';
import { type SettledBy, settledBy } from './settled-by.js';

/**
 * A reading, or repeats of it, against its limit, with the uncertainty of the shop's instrument. Without a known
 * instrument the comparison is exact and says so: an unknown uncertainty is not a small one.
 */
export interface LimitAnswer {
  readonly group: ReadingGroup;
  readonly limit?: Limit;
  /** the limit is a figure of the class, not of this engine */
  readonly ofClass: boolean;
  readonly decision?: Decision;
  /** only when it cannot be decided */
  readonly settled?: SettledBy;
  /** a later group of the same thing took its place */
  readonly superseded: boolean;
}

/** Every group of repeats in this job against what bounds it. */
export function limitAnswers(answers: Answers): LimitAnswer[] {
  const { job, catalog, shop } = answers;
  const standing = new Set(answers.standingGroups);
  return answers.readingGroups.map((group) => ({
    ...limitAnswer(group, standingLimit(job, catalog, group.last), catalog, shop),
    superseded: !standing.has(group),
  }));
}

export function limitAnswer(
  group: ReadingGroup,
  limit: Limit | undefined,
  catalog: Catalog,
  shop?: Shop,
): LimitAnswer {
  const base = { group, superseded: false, ofClass: limit?.origin.from === 'rule of thumb' };
  const decision = decisionOf(group, limit);
  if (!limit || !decision) return base;
  const { unit, kind } = group.last.value;
  const measure = catalog.measurements.find(({ id }) => id === group.last.measure);
  return {
    ...base,
    limit,
    decision,
    ...(decision.verdict === 'cannot-decide' && {
      settled: settledBy(group, gaugeLimit(limit, unit), unit, { shop, measure, kind }),
    }),
  };
}

/** Pass, fail, or cannot decide with this tool; nothing without a bound. */
export function decisionOf(group: ReadingGroup, limit: Limit | undefined): Decision | undefined {
  if (!limit?.min && !limit?.max) return undefined;
  const { unit } = group.last.value;
  return decide({ ...inUnit(group, unit), limit: gaugeLimit(limit, unit), unit, ...freedomOf(group) });
}

/** Below one, Student's distribution has no mean; the budget rounds it down to one at the least. */
function freedomOf({ degreesOfFreedom }: ReadingGroup) {
  return Number.isFinite(degreesOfFreedom) && degreesOfFreedom >= 1 ? { degreesOfFreedom } : {};
}

export function gaugeLimit({ min, max }: Pick<Limit, 'min' | 'max'>, unit: string): GaugeLimit {
  return {
    ...(min && { min: to(quantityOf(min), unit) }),
    ...(max && { max: to(quantityOf(max), unit) }),
  };
}

/** What stands outside a limit and nobody has decided about, in words. */
export function undecided({ job, catalog }: Pick<Answers, 'job' | 'catalog'>): string[] {
  const decided = new Set(job.decisions.filter((d) => d.about === 'measurement').map((d) => d.which));
  const isOpen = (measure: string, place?: string) =>
    !decided.has(measure) && !decided.has(decisionHandle(catalog, measure, place));
  const readings = outsideLimit(job)
    .filter((m) => isOpen(m.measure, m.place))
    .map((m) => `decide about ${m.title}: ${m.value.written} is outside its limit`);
  const figures = outsideFigures(job, catalog)
    .filter((f) => isOpen(f.measure))
    .map((f) => `decide about ${f.title}: as read, ${show(f.quantity)} is outside its limit`);
  return [...readings, ...figures];
}

/** Readings that stand outside their limit, the latest of each place only. */
function outsideLimit(job: Job): From<'measurement'>[] {
  const latest = new Map(
    job.measurements.map((m) => [JSON.stringify([m.measure, m.place, m.direction, m.spot]), m]),
  );
  return [...latest.values()].filter((m) => {
    const { min, max } = m.limit ?? {};
    return (min !== undefined && m.value.si < min.si) || (max !== undefined && m.value.si > max.si);
  });
}

/**
 * Worked-out figures beyond the maker's limit, compared as read; after the work, only what was read after it. A figure
 * of the class bars nothing: it is not this engine's.
 */
function outsideFigures(job: Job, catalog: Catalog): WorkedFigure[] {
  const asRead = { job, catalog, standingGroups: standingGroups(readingGroups(job)) };
  const bores = latestPhase(boreAnswers(asRead), () => 'bore');
  const faces = latestPhase(faceAnswers(asRead), (f) => f.measure);
  return [...bores.flatMap((b) => b.figures), ...faces.flatMap((f) => f.figure ?? [])].filter(
    ({ limit, decision }) => limit && !limit.ofClass && decision?.verdict === 'fail',
  );
}

function latestPhase<T extends { readonly phase: string }>(
  answers: readonly T[],
  keyOf: (a: T) => string,
): T[] {
  const after = new Set(answers.filter((a) => a.phase === 'after').map(keyOf));
  return answers.filter((a) => a.phase === 'after' || !after.has(keyOf(a)));
}
