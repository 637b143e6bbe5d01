import { FastenError } from './error.js';
import { sources } from './sources.js';

/** The condition of threads and head face when the wrench turns them, and how it is said. */
export const conditions = {
  'bare-dry': 'bare steel, dry',
  'zinc-dry': 'zinc plated, dry',
  cadmium: 'cadmium plated',
  oiled: 'oiled',
  'anti-seize': 'anti-seize compound',
  locknut: 'special lubricated locknut',
} as const;
export type Condition = keyof typeof conditions;

/** One published nut factor K of T = K·d·F. Each carries its own source, because the sources disagree. */
export interface NutFactor {
  readonly condition: Condition;
  readonly k: number;
  /** the source's own words for the condition */
  readonly words: string;
  readonly source: string;
}

const table815 = `${sources.machineDesign}, Table 8-15`;

export const nutFactors: readonly NutFactor[] = [
  { condition: 'bare-dry', k: 0.3, words: 'non-plated, black finish', source: table815 },
  { condition: 'bare-dry', k: 0.2, words: 'bare steel', source: sources.boltedJoints },
  { condition: 'bare-dry', k: 0.2, words: 'non-plated', source: sources.fastenerStandards },
  { condition: 'zinc-dry', k: 0.2, words: 'zinc-plated', source: table815 },
  { condition: 'zinc-dry', k: 0.295, words: 'zinc, dry', source: sources.boltedJoints },
  { condition: 'zinc-dry', k: 0.15, words: 'plated', source: sources.fastenerStandards },
  { condition: 'cadmium', k: 0.16, words: 'cadmium-plated', source: table815 },
  { condition: 'cadmium', k: 0.2, words: 'cadmium, dry', source: sources.boltedJoints },
  { condition: 'oiled', k: 0.18, words: 'lubricated', source: table815 },
  {
    condition: 'oiled',
    k: 0.2 * 0.9,
    words: 'non-plated 0.20, torque less 10 % when oiled',
    source: sources.fastenerStandards,
  },
  { condition: 'anti-seize', k: 0.12, words: 'with anti-seize compound', source: table815 },
  { condition: 'locknut', k: 0.09, words: 'with a special lubricated locknut', source: table815 },
];

export interface FactorSpread {
  /** the figure taken when nothing better is known */
  readonly taken: NutFactor;
  readonly low: number;
  readonly high: number;
  readonly rows: readonly NutFactor[];
}

/**
 * All published K of a condition: the spread, and the one taken.
 *
 * Taken is the middle one of the rows in order of size, the lower middle of an even number: too little torque can
 * be felt and put right, a stretched bolt or stripped aluminum cannot (trade judgement, no source).
 * Example: zinc plated, dry: 0.15 to 0.295, taken 0.20.
 */
export function factorsFor(condition: string): FactorSpread {
  const rows = nutFactors.filter((row) => row.condition === condition).sort((a, b) => a.k - b.k);
  const taken = rows[Math.floor((rows.length - 1) / 2)];
  if (!taken) {
    throw new FastenError(
      `condition "${condition}" is not one of ${Object.keys(conditions).join(', ')}`,
      'condition',
    );
  }
  return { taken, low: rows[0]!.k, high: rows[rows.length - 1]!.k, rows };
}

/** "K 0.2: zinc-plated (Mechanical Engineering Design, 9th ed., Table 8-15)" */
export function factorWords({ k, words, source }: NutFactor): string {
  return `K ${Number(k.toFixed(3))}: ${words} (${source})`;
}
