import type { From } from '../../job/index.js';

/** Sides in the order in which one walks round a machine. */
export const sides = [
  'front',
  'left side',
  'back',
  'right side',
  'top',
  'plates and numbers',
  'guards and what is missing',
  'control cables as they run',
] as const;

/** The mark by which a picture of the whole machine is found again: before and after of one side pair by it. */
export const sideKey = (side: string): string => `machine-${side.replaceAll(' ', '-')}`;

/** What a picture is about when it is said anew what it shows: a side of the machine follows its name. */
export function aboutAfter(
  { about }: Pick<From<'photograph'>, 'about'>,
  caption: string,
): string | undefined {
  const side = sides.find((name) => name === caption.trim().toLowerCase());
  if (side) return sideKey(side);
  return about?.startsWith('machine-') ? undefined : about;
}

/** Sides that no picture shows yet. */
export const sidesLeft = (pictures: readonly From<'photograph'>[]): string[] =>
  sides.filter((side) => !pictures.some(({ about, caption }) => about === sideKey(side) || caption === side));

/** The first side that was pictured before the work and not yet after it. */
export function sideToRepeat(pictures: readonly From<'photograph'>[]): string | undefined {
  const has = (side: string, when: 'before' | 'after') =>
    pictures.some((p) => p.about === sideKey(side) && p.when === when);
  return sides.find((side) => has(side, 'before') && !has(side, 'after'));
}
