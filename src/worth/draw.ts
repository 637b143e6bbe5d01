import { seeded } from '../infer/index.js';
import type { Bill, FaultLine } from './bill.js';
import { betweenByRatio, triangular } from './inverse.js';

/** What each drawn machine takes. */
export interface Taken {
  /** to make it right; for scrap, until it is found to be so */
  readonly minutes: Float64Array;
  readonly parts: Float64Array;
  /** place in the bill of the fault that makes it scrap, or -1 */
  readonly scrapBy: Int32Array;
}

export interface Drawn {
  readonly count: number;
  /** for the faults that are quoted */
  readonly quoted: Taken;
  /** for those and the ones that nobody has looked for */
  readonly whole: Taken;
  /** by fault of the bill, summed over machines whose quoted faults are made right */
  readonly shares: readonly Share[];
}

/** What one fault takes of the minutes and the parts that are quoted. */
export interface Share {
  /** the repair itself */
  own: number;
  /** its part of laying open and closing up */
  reach: number;
  /** place in the bill's parts → its part of the money */
  readonly parts: Map<number, number>;
}

/** The faults of one machine, as places in the bill. */
export interface DrawnMachine {
  readonly quoted: readonly number[];
  readonly whole: readonly number[];
}

/**
 * What drawn machines take. For one machine: the pieces that stand in the way of any fault to be mended come off once, a
 * part that several need is bought once and what a set holds not beside it, of repairs that are one piece of work the
 * longest counts in full and of one and the same act only that, a new piece spares the work on the old one, and what
 * hardly matters is mended only where the engine is open anyway. One factor of pace holds for the whole job, and each
 * fault to be mended that may be past saving is found so or not.
 *
 * Quoted and whole are the same machine on the same day: pace, prices and what proves to be scrap are drawn once, so
 * that their difference is what the faults nobody has looked for add.
 *
 * Scrap: the machine is taken apart as far as the nearest such fault, and nothing else is done to it. That is the
 * least that finding it can cost; faults repaired before it is found add to it.
 *
 * A piece or part that n faults need counts a nth for each. That is the Shapley value: the mean, over all orders in
 * which the faults might be met, of what a fault adds. Minutes of one piece of work are shared in proportion.
 */
export function drawCosts(bill: Bill, machines: readonly DrawnMachine[], seed: number): Drawn {
  const { length: count } = machines;
  const quoted = nothingTaken(count);
  const whole = nothingTaken(count);
  const shares = bill.faults.map((): Share => ({ own: 0, reach: 0, parts: new Map() }));
  const bench = new Bench(bill, seeded(seed));
  for (const [i, machine] of machines.entries()) {
    bench.roll();
    bench.take(machine.quoted, quoted, i);
    if (quoted.scrapBy[i]! < 0) bench.shareOut(shares);
    if (machine.whole.length === machine.quoted.length) copy(quoted, whole, i);
    else bench.take(machine.whole, whole, i);
  }
  return { count, quoted, whole, shares };
}

const nothingTaken = (count: number): Taken => ({
  minutes: new Float64Array(count),
  parts: new Float64Array(count),
  scrapBy: new Int32Array(count).fill(-1),
});

function copy(from: Taken, to: Taken, i: number): void {
  to.minutes[i] = from.minutes[i]!;
  to.parts[i] = from.parts[i]!;
  to.scrapBy[i] = from.scrapBy[i]!;
}

/** Works through one machine after another; the sums of the last one are written over. */
class Bench {
  private mended: readonly number[] = [];
  private readonly pieceNeeds: Int32Array;
  private readonly partNeeds: Int32Array;
  private readonly partNamed: Uint8Array;
  private readonly pieceCost: Float64Array;
  private readonly partCost: Float64Array;
  private readonly repair: Float64Array;
  private readonly sharedSum: Float64Array;
  private readonly sharedLongest: Float64Array;
  private readonly actSum: Float64Array;
  private readonly actLongest: Float64Array;
  private readonly spared: Uint8Array;
  /** places of parts, those before the ones that they may hold */
  private readonly setsFirst: readonly number[];
  /** by fault: the parts it names, and those that go with the pieces it needs off */
  private readonly partsTouched: readonly Int32Array[];
  /** by fault: only those that go with the pieces */
  private readonly partsOfPieces: readonly Int32Array[];
  /** by fault: minutes to lay it open */
  private readonly reach: Float64Array;
  /** what chance has in store for the machine at hand */
  private pace = 1;
  private readonly pastSaving: Float64Array;
  private readonly length: Float64Array;
  private readonly isBought: Float64Array;
  private readonly price: Float64Array;

  constructor(
    private readonly bill: Bill,
    private readonly next: () => number,
  ) {
    const { faults, pieces, parts, shared } = bill;
    this.pieceNeeds = new Int32Array(pieces.length);
    this.pieceCost = new Float64Array(pieces.length);
    this.partNeeds = new Int32Array(parts.length);
    this.partNamed = new Uint8Array(parts.length);
    this.partCost = new Float64Array(parts.length);
    this.spared = new Uint8Array(faults.length);
    this.actSum = new Float64Array(shared.length);
    this.actLongest = new Float64Array(shared.length);
    this.setsFirst = parts.map((_, p) => p).sort((a, b) => parts[a]!.heldBy.length - parts[b]!.heldBy.length);
    this.repair = new Float64Array(faults.length);
    this.sharedSum = new Float64Array(shared.length);
    this.sharedLongest = new Float64Array(shared.length);
    this.partsTouched = faults.map((f) => Int32Array.from(touched(bill, f)));
    this.partsOfPieces = faults.map((f) => Int32Array.from(touched(bill, { ...f, parts: [] })));
    this.reach = Float64Array.from(faults, (f) =>
      f.pieces.reduce((sum, p) => sum + pieces[p]!.minutesOff, 0),
    );
    this.pastSaving = new Float64Array(faults.length);
    this.length = new Float64Array(faults.length);
    this.isBought = new Float64Array(parts.length);
    this.price = new Float64Array(parts.length);
  }

  /** The next machine: what chance has in store for it, whatever is mended on it. */
  roll(): void {
    const { from, likely, to } = this.bill.pace;
    this.pace = triangular(from, likely, to, this.next());
    for (const chances of [this.pastSaving, this.length, this.isBought, this.price])
      for (let i = 0; i < chances.length; i += 1) chances[i] = this.next();
  }

  take(present: readonly number[], into: Taken, i: number): void {
    this.mended = this.mendedOf(present);
    const scrap = this.nearestScrap();
    if (scrap >= 0) {
      into.scrapBy[i] = scrap;
      into.minutes[i] = this.reach[scrap]! * this.pace;
      return;
    }
    into.minutes[i] = this.takeApart() + this.mend();
    into.parts[i] = this.buy();
  }

  private nearestScrap(): number {
    let nearest = -1;
    for (const f of this.mended) {
      if (this.pastSaving[f]! >= this.bill.faults[f]!.scrap) continue;
      if (nearest < 0 || this.reach[f]! < this.reach[nearest]!) nearest = f;
    }
    return nearest;
  }

  /** What is mended, its needs counted: faults far in that hardly matter only where their pieces are off anyway. */
  private mendedOf(present: readonly number[]): readonly number[] {
    const { faults, pieces } = this.bill;
    const sure = present.filter((f) => !faults[f]!.onlyIfOpen);
    this.countNeeds(sure, present);
    const open = (p: number): boolean => this.pieceNeeds[p]! > 0 || pieces[p]!.minutesOff === 0;
    const along = present.filter((f) => faults[f]!.onlyIfOpen && faults[f]!.pieces.every(open));
    if (along.length === 0) return sure;
    const all = [...sure, ...along];
    this.countNeeds(all, present);
    return all;
  }

  private partsFor(f: number): Int32Array {
    return (this.spared[f] === 1 ? this.partsOfPieces : this.partsTouched)[f]!;
  }

  /** Whether a new piece makes its repair needless. */
  private isSpared(f: number, present: readonly number[]): boolean {
    return this.bill.faults[f]!.sparedBy.some((by) => present.includes(by));
  }

  private countNeeds(mended: readonly number[], present: readonly number[]): void {
    this.pieceNeeds.fill(0);
    this.partNeeds.fill(0);
    this.partNamed.fill(0);
    this.spared.fill(0);
    for (const f of mended) {
      this.spared[f] = this.isSpared(f, present) ? 1 : 0;
      for (const p of this.bill.faults[f]!.pieces) this.pieceNeeds[p]! += 1;
      for (const p of this.partsFor(f)) this.partNeeds[p]! += 1;
      if (this.spared[f] === 1) continue;
      for (const p of this.bill.faults[f]!.parts) this.partNamed[p] = 1;
    }
  }

  private takeApart(): number {
    let sum = 0;
    for (let p = 0; p < this.pieceNeeds.length; p += 1) {
      if (this.pieceNeeds[p] === 0) continue;
      const { minutesOff, minutesBack } = this.bill.pieces[p]!;
      this.pieceCost[p] = (minutesOff + minutesBack) * this.pace;
      sum += this.pieceCost[p]!;
    }
    return sum;
  }

  /** The repairs themselves, into `repair`. */
  private mend(): number {
    this.sharedSum.fill(0);
    this.sharedLongest.fill(0);
    this.actSum.fill(0);
    this.actLongest.fill(0);
    for (const f of this.mended) {
      const { minutes, minutesTo, shared, sameAct } = this.bill.faults[f]!;
      const alone = minutes + (minutesTo - minutes) * this.length[f]!;
      this.repair[f] = this.spared[f] === 1 ? 0 : alone * this.pace;
      if (shared < 0) continue;
      this.sharedSum[shared]! += this.repair[f]!;
      if (sameAct) {
        this.actSum[shared]! += this.repair[f]!;
        this.actLongest[shared] = Math.max(this.actLongest[shared]!, this.repair[f]!);
      }
      this.sharedLongest[shared] = Math.max(this.sharedLongest[shared]!, this.repair[f]!);
    }
    let sum = 0;
    for (const f of this.mended) {
      const { shared } = this.bill.faults[f]!;
      if (shared >= 0) this.repair[f]! *= this.togetherPart(shared);
      sum += this.repair[f]!;
    }
    return sum;
  }

  /** What several repairs take together, over what they would take one by one. */
  private togetherPart(shared: number): number {
    const sum = this.sharedSum[shared]!;
    const longest = this.sharedLongest[shared]!;
    // of one act only the longest is work
    const worked = sum - this.actSum[shared]! + this.actLongest[shared]!;
    return sum === 0 ? 1 : (longest + (worked - longest) * this.bill.shared[shared]!) / sum;
  }

  private buy(): number {
    this.partCost.fill(0);
    let sum = 0;
    for (const p of this.setsFirst) {
      if (this.partNeeds[p] === 0) continue;
      const { from, to, bought, renewed, heldBy } = this.bill.parts[p]!;
      if (heldBy.some((set) => this.partCost[set]! > 0)) continue;
      const chance = this.partNamed[p] === 1 ? bought : renewed;
      const cost = this.isBought[p]! < chance ? betweenByRatio(from, to, this.price[p]!) : 0;
      this.partCost[p] = cost;
      sum += cost;
    }
    return sum;
  }

  /** Adds what each fault of the machine last taken takes of it. */
  shareOut(shares: readonly Share[]): void {
    for (const f of this.mended) {
      const share = shares[f]!;
      share.own += this.repair[f]!;
      for (const p of this.bill.faults[f]!.pieces) share.reach += this.pieceCost[p]! / this.pieceNeeds[p]!;
      for (const p of this.partsFor(f)) {
        if (this.partCost[p] === 0) continue;
        share.parts.set(p, (share.parts.get(p) ?? 0) + this.partCost[p]! / this.partNeeds[p]!);
      }
    }
  }
}

const touched = (bill: Bill, { parts, pieces }: FaultLine): Set<number> =>
  new Set([...parts, ...pieces.flatMap((p) => bill.pieces[p]!.oneTime)]);
