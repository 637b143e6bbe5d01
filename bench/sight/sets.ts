import { boltCase, type Case, otherLook, plateCase } from './scenes.js';

const seeds = (from: number, count: number) => Array.from({ length: count }, (_, i) => from + i);

const set = (base: number, plates: number, deep: number, bolts: number, others: number): Case[] => [
  ...seeds(base + 1000, others).map((seed) => otherLook(seed)),
  ...seeds(base, plates).map((seed) => plateCase(seed, { thickness: [0.3, 3] })),
  ...seeds(base + 200, bolts).map((seed) => boltCase(seed)),
  ...seeds(base + 400, deep).map((seed) => plateCase(seed, { thickness: [15, 15] })),
];

/** The half by which the reading was built, and the half that is read once at the end. */
export const guiding = () => set(1000, 16, 6, 10, 16);
export const heldOut = () => set(5000, 12, 5, 8, 12);
