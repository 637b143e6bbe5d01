import type { Catalog } from '../../../catalog/index.js';
import {
  adjusterTurn,
  classFigures,
  classLimit,
  classOrigin,
  type Decision,
  type StemAnswer,
  stemShortening,
} from '../../../gauge/index.js';
import type { Origin } from '../../../quantity/index.js';
import type { Job } from '../../job.js';
import { valveOf, valveWay } from '../../valve.js';
import type { Answers } from '../answers.js';
import { originOf } from './figure-limit.js';
import { standingLimit } from './limit-for.js';
import { gaugeLimit, type LimitAnswer } from './limits.js';
import { inUnit } from './readings.js';

/** One valve as it stands now, and what to do about it. */
export interface ValveAnswer {
  readonly valve: 'intake' | 'exhaust';
  readonly how: 'stem' | 'adjuster';
  readonly answer: LimitAnswer;
  readonly min: number;
  readonly max: number;
  readonly unit: string;
  readonly origin: Origin;
  /** the range is of the class, not of this engine */
  readonly ofClass: boolean;
  readonly decision: Decision;
  /** for a side valve */
  readonly stem?: StemAnswer;
  /** for an adjuster: whether to open or close it */
  readonly turn?: 'leave' | 'open' | 'close';
  readonly words: string;
  /** the clearance read before this one */
  readonly before?: number;
}

/** The latest clearance of each valve. Which valve it is stands in the place; a reading without it answers nothing. */
export function valveAnswers({ job, catalog, limits }: Answers): ValveAnswer[] {
  const all = limits.filter(
    ({ group: { last } }) => valveWay(catalog, last.measure) !== undefined && last.value.kind === 'length',
  );
  return (['intake', 'exhaust'] as const).flatMap((valve) => {
    const mine = all.filter(({ group }) => valveOf(group.last.place) === valve);
    const latest = mine.at(-1);
    return latest ? [valveAnswer(valve, latest, mine.at(-2), job, catalog)] : [];
  });
}

function valveAnswer(
  valve: ValveAnswer['valve'],
  answer: LimitAnswer,
  before: LimitAnswer | undefined,
  job: Job,
  catalog: Catalog,
): ValveAnswer {
  const { group } = answer;
  const { unit } = group.last.value;
  const how = valveWay(catalog, group.last.measure) ?? 'adjuster';
  const range = rangeOf(valve, how, answer, job, catalog);
  const { value, u } = inUnit(group, unit);
  const given = { measured: value, u, min: range.min, max: range.max, unit };
  const base = {
    valve,
    how,
    answer,
    unit,
    ...range,
    ...(before && { before: inUnit(before.group, unit).value }),
  } as const;
  if (how === 'stem') {
    const stem = stemShortening(given);
    return { ...base, decision: stem.now, stem, words: stem.words };
  }
  // the angle needs pitch and rocker ratio, which the worksheet asks for; here only the way to turn
  const { action, now } = adjusterTurn({ ...given, pitch: 1, rockerRatio: 1, at: 'valve' });
  return { ...base, decision: now, turn: action, words: turnWords[action] };
}

const turnWords = {
  leave: 'Inside the range: leave it.',
  open: 'Back the adjuster off to the middle of the range, lock, measure again.',
  close: 'Turn the adjuster in to the middle of the range, lock, measure again.',
} as const;

function rangeOf(
  valve: ValveAnswer['valve'],
  how: ValveAnswer['how'],
  { group, limit: judged }: LimitAnswer,
  job: Job,
  catalog: Catalog,
): Pick<ValveAnswer, 'min' | 'max' | 'origin' | 'ofClass'> {
  const { unit } = group.last.value;
  const limit = judged ?? standingLimit(job, catalog, group.last);
  const { min, max } = limit ? gaugeLimit(limit, unit) : {};
  if (limit && min !== undefined && max !== undefined && max > min)
    return { min, max, origin: originOf(limit), ofClass: limit.origin.from === 'rule of thumb' };
  const figure = classFigureOf[how][valve];
  const bound = classLimit(figure, unit);
  return { min: bound.min!, max: bound.max!, origin: classOrigin(figure), ofClass: true };
}

const classFigureOf = {
  stem: { intake: classFigures.sideValveIntake, exhaust: classFigures.sideValveExhaust },
  adjuster: { intake: classFigures.overheadIntake, exhaust: classFigures.overheadExhaust },
} as const;
