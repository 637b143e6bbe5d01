import type { Removal, TeardownGraph, Wait } from '../../../src/plan/index.js';

/** What is wrong with following the removals one by one; empty where they can be followed. */
export function faultsInFollowing(
  graph: TeardownGraph,
  removals: readonly Removal[],
  off: readonly string[] = [],
): string[] {
  const gone = new Set(off);
  const before = new Map(graph.pieces.map((piece) => [piece.id, piece.before]));
  return removals.flatMap((removal) => {
    const leaving = new Set(removal.pieces);
    const faults = removal.pieces.flatMap((id) => [
      ...(gone.has(id) ? [`${id} is off already`] : []),
      ...before
        .get(id)!
        .filter((b) => !gone.has(b) && !leaving.has(b))
        .map((b) => `${id} before ${b}`),
    ]);
    if (removal.how === 'whole') faults.push(...faultsInWhole(graph, removal, gone));
    for (const id of removal.pieces) gone.add(id);
    return faults;
  });
}

function faultsInWhole(graph: TeardownGraph, { id, pieces }: Removal, gone: ReadonlySet<string>): string[] {
  const still = graph.together.find((t) => t.id === id)!.pieces.filter((piece) => !gone.has(piece));
  const same = still.length === pieces.length && still.every((piece) => pieces.includes(piece));
  return same && pieces.length > 1 ? [] : [`${id} leaves as ${pieces.join()} while ${still.join()} is on`];
}

/** The soonest end over every order that can be followed. */
export function soonestEnd(removals: readonly Removal[], waits: readonly Wait[]): number {
  const notBefore = ({ pieces }: Removal) =>
    waits.reduce((most, { piece, minutes }) => (pieces.includes(piece) ? Math.max(most, minutes) : most), 0);
  const go = (left: readonly Removal[], now: number): number => {
    if (left.length === 0) return now;
    const possible = left.filter(({ after }) => !left.some(({ id }) => after.includes(id)));
    const ends = possible.map((removal) =>
      go(
        left.filter((each) => each !== removal),
        Math.max(now, notBefore(removal)) + removal.minutes,
      ),
    );
    return Math.min(...ends);
  };
  return go(removals, 0);
}
