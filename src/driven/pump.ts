import { DrivenError, requireNotNegative, requirePositive } from './error.js';
import { gravity } from './pipe.js';

/** Power that the water takes, W: ρ·g·Q·H. Exact. Example: 100 gal/min over 100 ft: 1885 W (2.53 hp). */
export function waterPower(flow: number, headM: number, density: number): number {
  return (
    requirePositive(density, 'density') *
    gravity *
    requireNotNegative(flow, 'flow') *
    requireNotNegative(headM, 'head')
  );
}

/** What a centrifugal pump gives at another speed: flow as the speed, head as its square, power as its cube. */
export interface AtSpeed {
  readonly flow: number;
  readonly headM: number;
  readonly powerW: number;
}

/**
 * Source: affinity laws (Hydraulic Institute; White, Fluid Mechanics, section 11.3). Validity: the same impeller, water
 * without air, within about a third of the known speed. Example: 3600 for 1800 rpm: 2, 4 and 8 times.
 */
export function atSpeed(known: AtSpeed, rpm: number, otherRpm: number): AtSpeed {
  const ratio = requirePositive(otherRpm, 'otherSpeed') / requirePositive(rpm, 'speed');
  return { flow: known.flow * ratio, headM: known.headM * ratio ** 2, powerW: known.powerW * ratio ** 3 };
}

export interface Suction {
  /** of the air, Pa */
  readonly airPressure: number;
  /** at which this water boils, Pa */
  readonly boiling: number;
  readonly density: number;
  /** from the water's face up to the pump's eye; below 0 where the water stands above it */
  readonly liftM: number;
  /** friction, strainer and bends of the suction line */
  readonly lossM: number;
}

/**
 * Net positive suction head available, meters.
 * Source: Hydraulic Institute; White, Fluid Mechanics, eq. 11.20. Method: (p_air − p_boil)/ρg − lift − losses. Exact.
 * Example: sea level, 20 °C, 4 m of lift, 1 m lost: 5.1 m.
 */
export function suctionHead({ airPressure, boiling, density, liftM, lossM }: Suction): number {
  const all =
    (requirePositive(airPressure, 'air') - requireNotNegative(boiling, 'boiling')) /
    (requirePositive(density, 'density') * gravity);
  return all - liftM - requireNotNegative(lossM, 'loss');
}

export interface Priming {
  /** of air between the water's face and the pump, m³ */
  readonly air: number;
  /** air that the pump takes out when it primes, m³/s */
  readonly airRate: number;
  readonly airPressure: number;
  readonly density: number;
  readonly liftM: number;
}

/**
 * Time in which a self-priming pump draws the water up, s.
 * Source: own derivation on the evacuation of a vessel at a constant volume rate. Method: the pump takes S of air at
 * the pressure of the riser, so d(p·V)/dt = −S·p, while the water follows the pressure and V shrinks with the height
 * still dry; integrated from p₀ to e·p₀ = p₀ − ρgh this is V/S·(2 + e·ln e/(1 − e)).
 * Validity: a straight riser without a trapped crest, a pump whose own chamber is full of water, no leak.
 * Special case: no lift leaves V/S, the air merely displaced. Throws DrivenError for more than 0.95 of the air's weight.
 * Example: 10 L of air, 0.5 L/s, 3 m at sea level: 23 s.
 */
export function primingTime({ air, airRate, airPressure, density, liftM }: Priming): number {
  const displaced = requirePositive(air, 'volume') / requirePositive(airRate, 'airRate');
  const weight = requirePositive(density, 'density') * gravity * requireNotNegative(liftM, 'lift');
  const part = weight / requirePositive(airPressure, 'air');
  if (part > 0.95)
    throw new DrivenError(
      `the air cannot carry water that high: its whole weight is ${(airPressure / (density * gravity)).toFixed(1)} m of it.`,
      'lift',
      liftM,
    );
  if (part === 0) return displaced;
  const end = 1 - part;
  return displaced * (2 + (end * Math.log(end)) / part);
}
