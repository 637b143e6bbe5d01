/**
 * Heat transfer coefficient to the walls, W/(m²·K).
 *
 * Source: Woschni's correlation as in *Internal Combustion Engine Fundamentals* 1988, §12.4, constants from memory:
 * h = 3.26·B^−0.2·p^0.8·T^−0.55·w^0.8 (m, kPa, K, m/s), w = 6.18·(mean piston speed) while gas is exchanged and 2.28·
 * otherwise; nothing burns here. Fitted on running engines; at
 * pull speed it gives a third of Hohenberg's and of Annand's, which `crank` therefore does not take from it. Example: 0.065 m, 2000 kPa, 1500 K, 7.44 m/s, closed: 424.8.
 */
export function wallHeatCoefficient(given: {
  readonly boreM: number;
  readonly kPa: number;
  readonly kelvin: number;
  readonly pistonSpeed: number;
  readonly open: boolean;
}): number {
  const w = (given.open ? 6.18 : 2.28) * given.pistonSpeed;
  return 3.26 * given.boreM ** -0.2 * given.kPa ** 0.8 * given.kelvin ** -0.55 * w ** 0.8;
}

/** Hohenberg's form in front of V^−0.06·p^0.8·T^−0.4·(piston speed + 1.4)^0.8. */
export const hohenbergBase = 130;

/**
 * The same by Hohenberg: h = 130·V^−0.06·p^0.8·T^−0.4·(piston speed + 1.4)^0.8 (m³, bar, K, m/s).
 *
 * Source: SAE 790825, constants from memory. Its added speed of 1.4 m/s stands for the stirring that does not come from
 * the piston, so that it holds its own where the piston hardly moves: `crank` takes it. Annand's form comes to the
 * same there within a quarter. Example: 30 cm³, 20 bar, 1500 K, 7.44 m/s: 818.
 */
export function hohenbergCoefficient(given: {
  readonly volumeM3: number;
  readonly bar: number;
  readonly kelvin: number;
  readonly pistonSpeed: number;
}): number {
  const { volumeM3, bar, kelvin, pistonSpeed } = given;
  return hohenbergBase * volumeM3 ** -0.06 * bar ** 0.8 * kelvin ** -0.4 * (pistonSpeed + 1.4) ** 0.8;
}

/**
 * The same by Annand: Nu = 0.5·Re^0.7 with the bore as length and the mean piston speed.
 *
 * Source: Proc. Inst. Mech. Engrs 177 (1963) 973, form and coefficient (0.35 to 0.8) from memory; viscosity of air by
 * Sutherland's formula, conductivity at a Prandtl number of 0.7. Not used by `crank`: it is the second opinion on it.
 * Example: 0.065 m, 1000 kPa, 550 K, 0.62 m/s: 184.
 */
export function annandCoefficient(given: {
  readonly boreM: number;
  readonly kPa: number;
  readonly kelvin: number;
  readonly pistonSpeed: number;
}): number {
  const { boreM, kPa, kelvin, pistonSpeed } = given;
  const viscosity = (1.458e-6 * kelvin ** 1.5) / (kelvin + 110.4);
  const reynolds = ((1000 * kPa) / (287.05 * kelvin)) * pistonSpeed * (boreM / viscosity);
  const conductivity = (1004 * viscosity) / 0.7;
  return ((0.5 * conductivity) / boreM) * reynolds ** 0.7;
}
