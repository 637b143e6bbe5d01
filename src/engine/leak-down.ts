import { seaLevelPa } from './atmosphere.js';
import { EngineError, requireNotNegative, requirePositive, requireWithin } from './error.js';
import { flowFunction, holeAreaMm2, holeDiameterMm } from './orifice.js';

/** FAA AC 43.13-1B, 8-14: 0.040 in for a bore under 5.00 in, 0.060 in from there on; 0.250 in long, 60° approach. */
export const faaOrificeMm = { under5In: 0.04 * 25.4, from5In: 0.06 * 25.4 } as const;
export const faaSupplyPa = 80 * 6894.757293168361;

/** A tester: air at a held pressure passes its own orifice into the cylinder. Pressures over the air outside. */
export interface LeakTester {
  readonly supplyPa: number;
  readonly orificeMm: number;
  /** sea level stands */
  readonly ambientPa?: number;
}

/**
 * The effective area of the cylinder's leak, mm², from the pressure that the cylinder holds.
 *
 * Source: two orifices in series, FAA AC 43.13-1B, 8-14 for the tester; *Fundamentals of Engineering Thermodynamics*
 * for the flow. Method: what passes the tester's orifice passes the leak; each choked or not. Both take the same
 * discharge coefficient and the air the same temperature, so that the answer is in units of the tester's own orifice:
 * exact in that sense. Throws EngineError for a cylinder at or over the supply, or at 0 (no bound on the leak).
 * Example: 80 psi supply, 0.040 in, 60 psi held: 1.059 times the orifice, 0.859 mm².
 */
export function leakArea(
  { supplyPa, orificeMm, ambientPa = seaLevelPa }: LeakTester,
  heldPa: number,
): number {
  const orifice = holeAreaMm2(requirePositive(orificeMm, 'orifice'));
  const p1 = requirePositive(supplyPa, 'supply') + requirePositive(ambientPa, 'ambient');
  if (!(heldPa > 0 && heldPa <= supplyPa))
    throw new EngineError(
      `the cylinder holds more than 0 and at most the supply (${supplyPa.toFixed(0)} Pa); got ${heldPa.toFixed(0)} Pa.`,
      'held',
      heldPa,
      { least: 0, most: supplyPa, unit: 'Pa' },
    );
  const p2 = heldPa + ambientPa;
  return (orifice * p1 * flowFunction(p2 / p1)) / (p2 * flowFunction(ambientPa / p2));
}

/**
 * What a tester's cylinder gauge shows for a leak of this area: the inverse of `leakArea`, by bisection to 1e-10 of the
 * supply. Example: 0.859 mm² at 80 psi through 0.040 in: 60 psi.
 */
export function heldPressure(tester: LeakTester, areaMm2: number): number {
  requireNotNegative(areaMm2, 'area');
  let [low, high] = [0, tester.supplyPa];
  while (high - low > 1e-10 * tester.supplyPa) {
    const middle = (low + high) / 2;
    if (leakArea(tester, middle) > areaMm2) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Percent as the testers have it: (supply − held)/supply of the gauge pressures. Example: 60 of 80 psi: 25. */
export function leakPercent({ supplyPa }: Pick<LeakTester, 'supplyPa'>, heldPa: number): number {
  return (
    (100 * (requirePositive(supplyPa, 'supply') - requireWithin(heldPa, 0, supplyPa, 'held', 'Pa'))) /
    supplyPa
  );
}

/**
 * The pressure held at a percent, Pa: the inverse of `leakPercent`. Throws EngineError outside 0 to 100. Example: 25 %
 * of 80 psi: 60 psi.
 */
export function heldAtPercent(tester: LeakTester, percent: number): number {
  return tester.supplyPa * (1 - requireWithin(percent, 0, 100, 'percent') / 100);
}

export interface LeakDown {
  readonly percent: number;
  readonly areaMm2: number;
  readonly holeMm: number;
  /** of the area at k = 2 */
  readonly leastMm2: number;
  readonly mostMm2: number;
}

/**
 * A leak-down reading as an effective hole, with what the gauges' uncertainty leaves.
 *
 * Method: `leakArea`, and again with both gauges off by two standard uncertainties, added in quadrature on each side.
 * Near 0 and near 100 % the gauge hardly moves with the leak: there the range says so. The tester's orifice is taken as
 * given; 0.001 in on 0.040 in is 5 % of every area. Example: 80/70 psi, gauges ± 1 psi (k = 2): 0.573 mm², 0.53 to 0.61.
 */
export function leakDown(tester: LeakTester, heldPa: number, gaugeUPa: number): LeakDown {
  const areaMm2 = leakArea(tester, heldPa);
  const step = 2 * requireNotNegative(gaugeUPa, 'gauge');
  const most = tester.supplyPa;
  const held = (by: number) => leakArea(tester, Math.min(most, Math.max(1e-6 * most, heldPa + by)));
  const supply = (by: number) => leakArea({ ...tester, supplyPa: Math.max(heldPa, most + by) }, heldPa);
  const more = Math.hypot(held(-step) - areaMm2, supply(step) - areaMm2);
  const less = Math.hypot(areaMm2 - held(step), areaMm2 - supply(-step));
  return {
    percent: leakPercent(tester, heldPa),
    areaMm2,
    holeMm: holeDiameterMm(areaMm2),
    leastMm2: Math.max(0, areaMm2 - less),
    mostMm2: areaMm2 + more,
  };
}
