/** A binary heap: `pop` gives an item that none comes before. */
export class Heap<T> {
  private readonly items: T[] = [];

  constructor(private readonly before: (a: T, b: T) => boolean) {}

  get size(): number {
    return this.items.length;
  }

  push(item: T): void {
    let at = this.items.push(item) - 1;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (!this.before(item, this.items[parent]!)) break;
      this.items[at] = this.items[parent]!;
      at = parent;
    }
    this.items[at] = item;
  }

  pop(): T | undefined {
    const top = this.items[0];
    const last = this.items.pop();
    if (last !== undefined && this.items.length > 0) this.sink(last);
    return top;
  }

  private sink(item: T): void {
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= this.items.length) break;
      const next = child + 1;
      if (next < this.items.length && this.before(this.items[next]!, this.items[child]!)) child = next;
      if (!this.before(this.items[child]!, item)) break;
      this.items[at] = this.items[child]!;
      at = child;
    }
    this.items[at] = item;
  }
}
