import type { Goal, TeardownGraph } from '../../../src/plan/index.js';
import { drawing, times } from '../seeded.js';

export interface Case {
  readonly graph: TeardownGraph;
  readonly goal: Goal;
}

/** Up to 14 pieces, joints in random numbers, overlapping assemblies, some off already, some only to be cleared. */
export function randomCase(seed: number): Case {
  const { chance, whole, some } = drawing(seed);
  const ids = times(whole(3, 14), (i) => `p${i}`);
  // numbered at random first, so that the order in the list says nothing
  const hidden = some(ids, ids.length);
  const density = whole(1, 4) / 10;
  const pieces = ids.map((id) => ({
    id,
    minutes: whole(0, 6),
    before: hidden.slice(0, hidden.indexOf(id)).filter(() => chance(density)),
  }));
  const together = times(whole(0, 4), (i) => ({
    id: `a${i}`,
    pieces: some(ids, whole(2, 4)),
    minutes: whole(0, 8),
  })).filter((a) => a.pieces.length > 1);
  const goal = {
    reach: some(ids, whole(0, 2)),
    clear: some(ids, whole(0, 3)),
    off: chance(0.3) ? some(ids, whole(1, 2)) : [],
  };
  return { graph: { pieces, together }, goal };
}
