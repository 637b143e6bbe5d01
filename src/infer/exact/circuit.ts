/**
 * A sum of products as a flat list of operations on cells, all of them non-negative.
 *
 * Cell 0 holds 1, then come the inputs, then what is computed. A stage is one variable's elimination: first its
 * multiply-and-adds (cell o += cell a × cell b), then its choices (cell o = cell x ⊕ cell y), where ⊕ is a sum
 * when probabilities are wanted and the larger of both when the best assignment is. Nothing is ever subtracted,
 * so every cell keeps its relative accuracy: about one rounding an operation on its longest path.
 */
export interface Circuit {
  readonly cells: number;
  readonly inputs: number;
  /** o, a, b in turn */
  readonly products: Int32Array;
  /** o, x, y in turn */
  readonly choices: Int32Array;
  readonly stages: readonly Stage[];
  /** the cell that holds the answer; -1 when it is nought whatever the inputs */
  readonly root: number;
}

export interface Stage {
  /** the fault this stage eliminates, or -1 */
  readonly fault: number;
  readonly productsEnd: number;
  readonly choicesEnd: number;
  /** the cells that later stages read */
  readonly outStart: number;
  readonly outEnd: number;
}

export const one = 0;
/** An entry that is nought whatever the inputs. */
export const nought = -1;

/** Growing list of whole numbers. */
class Ints {
  private items = new Int32Array(1024);
  length = 0;

  push3(a: number, b: number, c: number): void {
    if (this.length + 3 > this.items.length) this.grow();
    this.items[this.length++] = a;
    this.items[this.length++] = b;
    this.items[this.length++] = c;
  }

  private grow(): void {
    const wider = new Int32Array(this.items.length * 2);
    wider.set(this.items);
    this.items = wider;
  }

  done(): Int32Array {
    return this.items.slice(0, this.length);
  }
}

export class CircuitBuilder {
  private next: number;
  private readonly products = new Ints();
  private readonly choices = new Ints();
  private readonly stages: Stage[] = [];

  constructor(private readonly inputs: number) {
    this.next = inputs;
  }

  get cells(): number {
    return this.next;
  }

  cell(): number {
    return this.next++;
  }

  addProduct(into: number, a: number, b: number): void {
    this.products.push3(into, a, b);
  }

  choose(x: number, y: number): number {
    const o = this.cell();
    this.choices.push3(o, x, y);
    return o;
  }

  /** @param outStart the first of the cells made in this stage that later stages read */
  endStage(fault: number, outStart: number): void {
    this.stages.push({
      fault,
      productsEnd: this.products.length,
      choicesEnd: this.choices.length,
      outStart,
      outEnd: this.next,
    });
  }

  done(root: number): Circuit {
    return {
      cells: this.next,
      inputs: this.inputs,
      products: this.products.done(),
      choices: this.choices.done(),
      stages: this.stages,
      root,
    };
  }
}
