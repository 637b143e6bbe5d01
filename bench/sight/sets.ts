import { boltCase, type Case, plateCase } from './scenes.js';

const seeds = (from: number, count: number) => Array.from({ length: count }, (_, i) => from + i);

const set = (base: number, plates: number, deep: number, bolts: number): Case[] => [
  ...seeds(base, plates).map((seed) => plateCase(seed, { thickness: [0.3, 3] })),
  ...seeds(base + 200, bolts).map((seed) => boltCase(seed)),
  ...seeds(base + 400, deep).map((seed) => plateCase(seed, { thickness: [15, 15] })),
];

/** The half by which the reading was built, and the half that is read once at the end. */
export const guiding = () => set(1000, 16, 6, 10);
export const heldOut = () => set(5000, 12, 5, 8);
