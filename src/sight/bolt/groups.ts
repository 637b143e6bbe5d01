import type { Bolt } from './read-bolts.js';

/** Bolts that cannot be told apart by their length or diameter, with the means of both. */
export interface BoltGroup {
  readonly bolts: readonly Bolt[];
  readonly length: number;
  readonly d: number;
  readonly flats?: number;
  readonly u: number;
  readonly uDiameter: number;
}

/** Longest first; a bolt joins the group to which it is nearest, if both ± reach. */
export function groupsOf(bolts: readonly Bolt[]): BoltGroup[] {
  const groups: Bolt[][] = [];
  for (const bolt of [...bolts].sort((a, b) => b.length - a.length)) {
    const own = groups.find((group) => group.every((other) => alike(bolt, other)));
    if (own) own.push(bolt);
    else groups.push([bolt]);
  }
  return groups.map((own) => {
    const mean = (of: (bolt: Bolt) => number) => own.reduce((sum, bolt) => sum + of(bolt), 0) / own.length;
    const hexagon = own.every(({ flats }) => flats !== undefined);
    return {
      bolts: own,
      length: mean(({ length }) => length),
      d: mean(({ d }) => d),
      ...(hexagon && { flats: mean(({ flats }) => flats!) }),
      u: Math.max(...own.map(({ u }) => u)),
      uDiameter: Math.max(...own.map(({ uDiameter }) => uDiameter)),
    };
  });
}

const alike = (a: Bolt, b: Bolt): boolean =>
  Math.abs(a.length - b.length) <= Math.max(1, a.u + b.u) &&
  Math.abs(a.d - b.d) <= Math.max(0.35, a.uDiameter + b.uDiameter);
