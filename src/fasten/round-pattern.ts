import { apart, diametersApart } from './plane.js';

/**
 * ASME PCC-1 legacy cross pattern, bolts numbered round the flange (from memory; the printed diagrams for 12 and 16
 * bolts agree as far as they could be read).
 */
export const legacyCrossPatterns: Readonly<Record<number, readonly number[]>> = {
  4: [1, 3, 2, 4],
  8: [1, 5, 3, 7, 2, 6, 4, 8],
  12: [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12],
  16: [1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 6, 14, 4, 12, 8, 16],
  20: [1, 11, 6, 16, 3, 13, 8, 18, 5, 15, 10, 20, 2, 12, 7, 17, 4, 14, 9, 19],
};

const tie = 1e-6;

/** Those with the highest score, ties kept, so that the lowest-numbered place decides last. */
function best(places: readonly number[], score: (place: number) => number): readonly number[] {
  const top = Math.max(...places.map(score));
  return places.filter((place) => score(place) >= top - tie);
}

/**
 * The cross pattern by its rule: each bolt, then the one opposite, then halve the angle between the diameters used.
 *
 * Takes the places' angles (rad) and gives their order, as indices; begins with the first. A new pair opens at least
 * a quarter turn from the last bolt if such a place is left; of those, on the diameter farthest from all used; then
 * farthest from the last diameter; then farthest from the last bolt. For 4, 8 and 12 even places this gives the
 * PCC-1 legacy order. An odd count has no exact opposites: the nearest is taken, which for five gives the star.
 */
export function crossByRule(anglesRad: readonly number[]): readonly number[] {
  const at = (place: number) => anglesRad[place]!;
  const farFrom = (last: number) => (place: number) => apart(at(place), at(last));
  const used = [0];
  while (used.length < anglesRad.length) {
    const left = anglesRad.map((_, place) => place).filter((place) => !used.includes(place));
    const last = used.at(-1)!;
    used.push(used.length % 2 === 1 ? best(left, farFrom(last))[0]! : opensPair(left, last));
  }
  return used;

  function opensPair(left: readonly number[], last: number): number {
    const lastOpened = used.at(-2)!;
    const far = left.filter((place) => farFrom(last)(place) >= Math.PI / 2 - tie);
    const halving = best(far.length > 0 ? far : left, (place) =>
      Math.min(...used.map((each) => diametersApart(at(place), at(each)))),
    );
    const across = best(halving, (place) => diametersApart(at(place), at(lastOpened)));
    return best(across, farFrom(last))[0]!;
  }
}
