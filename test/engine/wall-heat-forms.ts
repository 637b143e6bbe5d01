/**
 * Other forms of the heat transfer coefficient to the walls, W/(m²·K), as second opinions on the one that is used.
 * Forms and constants from memory.
 */
interface Gas {
  readonly boreM: number;
  readonly kPa: number;
  readonly kelvin: number;
}

/**
 * Woschni, *Internal Combustion Engine Fundamentals* 1988, §12.4: h = 3.26·B^−0.2·p^0.8·T^−0.55·w^0.8 (m, kPa, K, m/s), with
 * w = 2.28·(mean piston speed) while nothing burns. Example: 0.065 m, 2000 kPa, 1500 K, w of 7.44 m/s: 424.8.
 */
export const woschni = ({ boreM, kPa, kelvin }: Gas, w: number): number =>
  3.26 * boreM ** -0.2 * kPa ** 0.8 * kelvin ** -0.55 * w ** 0.8;

/**
 * Annand, Proc. Inst. Mech. Engrs 177 (1963) 973: Nu = 0.5·Re^0.7 (coefficient 0.35 to 0.8) with the bore as length and
 * the mean piston speed; viscosity of air by Sutherland's formula, conductivity at a Prandtl number of 0.7.
 * Example: 0.065 m, 1000 kPa, 550 K, 0.62 m/s: 184.
 */
export function annand({ boreM, kPa, kelvin }: Gas, pistonSpeed: number): number {
  const viscosity = (1.458e-6 * kelvin ** 1.5) / (kelvin + 110.4);
  const reynolds = ((1000 * kPa) / (287.05 * kelvin)) * pistonSpeed * (boreM / viscosity);
  const conductivity = (1004 * viscosity) / 0.7;
  return ((0.5 * conductivity) / boreM) * reynolds ** 0.7;
}
