import type { Bill, FaultLine } from './bill.js';
import { betweenByRatio, triangular } from './inverse.js';

/** What each drawn machine takes. */
export interface Drawn {
  readonly count: number;
  /** to make it right; for scrap, until it is found to be so */
  readonly minutes: Float64Array;
  readonly parts: Float64Array;
  /** place in the bill of the fault that makes it scrap, or -1 */
  readonly scrapBy: Int32Array;
  /** by fault of the bill, summed over machines that are made right: its part of minutes and of money for parts */
  readonly minutesOf: Float64Array;
  readonly partsOf: Float64Array;
}

/**
 * What drawn machines take. For one machine: the pieces that stand in the way of any fault to be mended come off once, a
 * part that several need is bought once and what a set holds not beside it, of repairs that are one piece of work the
 * longest counts in full and of one and the same act only that, a new piece spares the work on the old one, and what
 * hardly matters is mended only where the engine is open anyway. One factor of pace holds for the whole job, and each
 * fault to be mended that may be past saving is found so or not.
 *
 * Scrap: the machine is taken apart as far as the nearest such fault, and nothing else is done to it. That is the
 * least that finding it can cost; faults repaired before it is found add to it.
 *
 * A piece or part that n faults need counts a nth for each. That is the Shapley value: the mean, over all orders in
 * which the faults might be met, of what a fault adds. Minutes of one piece of work are shared in proportion.
 * @param present by machine: the places in the bill of the faults that it has
 */
export function drawCosts(bill: Bill, present: readonly (readonly number[])[], next: () => number): Drawn {
  const { length: count } = present;
  const drawn: Drawn = {
    count,
    minutes: new Float64Array(count),
    parts: new Float64Array(count),
    scrapBy: new Int32Array(count).fill(-1),
    minutesOf: new Float64Array(bill.faults.length),
    partsOf: new Float64Array(bill.faults.length),
  };
  const bench = new Bench(bill, drawn, next);
  for (let i = 0; i < count; i += 1) bench.take(i, present[i]!);
  return drawn;
}

/** Works through one machine after another; the sums of the last one are written over. */
class Bench {
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

  constructor(
    private readonly bill: Bill,
    private readonly drawn: Drawn,
    private readonly next: () => number,
  ) {
    this.pieceNeeds = new Int32Array(bill.pieces.length);
    this.pieceCost = new Float64Array(bill.pieces.length);
    this.partNeeds = new Int32Array(bill.parts.length);
    this.partNamed = new Uint8Array(bill.parts.length);
    this.partCost = new Float64Array(bill.parts.length);
    this.spared = new Uint8Array(bill.faults.length);
    this.actSum = new Float64Array(bill.shared.length);
    this.actLongest = new Float64Array(bill.shared.length);
    this.setsFirst = bill.parts
      .map((_, p) => p)
      .sort((a, b) => bill.parts[a]!.heldBy.length - bill.parts[b]!.heldBy.length);
    this.repair = new Float64Array(bill.faults.length);
    this.sharedSum = new Float64Array(bill.shared.length);
    this.sharedLongest = new Float64Array(bill.shared.length);
    this.partsTouched = bill.faults.map((f) => Int32Array.from(touched(bill, f)));
    this.partsOfPieces = bill.faults.map((f) => Int32Array.from(touched(bill, { ...f, parts: [] })));
    this.reach = Float64Array.from(bill.faults, (f) =>
      f.pieces.reduce((sum, p) => sum + bill.pieces[p]!.minutesOff, 0),
    );
  }

  take(i: number, present: readonly number[]): void {
    const { from, likely, to } = this.bill.pace;
    const pace = triangular(from, likely, to, this.next());
    const mended = this.mendedOf(present);
    const scrap = this.nearestScrap(mended);
    if (scrap >= 0) {
      this.drawn.scrapBy[i] = scrap;
      this.drawn.minutes[i] = this.reach[scrap]! * pace;
      return;
    }
    this.drawn.minutes[i] = this.takeApart(pace) + this.mend(mended, pace);
    this.drawn.parts[i] = this.buy();
    this.shareOut(mended);
  }

  private nearestScrap(present: readonly number[]): number {
    let nearest = -1;
    for (const f of present) {
      const { scrap } = this.bill.faults[f]!;
      if (scrap === 0 || this.next() >= scrap) continue;
      if (nearest < 0 || this.reach[f]! < this.reach[nearest]!) nearest = f;
    }
    return nearest;
  }

  /** What is mended, its needs counted: faults far in that hardly matter only where their pieces are off anyway. */
  private mendedOf(present: readonly number[]): number[] {
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

  private takeApart(pace: number): number {
    let sum = 0;
    for (let p = 0; p < this.pieceNeeds.length; p += 1) {
      if (this.pieceNeeds[p] === 0) continue;
      const { minutesOff, minutesBack } = this.bill.pieces[p]!;
      this.pieceCost[p] = (minutesOff + minutesBack) * pace;
      sum += this.pieceCost[p]!;
    }
    return sum;
  }

  /** The repairs themselves, into `repair`. */
  private mend(present: readonly number[], pace: number): number {
    this.sharedSum.fill(0);
    this.sharedLongest.fill(0);
    this.actSum.fill(0);
    this.actLongest.fill(0);
    for (const f of present) {
      const { minutes, minutesTo, shared, sameAct } = this.bill.faults[f]!;
      const alone = minutesTo > minutes ? minutes + (minutesTo - minutes) * this.next() : minutes;
      this.repair[f] = this.spared[f] === 1 ? 0 : alone * pace;
      if (shared < 0) continue;
      this.sharedSum[shared]! += this.repair[f]!;
      if (sameAct) {
        this.actSum[shared]! += this.repair[f]!;
        this.actLongest[shared] = Math.max(this.actLongest[shared]!, this.repair[f]!);
      }
      this.sharedLongest[shared] = Math.max(this.sharedLongest[shared]!, this.repair[f]!);
    }
    let sum = 0;
    for (const f of present) {
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
      const cost = this.next() < chance ? betweenByRatio(from, to, this.next()) : 0;
      this.partCost[p] = cost;
      sum += cost;
    }
    return sum;
  }

  private shareOut(present: readonly number[]): void {
    for (const f of present) {
      let minutes = this.repair[f]!;
      for (const p of this.bill.faults[f]!.pieces) minutes += this.pieceCost[p]! / this.pieceNeeds[p]!;
      this.drawn.minutesOf[f]! += minutes;
      for (const p of this.partsFor(f)) this.drawn.partsOf[f]! += this.partCost[p]! / this.partNeeds[p]!;
    }
  }
}

const touched = (bill: Bill, { parts, pieces }: FaultLine): Set<number> =>
  new Set([...parts, ...pieces.flatMap((p) => bill.pieces[p]!.oneTime)]);
