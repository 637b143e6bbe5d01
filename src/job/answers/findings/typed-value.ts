import { byId, type Check, type Measurement } from '../../../catalog/index.js';
import { outcomeOfValue, type ValueUnit, valueLookedFor, valueUnit } from '../../../diagnose/index.js';
import { of, QuantityError, to } from '../../../quantity/index.js';
import type { Body } from '../../entry.js';
import type { From } from '../../job.js';
import { written } from '../../read-entry.js';
import type { Answers } from '../answers.js';
import { sheetLimit } from '../measure/limit-for.js';

type Here = Pick<Answers, 'job' | 'catalog'>;

/** What a number typed into a check is, on this engine. */
export interface TypedValue {
  /** the outcome that it stands for, in the check's words; undefined while what it means is not known */
  readonly outcome?: string;
  /** the same reading as a line of the measurements, where the check reads one of them */
  readonly reading?: Pick<Body<'measurement'>, 'measure' | 'title' | 'value'>;
}

/**
 * In what a check takes a number on this engine: the unit of its scale, else of what is held against the maker's limit.
 * Undefined where it takes none.
 */
export function valueAsked(here: Here, check: Check): ValueUnit | undefined {
  const scale = valueUnit(check, here.job.intake);
  if (scale) return scale;
  const measure = check.byLimit && measured(here, check);
  const unit = measure?.typicalNew[0]?.unit;
  return measure?.kind === undefined || unit === undefined ? undefined : { unit, kind: measure.kind };
}

/** A number that a check looks for on this engine, and between which bounds it is believed, all in one unit. */
export interface LookedFor {
  readonly near: number;
  readonly low: number;
  readonly high: number;
}

/**
 * The number near which a check's reading lies, in `unit`: the middle of the maker's limit or the one bound that it has,
 * else what the scale of the check looks for. Undefined where none of them is known.
 */
export function lookedFor(here: Here, check: Check, { unit, kind }: ValueUnit): LookedFor | undefined {
  const { believed } = check;
  const scale = valueUnit(check, here.job.intake)?.unit;
  const inUnit = (number: number, from: string) => (kind === undefined ? number : to(of(number, from), unit));
  const { min, max } = (check.byLimit && limitOf(here, check)) ?? {};
  const bounds = [min, max].flatMap((bound) => (bound ? [to(bound, unit)] : []));
  const ofScale = scale === undefined ? undefined : valueLookedFor(check, here.job.intake);
  if (bounds.length === 0 && ofScale !== undefined) bounds.push(inUnit(ofScale, scale!));
  if (bounds.length === 0 || !believed) return undefined;
  return {
    near: bounds.reduce((sum, each) => sum + each, 0) / bounds.length,
    low: inUnit(believed.low, believed.unit),
    high: inUnit(believed.high, believed.unit),
  };
}

/**
 * What a number typed into a check says: held against the limit of the maker's sheet where it has one, else against the
 * scale of the check. It is read anew each time, so that a question answered later counts for a number typed before.
 */
export function typedValue(here: Here, check: Check, text: string): TypedValue {
  const id = byMakersLimit(here, check, text) ?? outcomeOfValue(check, text, here.job.intake);
  const outcome = check.outcomes.find((o) => o.id === id)?.words;
  const measure = measured(here, check);
  const value = measure && readAs(measure, text);
  return {
    ...(outcome !== undefined && { outcome }),
    ...(value && { reading: { measure: measure.id, title: measure.name, value } }),
  };
}

const measured = ({ catalog }: Pick<Here, 'catalog'>, { measurement }: Check): Measurement | undefined =>
  byId(catalog.measurements).get(measurement ?? '');

function limitOf(here: Here, check: Check) {
  const measure = measured(here, check);
  return measure && sheetLimit(here.job, here.catalog, measure);
}

function byMakersLimit(here: Here, check: Check, text: string): string | undefined {
  const limit = check.byLimit && limitOf(here, check);
  const read = limit && readAs(measured(here, check)!, text);
  if (!limit || !read) return undefined;
  if (limit.min && read.si < limit.min.si) return check.byLimit!.below;
  return limit.max && read.si > limit.max.si ? check.byLimit!.above : check.byLimit!.inside;
}

/** The number as that measurement; undefined for a text that is none of its kind. */
function readAs({ kind }: Measurement, text: string) {
  if (kind === undefined) return undefined;
  try {
    return written(text, kind);
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}

/** What was seen, with the outcomes that typed numbers stand for now. */
export function sightsOf(here: Here): readonly From<'observation'>[] {
  const checks = byId(here.catalog.checks);
  return here.job.observations.map((seen) => {
    const check = checks.get(seen.check ?? '');
    const outcome = seen.value && check && typedValue(here, check, seen.value).outcome;
    return outcome ? { ...seen, outcomes: [outcome] } : seen;
  });
}

/** "91 psi, 40 % down" */
export const seenWords = ({ value, outcomes }: Pick<From<'observation'>, 'value' | 'outcomes'>): string =>
  [value, ...outcomes].filter(Boolean).join(', ');
