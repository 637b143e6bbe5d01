import {
  type Architecture,
  byId,
  type Catalog,
  type Component,
  type Facts,
  type Fault,
  judgementOf,
  type Price,
} from '../catalog/index.js';
import { matters } from '../diagnose/index.js';
import { componentsToReach } from './access.js';

/** What is bought, or was; a part at hand costs nothing more. */
export interface PartsKnown {
  /** ids of price entries that lie here or are on their way */
  readonly atHand: ReadonlySet<string>;
  /** price entry id → what it costs here */
  readonly quoted: ReadonlyMap<string, number>;
}

export const nothingKnown: PartsKnown = { atHand: new Set(), quoted: new Map() };

/** A part as it may be bought. */
export interface PartLine {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  /** chance that a repair that names it needs it */
  readonly bought: number;
  /** chance that it is renewed because its component is off */
  readonly renewed: number;
  /** places in `parts` of sets that hold it */
  readonly heldBy: readonly number[];
}

export interface PieceLine {
  readonly id: string;
  /** 0 when it is off already */
  readonly minutesOff: number;
  readonly minutesBack: number;
  /** places in `parts` */
  readonly oneTime: readonly number[];
}

export interface FaultLine {
  readonly fault: string;
  readonly minutes: number;
  readonly minutesTo: number;
  /** places in `pieces` */
  readonly pieces: readonly number[];
  /** places in `parts` */
  readonly parts: readonly number[];
  readonly scrap: number;
  /** place in `shared`, or -1 */
  readonly shared: number;
  /** one and the same act mends it and the others of its shared work that say so */
  readonly sameAct: boolean;
  /** places in `faults`: where one of them stands a new piece makes this repair needless */
  readonly sparedBy: readonly number[];
  /** not worth opening the engine for: mended where its pieces are off anyway, else left alone */
  readonly onlyIfOpen: boolean;
}

/** All faults' repairs laid out: what each takes, with what they share named once. */
export interface Bill {
  readonly faults: readonly FaultLine[];
  readonly pieces: readonly PieceLine[];
  readonly parts: readonly PartLine[];
  /** by repairs that are one piece of work: the part of its minutes that each but the longest takes */
  readonly shared: readonly number[];
  readonly pace: { readonly from: number; readonly likely: number; readonly to: number };
  /** part words that have no price: they count as nothing, and are shown */
  readonly unpriced: readonly string[];
}

export interface BillAsked {
  readonly catalog: Catalog;
  readonly architecture: Architecture;
  readonly facts: Facts;
  /** components that are off already: taking them off is paid, putting them back is not */
  readonly off: ReadonlySet<string>;
  readonly parts: PartsKnown;
  /** prices in another currency are no prices */
  readonly currency: string;
  /** faults that were found and are to be mended, however far in they sit */
  readonly wanted?: ReadonlySet<string>;
}

export function billFor(asked: BillAsked, faultIds: readonly string[]): Bill {
  const { catalog, architecture } = asked;
  const parts = new PartList(asked);
  const pieces = new PieceList(asked, parts);
  const scrap = scrapChances(catalog);
  const known = byId(catalog.faults);
  const faults = faultIds.map((id): FaultLine => {
    const fault = known.get(id);
    if (!fault) throw new RangeError(`no fault "${id}" in the catalog`);
    const minutes = fault.repairMinutesOn?.[architecture] ?? fault.repairMinutes;
    return {
      fault: id,
      minutes,
      minutesTo: Math.max(minutes, fault.repairMinutesTo ?? minutes),
      pieces: pieces.placesFor(fault),
      parts: parts.places(fault.parts),
      scrap: scrap.get(id) ?? 0,
      ...sharing(catalog, id, faultIds),
      onlyIfOpen: !asked.wanted?.has(id) && isLeftAlone(asked, fault),
    };
  });
  return {
    faults,
    pieces: pieces.lines,
    parts: parts.withSets(),
    shared: catalog.sharedRepairs.map((s) => s.restPer100 / 100),
    pace: pace(catalog) ?? { from: 1, likely: 1, to: 1 },
    unpriced: [...parts.unpriced].sort(),
  };
}

/** What a fault's repair has in common with others. */
function sharing(catalog: Catalog, id: string, faultIds: readonly string[]) {
  const shared = catalog.sharedRepairs.findIndex((s) => s.faults.includes(id));
  const { sameAct, renewed } = catalog.sharedRepairs[shared] ?? {};
  const by = renewed?.spares.includes(id) ? renewed.by : [];
  return {
    shared,
    sameAct: sameAct?.includes(id) ?? false,
    sparedBy: faultIds.flatMap((other, place) => (by.includes(other) ? [place] : [])),
  };
}

/** Whether nobody opens an engine for it: it is no danger, hardly keeps it from running, and sits far in. */
function isLeftAlone({ catalog, architecture, facts }: BillAsked, fault: Fault): boolean {
  const { presentPer100, mainCausePer100HardStarts: cause } = fault;
  const hardly = cause < judgementOf(catalog, 'left-alone-below') * presentPer100;
  if (matters(catalog, fault) || !hardly) return false;
  const reach = componentsToReach(catalog, architecture, facts, fault);
  const minutes = reach.reduce((sum, c) => sum + c.minutesOff, 0);
  return minutes > judgementOf(catalog, 'left-alone-from-minutes');
}

const pace = (catalog: Catalog) => catalog.workFactors.find((f) => f.id === 'pace');

/** Several entries for one fault stand for different ways to scrap: it is sound when none of them is so. */
function scrapChances(catalog: Catalog): Map<string, number> {
  const chances = new Map<string, number>();
  for (const { fault, per100 } of catalog.scrapChances) {
    chances.set(fault, 1 - (1 - (chances.get(fault) ?? 0)) * (1 - per100 / 100));
  }
  return chances;
}

class PartList {
  readonly lines: PartLine[] = [];
  readonly unpriced = new Set<string>();
  private readonly placeOf = new Map<string, number>();
  private readonly priceOf: ReadonlyMap<string, Price>;

  private readonly known: PartsKnown;
  private readonly architecture: Architecture;
  private readonly holds: ReadonlyMap<string, readonly string[]>;

  constructor({ catalog, parts, currency, architecture }: BillAsked) {
    this.known = parts;
    this.architecture = architecture;
    const prices = catalog.prices.filter((p) => p.currency === currency || parts.quoted.has(p.id));
    this.holds = new Map(prices.map((p) => [p.id, p.holds ?? []]));
    this.priceOf = new Map(prices.flatMap((p) => p.names.map((name) => [name, p])));
  }

  /** A set counts only where a repair names it; what it holds is known once every line is there. */
  withSets(): PartLine[] {
    return this.lines.map((line) => ({
      ...line,
      heldBy: this.lines.flatMap((set, place) => (this.holds.get(set.id)?.includes(line.id) ? [place] : [])),
    }));
  }

  /** Each kind once, however many words name it. */
  places(words: readonly string[]): number[] {
    return [...new Set(words.flatMap((word) => this.place(word)))];
  }

  private place(word: string): number[] {
    const price = this.priceOf.get(word);
    if (!price) this.unpriced.add(word);
    if (!price || this.known.atHand.has(price.id)) return [];
    const place = this.placeOf.get(price.id) ?? this.lines.push(this.line(price)) - 1;
    this.placeOf.set(price.id, place);
    return [place];
  }

  private line(price: Price): PartLine {
    const { id, from, to, boughtPer100, renewedPer100 } = { ...price, ...price.on?.[this.architecture] };
    const quoted = this.known.quoted.get(id);
    const span = quoted === undefined ? { from, to } : { from: quoted, to: quoted };
    return {
      id,
      ...span,
      bought: (boughtPer100 ?? 100) / 100,
      renewed: (renewedPer100 ?? 100) / 100,
      heldBy: [],
    };
  }
}

class PieceList {
  readonly lines: PieceLine[] = [];
  private readonly placeOf = new Map<string, number>();

  constructor(
    private readonly asked: BillAsked,
    private readonly parts: PartList,
  ) {}

  placesFor(fault: Fault): number[] {
    const { catalog, architecture, facts } = this.asked;
    return componentsToReach(catalog, architecture, facts, fault).map((component) => this.place(component));
  }

  private place(component: Component): number {
    const place = this.placeOf.get(component.id) ?? this.lines.push(this.line(component)) - 1;
    this.placeOf.set(component.id, place);
    return place;
  }

  private line({ id, minutesOff, oneTimeParts }: Component): PieceLine {
    return {
      id,
      minutesOff: this.asked.off.has(id) ? 0 : minutesOff,
      // what takes longer on the way back (facing, setting, torque in passes) stands in the repair's own minutes
      minutesBack: minutesOff,
      oneTime: this.parts.places(oneTimeParts),
    };
  }
}
