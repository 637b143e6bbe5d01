/** A number in [0, 1), a new one each time. */
export type Next = () => number;

/**
 * Numbers that follow from a seed: the same seed gives the same draws, so that an answer can be had again.
 * Method: mulberry32 (public domain): a 32-bit counter, mixed; period 2³². Own, since a library's generator would
 * redraw every schedule and spread that is known by its seed.
 */
export function seeded(seed: number): Next {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}
