/** Seeded numbers from 0 to 1 (mulberry32), and what scenes draw from them. */
export function dice(seed: number) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    next,
    between: (low: number, high: number) => low + (high - low) * next(),
    whole: (low: number, high: number) => low + Math.floor((high - low + 1) * next()),
    one: <T>(of: readonly T[]): T => of[Math.floor(next() * of.length)]!,
    chance: (p: number) => next() < p,
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}
export type Dice = ReturnType<typeof dice>;

/** Smooth noise from -1 to 1 over a plane, about one hill a unit. */
export function bumps(x: number, y: number, seed: number): number {
  const column = Math.floor(x);
  const row = Math.floor(y);
  const fx = x - column;
  const fy = y - row;
  const sx = fx * fx * (3 - 2 * fx);
  const sy = fy * fy * (3 - 2 * fy);
  const at = (i: number, k: number) => {
    let h = Math.imul(i, 374761393) ^ Math.imul(k, 668265263) ^ Math.imul(seed, 2246822519);
    h = Math.imul(h ^ (h >>> 13), 1274126177);
    return ((h ^ (h >>> 16)) >>> 0) / 2147483648 - 1;
  };
  const upper = (1 - sx) * at(column, row) + sx * at(column + 1, row);
  const lower = (1 - sx) * at(column, row + 1) + sx * at(column + 1, row + 1);
  return (1 - sy) * upper + sy * lower;
}
