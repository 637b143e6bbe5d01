/**
 * The standard pitches a marking may leave out, and those that only pipe has. ASME B1.1 (UNC, UNF), ISO 261 with
 * ISO 262 (coarse metric) and ASME B1.20.1 (pipe), all from memory.
 */

/** Threads per inch by size: "#10" is a numbered size, the others inches. */
export const unifiedThreads: Readonly<Record<string, { readonly UNC?: number; readonly UNF?: number }>> = {
  '#0': { UNF: 80 },
  '#1': { UNC: 64, UNF: 72 },
  '#2': { UNC: 56, UNF: 64 },
  '#3': { UNC: 48, UNF: 56 },
  '#4': { UNC: 40, UNF: 48 },
  '#5': { UNC: 40, UNF: 44 },
  '#6': { UNC: 32, UNF: 40 },
  '#8': { UNC: 32, UNF: 36 },
  '#10': { UNC: 24, UNF: 32 },
  '#12': { UNC: 24, UNF: 28 },
  '1/4': { UNC: 20, UNF: 28 },
  '5/16': { UNC: 18, UNF: 24 },
  '3/8': { UNC: 16, UNF: 24 },
  '7/16': { UNC: 14, UNF: 20 },
  '1/2': { UNC: 13, UNF: 20 },
  '9/16': { UNC: 12, UNF: 18 },
  '5/8': { UNC: 11, UNF: 18 },
  '3/4': { UNC: 10, UNF: 16 },
  '7/8': { UNC: 9, UNF: 14 },
  '1': { UNC: 8, UNF: 12 },
};

/** Pitch in mm that "M8" without a pitch means. */
export const coarsePitchMm: Readonly<Record<number, number>> = {
  1.6: 0.35,
  2: 0.4,
  2.5: 0.45,
  3: 0.5,
  3.5: 0.6,
  4: 0.7,
  5: 0.8,
  6: 1,
  7: 1,
  8: 1.25,
  10: 1.5,
  12: 1.75,
  14: 2,
  16: 2,
  18: 2.5,
  20: 2.5,
};

/** Nominal pipe sizes with their own threads per inch: 1/8-27 is 0.405 in across, not 0.125. */
export const pipeThreads: Readonly<Record<string, number>> = {
  '1/16': 27,
  '1/8': 27,
  '1/4': 18,
  '3/8': 18,
  '1/2': 14,
};
