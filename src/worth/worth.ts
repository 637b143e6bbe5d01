import type { Architecture, Catalog, Facts } from '../catalog/index.js';
import type { Inference } from '../infer/index.js';
import { drawStates, seeded } from '../infer/index.js';
import { type Bill, billFor, nothingKnown, type PartsKnown } from './bill.js';
import { type Drawn, type DrawnMachine, drawCosts, type Taken } from './draw.js';
import { medianBounds, quantile, type Spread, spreadOf } from './spread.js';
import { type Standing, standingOf } from './standing.js';
import { type Ending, type Stop, stopPoint } from './stop.js';

export interface WorthAsked {
  readonly catalog: Catalog;
  readonly architecture: Architecture;
  readonly facts: Facts;
  readonly inference: Inference;
  /** fault of the network → fault of the catalog that stands in the machine now; by id when left out */
  readonly standing?: ReadonlyMap<string, string>;
  /** service that the owner wants done, by its fault */
  readonly chosenService?: ReadonlySet<string>;
  /** components that are off already */
  readonly off?: ReadonlySet<string>;
  readonly parts?: PartsKnown;
  /** of every amount; prices in another one are left out and named in `unpriced`; $ when left out */
  readonly currency?: string;
  /** the shop's rate, or what an hour is worth to the hobbyist */
  readonly ratePerHour?: number;
  /** of the machine when it runs */
  readonly value?: number;
  /** the owner's: "call above" */
  readonly limit?: number;
  readonly seed: number;
  /** how many machines are drawn */
  readonly draws?: number;
}

/** One repair of those that are quoted, with what it takes of the whole. */
export interface Driver {
  readonly fault: string;
  /** part of the mean cost, 0 to 1; all drivers together make 1 */
  readonly share: number;
  /** its part of the mean cost, in money; in minutes where no rate is known */
  readonly cost: number;
  /** probability that it is present */
  readonly present: number;
  /** the repair itself, and its part of laying open and closing up, minutes on average */
  readonly minutes: { readonly own: number; readonly reach: number };
  /** pieces that come off for it, in their order, and are not off yet */
  readonly pieces: readonly string[];
  /** parts by their price entry, with what they cost on average; shared ones in part */
  readonly parts: readonly { readonly id: string; readonly cost: number }[];
}

/** What may still turn up: faults that matter and of which nothing was seen yet. */
export interface Rest {
  /** that at least one of them is there and costs something more */
  readonly chance: number;
  /** the likeliest of them */
  readonly most: readonly { readonly fault: string; readonly present: number }[];
  /** what it adds where it does */
  readonly minutes?: Spread;
  readonly cost?: Spread;
}

/** What one would do anyway, if the owner wants it. */
export interface Service {
  readonly fault: string;
  /** probability that it is needed */
  readonly present: number;
  readonly minutes: number;
  readonly parts: number;
  /** both in money, with a rate */
  readonly cost?: number;
}

export type WorthLacks = 'rate' | 'value';

/** What making the machine right costs from here on. What was spent so far plays no part in it. */
export interface Worth {
  /**
   * what was found, decided or is likely, over machines that can be made right, money; undefined without a rate, or when
   * it is scrap for certain
   */
  readonly cost?: Spread;
  /** the same, at the bench */
  readonly minutes?: Spread;
  /** the same, for parts alone */
  readonly parts?: Spread;
  /** the repairs in it, the dearest first */
  readonly drivers: readonly Driver[];
  readonly rest: Rest;
  /** not counted in any figure; what the owner wants of it stands among the drivers */
  readonly service: readonly Service[];
  /** cost with what may still turn up: what every figure below stands on */
  readonly withRest?: Spread;
  readonly scrap: {
    readonly chance: number;
    /** minutes at the bench until it is found, on average; 0 when it never is */
    readonly minutesUntilFound: number;
    /** which fault makes it scrap, the likeliest first */
    readonly by: readonly { readonly fault: string; readonly chance: number }[];
  };
  /** chance that it can be made right for less than it is worth */
  readonly chanceBelowValue?: number;
  /** chance that it can be made right within the owner's limit */
  readonly chanceWithinLimit?: number;
  readonly stop?: Stop;
  /**
   * Twenty machines like this one: the cost of each that can be made right, cheapest first; those that are missing
   * from twenty end as scrap.
   */
  readonly ofTwenty: readonly number[];
  readonly lacks: readonly WorthLacks[];
  /** part words without a price; they count as nothing */
  readonly unpriced: readonly string[];
  readonly drawn: {
    readonly machines: number;
    /** `independent`: the posterior was too wide to be exact, faults were drawn one by one from the middle of its bounds */
    readonly joint: 'exact' | 'independent';
    /** standard error of a chance of one half; of any other it is less */
    readonly chanceError: number;
    /** where the median of the cost lies, 95 times in 100 */
    readonly medianBetween?: readonly [number, number];
  };
}

/** Low and high: nine in ten lie between them. */
export interface Between {
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

export interface Estimate {
  readonly minutes: Between;
  readonly parts: Between;
  /** with a rate */
  readonly total?: Between;
}

/** The three figures a mechanic would say; all of them 0 where nothing can be made right. */
export function estimateOf({ minutes, parts, cost }: Worth): Estimate {
  const between = (s: Spread | undefined): Between => ({
    low: s?.p05 ?? 0,
    median: s?.p50 ?? 0,
    high: s?.p95 ?? 0,
  });
  return { minutes: between(minutes), parts: between(parts), ...(cost && { total: between(cost) }) };
}

export const usualDraws = 4000;

/**
 * What it takes to make a machine right: what was found or decided in full, what is likely by its chance, and beside
 * them, as one line, what may still turn up.
 *
 * Method: machines are drawn from the joint posterior, exactly (see `drawStates`): faults that exclude or bring about
 * each other do so here too. Each machine is billed: its faults' repairs, with what comes off for several taken
 * off once and a part that several need bought once; prices, pace and what proves to be scrap are drawn as well. What
 * is quoted and what may turn up is told apart by `standingOf`. Service that one would do anyway is in no figure unless
 * it is chosen.
 * Not in it: intake, diagnosis, run-up and hand-over, which cost the same whatever is found.
 *
 * Error: of a chance p, √(p(1 − p)/draws), at most 0.008 for 4000; of the median as said in `drawn`. Prices, pace and
 * scrap are trade judgement and weigh more than that. The same seed gives the same answer.
 */
export function worthIt(asked: WorthAsked): Worth {
  const standing = standingOf(
    asked.catalog,
    asked.inference,
    asked.standing,
    asked.chosenService ?? new Set(),
  );
  const counted = standing.filter(({ place }) => place !== 'service' && place !== 'aside');
  const bill = billOf(asked, counted);
  const rows = drawRows(asked.inference, asked.draws ?? usualDraws, seeded(asked.seed));
  const machines = rows.map((row) => drawnMachine(row, counted));
  const drawn = drawCosts(bill, machines, asked.seed + 1);
  return {
    ...quoteOf(asked, bill, drawn, counted),
    rest: { ...restOf(asked, drawn), most: likeliest(counted) },
    service: serviceOf(
      asked,
      standing.filter(({ place }) => place === 'service'),
    ),
    ...verdictOf(asked, bill, drawn),
  };
}

function drawnMachine(row: Uint8Array, counted: readonly Standing[]): DrawnMachine {
  const quoted: number[] = [];
  const whole: number[] = [];
  for (const [place, { at, place: stands, present }] of counted.entries()) {
    if (row[at] !== 1 && present < 1) continue;
    whole.push(place);
    if (stands !== 'open') quoted.push(place);
  }
  return { quoted, whole };
}

function billOf(asked: WorthAsked, counted: readonly Standing[]): Bill {
  const { catalog, architecture, facts, off = new Set(), parts = nothingKnown, currency = '$' } = asked;
  const said = new Set(asked.inference.network.known.filter((k) => k.present).map((k) => k.fault));
  const wanted = new Set(counted.filter((c) => said.has(c.id)).map((c) => c.fault.id));
  const ids = counted.map((c) => c.fault.id);
  return billFor({ catalog, architecture, facts, off, parts, currency, wanted }, ids);
}

function drawRows(inference: Inference, draws: number, next: () => number): Uint8Array[] {
  if (!(Number.isInteger(draws) && draws > 0))
    throw new RangeError(`draws: ${draws} is not a whole number above 0`);
  if (inference.kind === 'exact') return drawStates(inference.reasoner, draws, next);
  return Array.from({ length: draws }, () =>
    Uint8Array.from(inference.posterior, (p) => (next() < p ? 1 : 0)),
  );
}

const costOf = (minutes: number, parts: number, rate: number | undefined): number =>
  (minutes / 60) * (rate ?? 0) + parts;

/** Costs of the machines that are made right. */
function rightCosts(taken: Taken, rate: number | undefined): Float64Array {
  return taken.minutes
    .map((m, i) => costOf(m, taken.parts[i]!, rate))
    .filter((_, i) => taken.scrapBy[i]! < 0)
    .sort();
}

function quoteOf(asked: WorthAsked, bill: Bill, { quoted, shares }: Drawn, counted: readonly Standing[]) {
  const { ratePerHour } = asked;
  const right = (values: Float64Array): Float64Array => values.filter((_, i) => quoted.scrapBy[i]! < 0);
  const costs = rightCosts(quoted, ratePerHour);
  const minutes = spreadOf(right(quoted.minutes));
  const parts = spreadOf(right(quoted.parts));
  const cost = ratePerHour === undefined ? undefined : spreadOf(costs);
  return {
    ...(cost && { cost }),
    ...(minutes && { minutes }),
    ...(parts && { parts }),
    drivers: driversOf(bill, shares, counted, costs.length, ratePerHour),
    unpriced: bill.unpriced,
  };
}

function driversOf(
  bill: Bill,
  shares: Drawn['shares'],
  counted: readonly Standing[],
  right: number,
  ratePerHour: number | undefined,
): Driver[] {
  const drivers = shares.map(({ own, reach, parts }, f) => {
    const bought = [...parts].map(([p, money]) => ({ id: bill.parts[p]!.id, cost: money / right }));
    const minutes = { own: own / right, reach: reach / right };
    const dearness = bought.reduce((sum, p) => sum + p.cost, 0);
    const took = minutes.own + minutes.reach;
    return {
      fault: bill.faults[f]!.fault,
      cost: ratePerHour === undefined ? took : costOf(took, dearness, ratePerHour),
      present: counted[f]!.present,
      minutes,
      pieces: bill.faults[f]!.pieces.map((p) => bill.pieces[p]!)
        .filter((piece) => piece.minutesOff > 0)
        .map((piece) => piece.id),
      parts: bought.sort((a, b) => b.cost - a.cost),
    };
  });
  const all = drivers.reduce((sum, d) => sum + d.cost, 0);
  return drivers
    .filter((d) => d.cost > 0)
    .map((d) => ({ ...d, share: d.cost / all }))
    .sort((a, b) => b.cost - a.cost);
}

/** What the faults that nobody has looked for add, on machines that can be made right. */
function restOf({ ratePerHour }: WorthAsked, { count, quoted, whole }: Drawn): Omit<Rest, 'most'> {
  const minutes: number[] = [];
  const costs: number[] = [];
  for (let i = 0; i < count; i += 1) {
    if (whole.scrapBy[i]! >= 0) continue;
    const more = whole.minutes[i]! - quoted.minutes[i]!;
    const dearer = whole.parts[i]! - quoted.parts[i]!;
    if (more < 1e-9 && dearer < 1e-9) continue;
    minutes.push(more);
    costs.push(costOf(more, dearer, ratePerHour));
  }
  const spreads = { minutes: spreadOf(Float64Array.from(minutes)), cost: spreadOf(Float64Array.from(costs)) };
  return {
    chance: minutes.length / count,
    ...(spreads.minutes && { minutes: spreads.minutes }),
    ...(ratePerHour !== undefined && spreads.cost && { cost: spreads.cost }),
  };
}

const mostNamed = 3;

function likeliest(counted: readonly Standing[]): Rest['most'] {
  return counted
    .filter(({ place }) => place === 'open')
    .sort((a, b) => b.present - a.present)
    .slice(0, mostNamed)
    .map(({ fault, present }) => ({ fault: fault.id, present }));
}

/** Each by itself, at the middle of pace and price. */
function serviceOf(asked: WorthAsked, standing: readonly Standing[]): Service[] {
  return standing
    .map((one): Service => {
      const { faults, pieces, parts: lines, pace } = billOf(asked, [one]);
      const reach = pieces.reduce((sum, p) => sum + p.minutesOff + p.minutesBack, 0);
      const minutes = (faults[0]!.minutes + reach) * pace.likely;
      const named = faults[0]!.parts.map((p) => lines[p]!);
      const parts = named.reduce((sum, { from, to, bought }) => sum + bought * Math.sqrt(from * to), 0);
      const cost = asked.ratePerHour === undefined ? undefined : costOf(minutes, parts, asked.ratePerHour);
      return {
        fault: one.fault.id,
        present: one.present,
        minutes,
        parts,
        ...(cost !== undefined && { cost }),
      };
    })
    .sort((a, b) => b.present - a.present);
}

/** Everything that hangs on what may still turn up. */
function verdictOf(asked: WorthAsked, bill: Bill, { count, whole }: Drawn) {
  const { value, limit, ratePerHour } = asked;
  const rated = ratePerHour !== undefined;
  const right = rightCosts(whole, ratePerHour);
  const below = (most: number): number => right.filter((c) => c <= most).length / count;
  const endings = Array.from(
    whole.minutes,
    (minutes, i): Ending => ({
      cost: costOf(minutes, whole.parts[i]!, ratePerHour),
      scrap: whole.scrapBy[i]! >= 0,
    }),
  );
  const stop = rated ? stopPoint(endings, value, limit) : undefined;
  const withRest = rated ? spreadOf(right) : undefined;
  const lacks: WorthLacks[] = [
    ...(rated ? [] : ['rate' as const]),
    ...(value === undefined ? ['value' as const] : []),
  ];
  return {
    ...(withRest && { withRest }),
    scrap: scrapOf(bill, whole),
    ...(rated && value !== undefined && { chanceBelowValue: below(value) }),
    ...(rated && limit !== undefined && { chanceWithinLimit: below(limit) }),
    ...(stop && { stop }),
    ofTwenty: rated ? twenty(right, count) : [],
    lacks,
    drawn: {
      machines: count,
      joint: asked.inference.kind === 'exact' ? ('exact' as const) : ('independent' as const),
      chanceError: 0.5 / Math.sqrt(count),
      ...(withRest && { medianBetween: medianBounds(right) }),
    },
  };
}

function scrapOf(bill: Bill, { scrapBy, minutes }: Taken): Worth['scrap'] {
  const counts = new Map<number, number>();
  let untilFound = 0;
  let scrapped = 0;
  for (const [i, by] of scrapBy.entries()) {
    if (by < 0) continue;
    scrapped += 1;
    untilFound += minutes[i]!;
    counts.set(by, (counts.get(by) ?? 0) + 1);
  }
  const by = [...counts].map(([f, n]) => ({ fault: bill.faults[f]!.fault, chance: n / scrapBy.length }));
  return {
    chance: scrapped / scrapBy.length,
    minutesUntilFound: scrapped === 0 ? 0 : untilFound / scrapped,
    by: by.sort((a, b) => b.chance - a.chance),
  };
}

/** Of twenty machines as many as can be made right, each at the middle of its twentieth (a quantile dot plot). */
function twenty(right: Float64Array, count: number): number[] {
  const dots = Math.round((20 * right.length) / count);
  return Array.from({ length: dots }, (_, i) => quantile(right, (i + 0.5) / dots));
}
