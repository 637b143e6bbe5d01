import { boltCase, type Case, cornered, otherLook, plateCase } from './scenes.js';

const seeds = (from: number, count: number) => Array.from({ length: count }, (_, i) => from + i);

interface Counts {
  readonly others: number;
  readonly corners: number;
  readonly plates: number;
  readonly bolts: number;
  readonly deep: number;
}

const set = (base: number, { others, corners, plates, bolts, deep }: Counts): Case[] => [
  ...seeds(base + 1000, others).map((seed) => otherLook(seed)),
  ...seeds(base + 2000, corners).map((seed) => cornered(seed)),
  ...seeds(base, plates).map((seed) => plateCase(seed, { thickness: [0.3, 3] })),
  ...seeds(base + 200, bolts).map((seed) => boltCase(seed)),
  ...seeds(base + 400, deep).map((seed) => plateCase(seed, { thickness: [15, 15] })),
];

/** The half by which the reading was built, and the half that is read once at the end. */
export const guiding = () => set(1000, { others: 16, corners: 10, plates: 16, bolts: 10, deep: 6 });
export const heldOut = () => set(11_000, { others: 12, corners: 6, plates: 12, bolts: 8, deep: 5 });
