import type { Hole } from '../../sight/index.js';

/** wider ones are a bore or a port on the engines that this is for (common practice: studs up to 12 mm) */
const widestBolt = 14;

/**
 * Which of the round holes are no bolt holes, by their place in the list: what is wider than a bolt, and what is another
 * size than most. A guess for the person to correct by a touch.
 */
export function notForBolts(holes: readonly Hole[]): Set<number> {
  const narrow = holes
    .map(({ d }) => d)
    .filter((d) => d <= widestBolt)
    .sort((a, b) => a - b);
  const alike = (d: number) => narrow.filter((other) => Math.abs(other - d) <= 0.15 * d).length;
  const usual = narrow.reduce((best, d) => (alike(d) > alike(best) ? d : best), narrow[0] ?? 0);
  return new Set(
    holes.flatMap(({ d }, i) => (d <= widestBolt && Math.abs(d - usual) <= 0.2 * usual ? [] : [i])),
  );
}

/** The holes that count as they lie seen from the wrench, about their middle, millimetres to a hundredth. */
export function asJointHoles(
  holes: readonly Hole[],
  dropped: ReadonlySet<number>,
  faceDown: boolean,
): { xMm: number; yMm: number }[] {
  const kept = holes.filter((_, i) => !dropped.has(i)).map(({ x, y }) => ({ x: faceDown ? -x : x, y }));
  const middle = (of: (hole: { x: number; y: number }) => number) =>
    kept.reduce((sum, hole) => sum + of(hole), 0) / Math.max(1, kept.length);
  const [mx, my] = [middle(({ x }) => x), middle(({ y }) => y)];
  const round = (mm: number) => Math.round(mm * 100) / 100 + 0;
  return kept.map(({ x, y }) => ({ xMm: round(x - mx), yMm: round(y - my) }));
}
