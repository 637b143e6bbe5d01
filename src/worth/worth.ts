import type { Architecture, Catalog, Facts } from '../catalog/index.js';
import type { Inference } from '../infer/index.js';
import { drawStates, seeded } from '../infer/index.js';
import { type Bill, billFor, nothingKnown, type PartsKnown } from './bill.js';
import { type Drawn, drawCosts } from './draw.js';
import { medianBounds, quantile, type Spread, spreadOf } from './spread.js';
import { type Ending, type Stop, stopPoint } from './stop.js';

export interface WorthAsked {
  readonly catalog: Catalog;
  readonly architecture: Architecture;
  readonly facts: Facts;
  readonly inference: Inference;
  /** fault of the network → fault of the catalog that stands in the machine now; by id when left out */
  readonly standing?: ReadonlyMap<string, string>;
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

export interface Driver {
  readonly fault: string;
  /** part of the mean cost, 0 to 1; all drivers together make 1 */
  readonly share: number;
  /** its part of the mean cost, in money; in minutes where no rate is known */
  readonly cost: number;
  /** probability that it is present */
  readonly present: number;
}

export type WorthLacks = 'rate' | 'value';

/** What making the machine right costs from here on. What was spent so far plays no part in it. */
export interface Worth {
  /** over machines that can be made right, money; undefined without a rate, or when it is scrap for certain */
  readonly cost?: Spread;
  /** the same, at the bench */
  readonly minutes?: Spread;
  /** the same, for parts alone */
  readonly parts?: Spread;
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
  /** faults by their part in the cost, the dearest first */
  readonly drivers: readonly Driver[];
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

export const usualDraws = 4000;

/**
 * What it costs to make a machine right, as a spread over all combinations of faults that it may have.
 *
 * Method: machines are drawn from the joint posterior, exactly (see `drawStates`): faults that exclude or bring about
 * each other do so here too. Each machine is billed: all its faults' repairs, with what comes off for several taken
 * off once and a part that several need bought once; prices, pace and what proves to be scrap are drawn as well.
 * Not in it: intake, diagnosis, run-up and hand-over, which cost the same whatever is found.
 *
 * Error: of a chance p, √(p(1 − p)/draws), at most 0.008 for 4000; of the median as said in `drawn`. Prices, pace and
 * scrap are trade judgement and weigh more than that. The same seed gives the same answer.
 */
export function worthIt(asked: WorthAsked): Worth {
  const next = seeded(asked.seed);
  const nodes = standingNodes(asked);
  const bill = billOf(
    asked,
    nodes.map((n) => n.fault),
  );
  const rows = drawRows(asked.inference, asked.draws ?? usualDraws, next);
  const drawn = drawCosts(
    bill,
    rows.map((row) => placesPresent(row, nodes)),
    next,
  );
  const present = nodes.map((n) => asked.inference.posterior[n.place]!);
  return answer(asked, bill, drawn, present);
}

interface Node {
  readonly place: number;
  readonly fault: string;
}

function standingNodes({ inference, standing }: WorthAsked): Node[] {
  return inference.faults.flatMap((id, place) => {
    const fault = standing ? standing.get(id) : id;
    return fault === undefined ? [] : [{ place, fault }];
  });
}

function placesPresent(row: Uint8Array, nodes: readonly Node[]): number[] {
  const present: number[] = [];
  for (let n = 0; n < nodes.length; n += 1) if (row[nodes[n]!.place] === 1) present.push(n);
  return present;
}

function billOf(asked: WorthAsked, faults: readonly string[]): Bill {
  const { catalog, architecture, facts, off = new Set(), parts = nothingKnown, currency = '$' } = asked;
  return billFor({ catalog, architecture, facts, off, parts, currency, wanted: foundIn(asked) }, faults);
}

/** Faults that someone has seen and not taken back. */
function foundIn({ inference, standing }: WorthAsked): ReadonlySet<string> {
  const found = inference.network.known.filter((k) => k.present);
  return new Set(found.map((k) => (standing ? standing.get(k.fault) : k.fault) ?? k.fault));
}

function drawRows(inference: Inference, draws: number, next: () => number): Uint8Array[] {
  if (!(Number.isInteger(draws) && draws > 0))
    throw new RangeError(`draws: ${draws} is not a whole number above 0`);
  if (inference.kind === 'exact') return drawStates(inference.reasoner, draws, next);
  return Array.from({ length: draws }, () =>
    Uint8Array.from(inference.posterior, (p) => (next() < p ? 1 : 0)),
  );
}

function answer(asked: WorthAsked, bill: Bill, drawn: Drawn, present: readonly number[]): Worth {
  const { value, limit, ratePerHour } = asked;
  const costs = drawn.minutes.map((m, i) => (m / 60) * (ratePerHour ?? 0) + drawn.parts[i]!);
  const right = (values: Float64Array): Float64Array => values.filter((_, i) => drawn.scrapBy[i]! < 0);
  const rightCosts = right(costs).sort();
  const endings = Array.from(costs, (cost, i): Ending => ({ cost, scrap: drawn.scrapBy[i]! >= 0 }));
  const below = (most: number): number => rightCosts.filter((c) => c <= most).length / drawn.count;
  const rated = ratePerHour !== undefined;
  const stop = rated ? stopPoint(endings, value, limit) : undefined;
  const spreads = { minutes: spreadOf(right(drawn.minutes)), parts: spreadOf(right(drawn.parts)) };
  const cost = rated ? spreadOf(rightCosts) : undefined;
  return {
    ...(cost && { cost }),
    ...(spreads.minutes && { minutes: spreads.minutes }),
    ...(spreads.parts && { parts: spreads.parts }),
    scrap: scrapOf(bill, drawn),
    ...(rated && value !== undefined && { chanceBelowValue: below(value) }),
    ...(rated && limit !== undefined && { chanceWithinLimit: below(limit) }),
    ...(stop && { stop }),
    drivers: driversOf(bill, drawn, present, ratePerHour),
    ofTwenty: rated ? twenty(rightCosts, drawn.count) : [],
    lacks: [...(rated ? [] : ['rate' as const]), ...(value === undefined ? ['value' as const] : [])],
    unpriced: bill.unpriced,
    drawn: {
      machines: drawn.count,
      joint: asked.inference.kind === 'exact' ? 'exact' : 'independent',
      chanceError: 0.5 / Math.sqrt(drawn.count),
      ...(cost && { medianBetween: medianBounds(rightCosts) }),
    },
  };
}

function scrapOf(bill: Bill, drawn: Drawn): Worth['scrap'] {
  const counts = new Map<number, number>();
  let minutes = 0;
  let scrapped = 0;
  for (const [i, by] of drawn.scrapBy.entries()) {
    if (by < 0) continue;
    scrapped += 1;
    minutes += drawn.minutes[i]!;
    counts.set(by, (counts.get(by) ?? 0) + 1);
  }
  const by = [...counts].map(([f, n]) => ({ fault: bill.faults[f]!.fault, chance: n / drawn.count }));
  return {
    chance: scrapped / drawn.count,
    minutesUntilFound: scrapped === 0 ? 0 : minutes / scrapped,
    by: by.sort((a, b) => b.chance - a.chance),
  };
}

function driversOf(
  bill: Bill,
  drawn: Drawn,
  present: readonly number[],
  ratePerHour: number | undefined,
): Driver[] {
  const right = drawn.scrapBy.filter((by) => by < 0).length;
  const costs = bill.faults.map((_, f) => {
    const minutes = drawn.minutesOf[f]!;
    return ratePerHour === undefined ? minutes : (minutes / 60) * ratePerHour + drawn.partsOf[f]!;
  });
  const all = costs.reduce((a, b) => a + b, 0);
  if (all === 0) return [];
  return bill.faults
    .map(({ fault }, f) => ({
      fault,
      share: costs[f]! / all,
      cost: costs[f]! / right,
      present: present[f]!,
    }))
    .filter((d) => d.share > 0)
    .sort((a, b) => b.share - a.share);
}

/** Of twenty machines as many as can be made right, each at the middle of its twentieth (a quantile dot plot). */
function twenty(rightCosts: Float64Array, count: number): number[] {
  const dots = Math.round((20 * rightCosts.length) / count);
  return Array.from({ length: dots }, (_, i) => quantile(rightCosts, (i + 0.5) / dots));
}
