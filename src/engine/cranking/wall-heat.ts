/**
 * Heat transfer coefficient to the walls, W/(m²·K).
 *
 * Source: Woschni's correlation as in *Internal Combustion Engine Fundamentals* 1988, §12.4, constants from memory:
 * h = 3.26·B^−0.2·p^0.8·T^−0.55·w^0.8 (m, kPa, K, m/s), w = 6.18·(mean piston speed) while gas is exchanged and 2.28·
 * otherwise; nothing burns here. Fitted on running engines: at pull speed take it within a factor of two, which the
 * band of an expected reading carries. Example: 0.065 m, 2000 kPa, 1500 K, 7.44 m/s, closed: 424.8.
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

/**
 * The same by Hohenberg: h = 130·V^−0.06·p^0.8·T^−0.4·(piston speed + 1.4)^0.8 (m³, bar, K, m/s).
 *
 * Source: SAE 790825, constants from memory. Not used by `crank` itself: it is why that takes 2.5 times Woschni's at
 * pull speed (`usualHeatFactor`). Example: 30 cm³, 20 bar, 1500 K, 7.44 m/s: 818.
 */
export function hohenbergCoefficient(given: {
  readonly volumeM3: number;
  readonly bar: number;
  readonly kelvin: number;
  readonly pistonSpeed: number;
}): number {
  const { volumeM3, bar, kelvin, pistonSpeed } = given;
  return 130 * volumeM3 ** -0.06 * bar ** 0.8 * kelvin ** -0.4 * (pistonSpeed + 1.4) ** 0.8;
}
