import { type Catalog, measurementAs, roleOf } from '../../../catalog/index.js';
import {
  type BoreMap,
  boreMap,
  chooseOversize,
  classFigures,
  type Decision,
  decideExtreme,
  decideSpread,
  decidingU,
  GaugeError,
  type OversizeAnswer,
} from '../../../gauge/index.js';
import { type Origin, type Quantity, to } from '../../../quantity/index.js';
import { type From, type Job, quantityOf, type Shop } from '../../job.js';
import { classBound, type FigureLimit, figureLimit, lengthLine, originOf } from './figure-limit.js';
import { amountOf, inUnit, type ReadingGroup } from './readings.js';
import { type SettledBy, settledWith, type Tools } from './settled-by.js';

export const skirtMeasure = 'piston-skirt-diameter';

/** Wear, taper or out-of-round: worked out from several readings, held against one bound. */
export interface WorkedFigure {
  /** as a measure of the catalog, so that a decision can be about it */
  readonly measure: string;
  readonly title: string;
  readonly quantity: Quantity;
  /** where it is worst */
  readonly where: string;
  /** absent where no bound can be named */
  readonly limit?: FigureLimit;
  readonly decision?: Decision;
  readonly settled?: SettledBy;
  /** the bound in words, where it is not simply "at most" the figure */
  readonly note?: string;
}

/** One bore as read at heights and directions, as found or after the work. */
export interface BoreAnswer {
  readonly phase: 'as-found' | 'after';
  readonly unit: string;
  readonly heights: readonly string[];
  readonly directions: readonly string[];
  readonly groups: readonly ReadingGroup[];
  readonly instruments: readonly From<'instrument'>[];
  /** a reading was taken with a tool of unknown uncertainty: then everything is compared as read */
  readonly asRead: boolean;
  /** places that were not read yet, while others at their height and direction were */
  readonly missing: readonly string[];
  readonly standard?: Standard;
  /** absent while readings are missing or cannot be believed */
  readonly map?: BoreMap;
  /** why there is no map */
  readonly cannot?: string;
  readonly figures: readonly WorkedFigure[];
}

export interface Standard {
  /** in the unit of the readings */
  readonly size: number;
  readonly origin: Origin;
  /** the maker gives a range for new bores; `size` is its middle */
  readonly range?: readonly [number, number];
  /** taken from the readings for want of a maker's figure */
  readonly guessed: boolean;
}

/**
 * The bore as read, as found and after the work. Heights keep the catalog's order from the top, then the order in
 * which they were read. Readings without a height or direction make no map; they stand as single readings.
 */
export function boreAnswers(known: Known): BoreAnswer[] {
  const groups = known.standingGroups.filter((g) => g.last.measure === roleOf(known.catalog, 'bore'));
  const placed = groups.filter(({ last }) => last.place && last.direction && last.value.kind === 'length');
  return (['as-found', 'after'] as const)
    .map((phase) => ({ phase, of: placed.filter((g) => (g.last.phase === 'after') === (phase === 'after')) }))
    .filter(({ of }) => of.length >= 2)
    .map(({ phase, of }) => boreAnswer(phase, of, known));
}

/** What the answers are worked out of; without the shop, everything is compared as it was read. */
export interface Known {
  readonly job: Job;
  readonly catalog: Pick<Catalog, 'measurements' | 'roles'>;
  readonly shop?: Shop;
  readonly standingGroups: readonly ReadingGroup[];
}

function boreAnswer(phase: BoreAnswer['phase'], groups: readonly ReadingGroup[], known: Known): BoreAnswer {
  const measure = measurementAs(known.catalog, 'bore');
  const heights = ordered(
    groups.map((g) => g.last.place!),
    measure?.places ?? [],
  );
  const directions = ordered(
    groups.map((g) => g.last.direction!),
    measure?.directions ?? [],
  );
  const unit = groups[0]!.last.value.unit;
  const at = (height: string, direction: string) =>
    groups.find((g) => g.last.place === height && g.last.direction === direction);
  const missing = heights.flatMap((h) => directions.filter((d) => !at(h, d)).map((d) => `${h}, ${d}`));
  const instruments = [...new Set(groups.flatMap((g) => g.instrument ?? []))];
  const base = { phase, unit, heights, directions, groups, instruments, missing, figures: [] };
  const asRead = groups.some((g) => g.instrument === undefined);
  const standard = standardOf(known, groups, unit);
  if (missing.length > 0) return { ...base, asRead, standard };
  const diameters = heights.map((h) => directions.map((d) => inUnit(at(h, d)!, unit).value));
  const u = asRead ? 0 : Math.max(...groups.map((g) => inUnit(g, unit).u));
  const depths = heights.map((_, i) => i + 1);
  const map = attempt(() => boreMap({ depths, directions, diameters, standard: standard.size, u, unit }));
  if (typeof map === 'string') return { ...base, asRead, standard, cannot: map };
  const tools = { shop: known.shop, measure, kind: 'length' as const };
  const figures = figuresOf(map, {
    heights,
    unit,
    u,
    standard,
    tools,
    job: known.job,
    catalog: known.catalog,
  });
  return { ...base, asRead, standard, map, figures };
}

/** What the gauge room refuses is said; the log is total, so nothing is thrown out of an answer. */
export function attempt<T>(work: () => T): T | string {
  try {
    return work();
  } catch (error) {
    if (error instanceof GaugeError) return error.message;
    throw error;
  }
}

/** Known names first, in their own order; then the others in the order of their first reading. */
function ordered(names: readonly string[], known: readonly string[]): string[] {
  const seen = new Set(names);
  return [...known.filter((name) => seen.has(name)), ...[...seen].filter((name) => !known.includes(name))];
}

function standardOf({ job, catalog }: Known, groups: readonly ReadingGroup[], unit: string): Standard {
  const line = lengthLine(job, measurementAs(catalog, 'bore')?.nominalSpec);
  if (!line) {
    const least = Math.min(...groups.map((g) => inUnit(g, unit).value));
    const origin = {
      from: 'rule of thumb',
      detail: 'the smallest reading stands for the standard size; low in the bore it is nearly as new',
    } as const;
    return { size: least, origin, guessed: true };
  }
  const low = to(quantityOf(line.value), unit);
  const high = line.upTo ? to(quantityOf(line.upTo), unit) : low;
  const range = high > low ? ([low, high] as const) : undefined;
  return { size: (low + high) / 2, origin: originOf(line), ...(range && { range }), guessed: false };
}

interface About {
  readonly heights: readonly string[];
  readonly unit: string;
  readonly u: number;
  readonly standard: Standard;
  readonly tools: Tools;
  readonly job: Job;
  readonly catalog: Known['catalog'];
}

function figuresOf(map: BoreMap, about: About): WorkedFigure[] {
  return [wearFigure(map, about), taperFigure(map, about), roundFigure(map, about)].filter(
    (figure) => figure !== undefined,
  );
}

/** Worn beyond: by the maker's reject size, which needs no standard; else by what the class allows over standard. */
function wearFigure(map: BoreMap, about: About): WorkedFigure | undefined {
  const { unit, u, standard, job, catalog, heights } = about;
  const { largest } = map;
  const reject = lengthLine(job, measurementAs(catalog, 'bore')?.rejectSpec);
  const base = {
    measure: roleOf(catalog, 'bore'),
    title: reject || standard.guessed ? 'Largest bore' : 'Wear',
    where: `${heights[largest.depth - 1]}, ${largest.direction}`,
  };
  if (standard.guessed && !reject) return { ...base, quantity: amountOf(largest.diameter, unit, u) };
  const limit: FigureLimit = reject
    ? { max: to(quantityOf(reject.value), unit), origin: originOf(reject), ofClass: false }
    : classBound(classFigures.boreWear, unit);
  const value = reject ? largest.diameter : map.wear;
  const at = (tool: number) =>
    decideExtreme({ value, u: tool, count: map.cells.length, limit: { max: limit.max }, unit });
  return {
    ...base,
    quantity: amountOf(value, unit, u),
    limit,
    ...decided(at, about),
    ...(reject && !standard.guessed && { note: wearWords(map.wear, unit) }),
  };
}

const wearWords = (wear: number, unit: string) =>
  wear > 0 ? `${trimmed(wear)} ${unit} over standard` : 'not over standard';

function taperFigure(map: BoreMap, about: About): WorkedFigure | undefined {
  if (about.heights.length < 2) return undefined;
  const measure = measurementAs(about.catalog, 'bore-taper');
  const limit = figureLimit(about.job, measure?.rejectSpec, classFigures.boreTaper, about.unit);
  return spreadFigure(
    roleOf(about.catalog, 'bore-taper'),
    'Taper',
    map.taper.value,
    map.taper.direction,
    limit,
    map,
    about,
  );
}

function roundFigure(map: BoreMap, about: About): WorkedFigure | undefined {
  if (map.taperByDirection.length < 2) return undefined;
  const { unit, heights, job, catalog } = about;
  const measure = measurementAs(catalog, 'bore-out-of-round');
  const limit = figureLimit(job, measure?.rejectSpec, classFigures.boreOutOfRound, unit);
  const where = heights[map.outOfRound.depth - 1]!;
  return spreadFigure(
    roleOf(catalog, 'bore-out-of-round'),
    'Out of round',
    map.outOfRound.value,
    where,
    limit,
    map,
    about,
  );
}

function spreadFigure(
  measure: string,
  title: string,
  value: number,
  where: string,
  limit: FigureLimit,
  map: BoreMap,
  about: About,
): WorkedFigure {
  const { unit, u } = about;
  const at = (tool: number) =>
    decideSpread({ spread: value, u: tool, count: map.cells.length, max: limit.max, unit });
  // the difference of two readings
  const quantity = amountOf(value, unit, Math.SQRT2 * u);
  return { measure, title, quantity, where, limit, ...decided(at, about) };
}

function decided(at: (u: number) => Decision, { u, unit, tools }: About) {
  const decision = at(u);
  if (decision.verdict !== 'cannot-decide') return { decision };
  return {
    decision,
    settled: settledWith(
      decidingU((tool) => at(tool).verdict, u),
      unit,
      tools,
    ),
  };
}

const trimmed = (x: number) => String(Number(x.toPrecision(3)));

/** What a shop decides about boring: what is sold over standard, and where the boring bar is set. */
export interface BoringPlan {
  /** over standard, in the unit of the bore */
  readonly oversizes: readonly number[];
  readonly cleanUp: number;
  readonly center: 'worn' | 'old';
}

/** Sizes usually sold and stock for the hone, in inches: common practice, and trade judgement for the stock. */
export const usualBoring = { oversizesIn: [0.01, 0.02, 0.03], cleanUpIn: 0.002 } as const;

type Sized = Pick<Known, 'job' | 'catalog'>;

export interface NextSize {
  readonly answer: OversizeAnswer;
  /** of the piston in hand grown by the oversize, in the new bore */
  readonly clearance?: { readonly quantity: Quantity; readonly limit: FigureLimit };
}

/**
 * The next oversize that cleans the bore up, and how a piston of that size would fit.
 *
 * The piston's skirt comes from a reading of it; an oversize piston is taken to be larger by the oversize. Special case:
 * without a map or a standard size there is no answer.
 */
export function nextSize(bore: BoreAnswer, plan: BoringPlan, { job, catalog }: Sized): NextSize | undefined {
  const { map, standard, unit } = bore;
  if (!map || !standard || standard.guessed) return undefined;
  const u = bore.asRead ? 0 : Math.max(...bore.groups.map((g) => inUnit(g, unit).u));
  const answer = chooseOversize({
    standard: standard.size,
    largest: map.largest.diameter,
    u,
    oversizes: plan.oversizes,
    cleanUp: plan.cleanUp,
    center: plan.center,
    unit,
  });
  const skirt = job.measurements.findLast((m) => m.measure === skirtMeasure && m.value.kind === 'length');
  if (!answer.choice || !skirt) return { answer };
  const { finished, oversize } = answer.choice;
  const clearance = finished - to(quantityOf(skirt.value), unit) - oversize;
  return {
    answer,
    clearance: { quantity: amountOf(clearance, unit), limit: skirtLimit({ job, catalog }, unit) },
  };
}

function skirtLimit({ job, catalog }: Sized, unit: string): FigureLimit {
  const line = lengthLine(job, measurementAs(catalog, 'piston-clearance')?.spec);
  if (!line?.upTo) return classBound(classFigures.pistonClearance, unit);
  return {
    min: to(quantityOf(line.value), unit),
    max: to(quantityOf(line.upTo), unit),
    origin: originOf(line),
    ofClass: false,
  };
}
