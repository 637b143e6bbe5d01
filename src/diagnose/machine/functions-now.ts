import { byId, type Catalog, type EngineFunction } from '../../catalog/index.js';
import type { NetworkFunction } from '../../infer/index.js';
import type { MachineFacts } from './case.js';
import { functionName, networkFunction, spoilersOf } from './functions.js';
import type { Versions } from './versions.js';

/**
 * The functions that a machine's signs name, each once for every state of repair in which it was read: a repair of what
 * spoils a function makes another one of it, and one that nobody touched stays the same through all repairs.
 */
export class FunctionsNow {
  private readonly named = new Map<string, { readonly of: EngineFunction; readonly time: number }>();
  private readonly known: ReadonlyMap<string, EngineFunction>;

  constructor(
    catalog: Catalog,
    private readonly facts: MachineFacts,
    private readonly concerned: ReadonlySet<string>,
    private readonly versions: Versions,
  ) {
    this.known = byId(catalog.functions);
  }

  /** How a function is called at a time, given as the place of a repair. */
  nameAt(id: string, time: number): string {
    const of = this.known.get(id)!;
    const own = this.versions.timeWithin(
      spoilersOf(of, this.facts, this.concerned).map((s) => s.fault),
      time,
    );
    const name = functionName(id, this.versions.suffix(own));
    if (!this.named.has(name)) this.named.set(name, { of, time: own });
    return name;
  }

  /** Those that were named so far. */
  network(): NetworkFunction[] {
    return [...this.named].map(([id, { of, time }]) =>
      networkFunction(
        { id, of, name: (fault) => this.versions.nameAt(fault, time) },
        this.facts,
        this.concerned,
      ),
    );
  }
}
