/** A graph as rows of bits, from which variables are taken out one by one. */
export class Neighborhood {
  private constructor(
    readonly count: number,
    private readonly words: number,
    private readonly bits: Uint32Array,
    private readonly left: Uint8Array,
    private readonly logSize: Float64Array,
  ) {}

  static of(size: readonly number[], near: readonly ReadonlySet<number>[]): Neighborhood {
    const n = size.length;
    const words = (n + 31) >>> 5;
    const bits = new Uint32Array(n * words);
    for (const [v, around] of near.entries())
      for (const u of around) bits[v * words + (u >>> 5)]! |= 1 << (u & 31);
    return new Neighborhood(n, words, bits, new Uint8Array(n).fill(1), Float64Array.from(size, Math.log2));
  }

  copy(): Neighborhood {
    return new Neighborhood(this.count, this.words, this.bits.slice(), this.left.slice(), this.logSize);
  }

  has(v: number): boolean {
    return this.left[v] === 1;
  }

  /** what is left, in rising order */
  all(): number[] {
    return Array.from(this.left.keys()).filter((v) => this.left[v] === 1);
  }

  around(v: number): number[] {
    return bitsOf(this.bits, v * this.words, this.words);
  }

  /** ordered pairs of neighbors of v that are not yet neighbors of each other */
  fill(v: number, around: readonly number[]): number {
    const { bits, words } = this;
    let missing = -around.length;
    for (const u of around) {
      for (let w = 0; w < words; w += 1) missing += countBits(bits[v * words + w]! & ~bits[u * words + w]!);
    }
    return missing;
  }

  /** log2 of the entries of the table of v and its neighbors */
  logCells(v: number, around: readonly number[]): number {
    let sum = this.logSize[v]!;
    for (const u of around) sum += this.logSize[u]!;
    return sum;
  }

  /** Takes v out, makes its neighbors neighbors of each other; gives those whose measures may have changed. */
  takeOut(v: number, around: readonly number[]): number[] {
    const { bits, words } = this;
    const grew = this.fill(v, around) > 0;
    const changed = bits.slice(v * words, (v + 1) * words);
    this.left[v] = 0;
    for (const u of around) {
      if (grew) for (let w = 0; w < words; w += 1) bits[u * words + w]! |= bits[v * words + w]!;
      this.clear(u, u);
      this.clear(u, v);
    }
    // a new pair of neighbors lowers the fill of whatever is near both
    if (grew) for (const u of around) for (let w = 0; w < words; w += 1) changed[w]! |= bits[u * words + w]!;
    return bitsOf(changed, 0, words);
  }

  private clear(v: number, u: number): void {
    this.bits[v * this.words + (u >>> 5)]! &= ~(1 << (u & 31));
  }
}

function bitsOf(bits: Uint32Array, from: number, words: number): number[] {
  const found: number[] = [];
  for (let w = 0; w < words; w += 1) {
    for (let rest = bits[from + w]!; rest !== 0; rest &= rest - 1)
      found.push(w * 32 + 31 - Math.clz32(rest & -rest));
  }
  return found;
}

function countBits(x: number): number {
  let n = x - ((x >>> 1) & 0x55555555);
  n = (n & 0x33333333) + ((n >>> 2) & 0x33333333);
  return Math.imul((n + (n >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
