/** Between two bounds, alike on a scale of ratios: a price is as likely to be a tenth off the top as a tenth up from the bottom. */
export const betweenByRatio = (from: number, to: number, u: number): number => from * (to / from) ** u;

/**
 * Triangular distribution by its inverse.
 * @example triangular(0.8, 1, 1.6, 0.25) = 1
 */
export function triangular(from: number, likely: number, to: number, u: number): number {
  const width = to - from;
  if (width === 0) return from;
  const turn = (likely - from) / width;
  return u < turn
    ? from + Math.sqrt(u * width * (likely - from))
    : to - Math.sqrt((1 - u) * width * (to - likely));
}
