/**
 * cp/R of a gas: polynomials of degree 4 in T under and over 1000 K. Source: NASA/TP-2002-211556 and its forerunners,
 * the seven-coefficient form, from memory; argon, in the air, 2.5. Valid 200 to 3500 K.
 */
export interface Species {
  readonly cold: readonly number[];
  readonly hot: readonly number[];
}

export const nitrogen: Species = {
  cold: [3.53100528, -1.23660988e-4, -5.02999433e-7, 2.43530612e-9, -1.40881235e-12],
  hot: [2.95257637, 1.3969004e-3, -4.92631603e-7, 7.86010195e-11, -4.60755204e-15],
};
export const oxygen: Species = {
  cold: [3.78245636, -2.99673416e-3, 9.84730201e-6, -9.68129509e-9, 3.24372837e-12],
  hot: [3.28253784, 1.48308754e-3, -7.57966669e-7, 2.09470555e-10, -2.16717794e-14],
};
export const carbonDioxide: Species = {
  cold: [2.35677352, 8.98459677e-3, -7.12356269e-6, 2.45919022e-9, -1.43699548e-13],
  hot: [3.85746029, 4.41437026e-3, -2.21481404e-6, 5.23490188e-10, -4.72084164e-14],
};
export const waterVapor: Species = {
  cold: [4.19864056, -2.0364341e-3, 6.52040211e-6, -5.48797062e-9, 1.77197817e-12],
  hot: [3.03399249, 2.17691804e-3, -1.64072518e-7, -9.7041987e-11, 1.68200992e-14],
};

/**
 * Isooctane's vapor, which stands for gasoline. Source: *Internal Combustion Engine Fundamentals* 1988, table 4.10, in
 * cal/(mol·K) and T/1000, from memory; its last term, under 1 %, is left out.
 */
const calPerMolK = 4.184 / 8.314462618;
const isooctaneCp = [-0.55313, 181.62e-3, -97.787e-6, 20.402e-9, 0].map((each) => each * calPerMolK);
export const isooctane: Species = { cold: isooctaneCp, hot: isooctaneCp };

/** kg/mol */
export const molarMass = {
  air: 0.02896442,
  isooctane: 0.11423,
  carbonDioxide: 0.0440095,
  waterVapor: 0.01801528,
  nitrogen: 0.0280134,
} as const;

/** Where the two polynomials meet, K. */
export const polynomialsMeetK = 1000;

/** A mixture by mole fractions, as one gas. Example: dry air at 300 K: 3.50. */
export function mixed(parts: readonly (readonly [Species, fraction: number])[]): Species {
  const side = (of: 'cold' | 'hot') =>
    [0, 1, 2, 3, 4].map((i) => parts.reduce((sum, [gas, fraction]) => sum + fraction * gas[of][i]!, 0));
  return { cold: side('cold'), hot: side('hot') };
}

/** By volume. */
export const dryAir = mixed([
  [nitrogen, 0.7812],
  [oxygen, 0.2095],
  [{ cold: [2.5, 0, 0, 0, 0], hot: [2.5, 0, 0, 0, 0] }, 0.0093],
]);
