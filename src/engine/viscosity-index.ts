import { EngineError, requirePositive, requireWithin } from './error.js';

/**
 * L and H against the viscosity Y at 100 °C: L = a·Y² + b·Y + c, H = d·Y² + e·Y + f, from `from` to the next.
 * Source: ASTM D2270, coefficients from memory; they give the standard's printed L and H of five rows within 0.1 %
 * and join at their ends within 0.2 % (tested). Those above 70 mm²/s are as the standard's own formula.
 */
const pieces: readonly (readonly [
  from: number,
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  f: number,
])[] = [
  [2, 1.14673, 1.7576, -0.109, 0.84155, 1.5521, -0.077],
  [3.8, 3.38095, -15.4952, 33.196, 0.78571, 1.7929, -0.183],
  [4.4, 2.5, -7.2143, 13.812, 0.82143, 1.5679, 0.119],
  [5, 0.101, 16.635, -45.469, 0.04985, 9.1613, -18.557],
  [6.4, 3.35714, -23.5643, 78.466, 0.22619, 7.7369, -16.656],
  [7, 0.01191, 21.475, -72.87, 0.79762, -0.7321, 14.61],
  [7.7, 0.41858, 16.1558, -56.04, 0.05794, 10.5156, -28.24],
  [9, 0.88779, 7.5527, -16.6, 0.26665, 6.7015, -10.81],
  [12, 0.7672, 10.7972, -38.18, 0.20073, 8.4658, -22.49],
  [15, 0.97305, 5.3135, -2.2, 0.28889, 5.9741, -4.93],
  [18, 0.97256, 5.25, -0.98, 0.24504, 7.416, -16.73],
  [22, 0.91413, 7.4759, -21.82, 0.20323, 9.1267, -34.23],
  [28, 0.87031, 9.7157, -50.77, 0.18411, 10.1015, -46.75],
  [40, 0.84703, 12.6752, -133.31, 0.17029, 11.4866, -80.62],
  [55, 0.85921, 11.1009, -83.19, 0.1713, 11.368, -76.94],
  [70, 0.8353, 14.67, -216, 0.1684, 11.85, -97],
];

/** Viscosities at 40 °C of the two reference oils with this viscosity at 100 °C. Example: 8.86: L 119.94, H 69.48. */
export function referenceViscosities(at100: number): { readonly l: number; readonly h: number } {
  requireWithin(at100, 2, 500, 'viscosity100', 'mm²/s');
  const [, a, b, c, d, e, f] = pieces.findLast(([from]) => at100 >= from)!;
  return { l: (a * at100 + b) * at100 + c, h: (d * at100 + e) * at100 + f };
}

export interface ViscosityIndex {
  readonly index: number;
  readonly procedure: 'A' | 'B';
}

/**
 * Viscosity index from the viscosities at 40 and 100 °C: how little an oil thins as it warms.
 *
 * Source: ASTM D2270. Procedure A up to 100: (L − U)/(L − H)·100; procedure B above: (10^N − 1)/0.00715 + 100 with
 * N = (log H − log U)/log Y. Reported to whole numbers; within 0.2 of the tables where the coefficients stand in for
 * them. Throws EngineError for a viscosity at 40 °C that is no higher than at 100 °C, and outside 2 to 500 mm²/s.
 * Example: 73.30 and 8.86: 92 (A); 22.83 and 5.05: 156 (B).
 */
export function viscosityIndex(at40: number, at100: number): ViscosityIndex {
  requirePositive(at40, 'viscosity40');
  const { l, h } = referenceViscosities(at100);
  if (!(at40 > at100))
    throw new EngineError(
      `the viscosity at 40 °C must be above that at 100 °C (${at100}); got ${at40}.`,
      'viscosity40',
      at40,
    );
  if (at40 >= h) return { index: (100 * (l - at40)) / (l - h), procedure: 'A' };
  const n = Math.log10(h / at40) / Math.log10(at100);
  return { index: (10 ** n - 1) / 0.00715 + 100, procedure: 'B' };
}
