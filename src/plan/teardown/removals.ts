import { alone, type Choice, type Numbered } from './choice.js';

/** One act of a complete choice. */
export interface Act {
  /** the assembly that leaves whole; left out for a piece by itself */
  readonly whole?: number;
  readonly pieces: readonly number[];
  /** acts that must be done before, by place in the list */
  readonly after: readonly number[];
}

/**
 * The acts of a complete choice, or nothing where no order can be found: an assembly would have to wait for a
 * piece of itself, or a single piece would leave "as an assembly".
 */
export function acts(graph: Numbered, { way, whole }: Choice): Act[] | undefined {
  const batches = graph.together.map((_, a) => [...way.keys()].filter((i) => way[i] === a));
  if (batches.some((pieces, a) => whole[a] === 1 && pieces.length < 2)) return undefined;
  const groups = [
    ...[...way.keys()].filter((i) => way[i] === alone).map((i) => ({ pieces: [i] })),
    ...batches.flatMap((pieces, a) => (pieces.length > 0 ? [{ whole: a, pieces }] : [])),
  ];
  const actOf = new Map(groups.flatMap(({ pieces }, act) => pieces.map((piece) => [piece, act] as const)));
  const list = groups.map((group, act) => ({ ...group, after: waitsFor(graph, group, act, actOf) }));
  return hasRound(list) ? undefined : list;
}

/** What is of an assembly and still there leaves with it: what leaves in another way must be off by then. */
function waitsFor(
  graph: Numbered,
  { whole, pieces }: { readonly whole?: number; readonly pieces: readonly number[] },
  act: number,
  actOf: ReadonlyMap<number, number>,
): number[] {
  const before = pieces.flatMap((piece) => graph.before[piece]!);
  const fellows = whole === undefined ? [] : graph.together[whole]!.pieces;
  const waits = new Set([...before, ...fellows].map((piece) => actOf.get(piece)!));
  waits.delete(act);
  return [...waits];
}

function hasRound(list: readonly Act[]): boolean {
  const waiting = list.map(({ after }) => after.length);
  const ready = [...waiting.keys()].filter((i) => waiting[i] === 0);
  for (let next = 0; next < ready.length; next += 1)
    for (const [i, { after }] of list.entries())
      if (after.includes(ready[next]!)) {
        waiting[i]! -= 1;
        if (waiting[i] === 0) ready.push(i);
      }
  return ready.length < list.length;
}
