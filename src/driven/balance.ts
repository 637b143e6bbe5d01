import { requireNotNegative, requirePositive, requireWithin } from './error.js';

/** Balance quality grades of ISO 21940-11:2016, Table 1 (from memory), of the rotors that small machines carry; mm/s. */
export const balanceGrades = {
  G2_5: { grade: 2.5, what: 'electric rotors up to 950 rpm and over' },
  G6_3: { grade: 6.3, what: 'fans, blowers, flywheels, impellers, blades in general machinery' },
  G16: { grade: 16, what: 'parts of agricultural and crushing machines' },
  G40: { grade: 40, what: 'wheels, and drives that stand on soft mounts' },
} as const;

/** What a mass off the axis weighs in the balance: grams times millimeters from the axis. */
export type GramMillimeters = number;

interface Turning {
  readonly massKg: number;
  readonly rpm: number;
}

/**
 * Residual unbalance that a grade allows, g·mm.
 * Source: ISO 21940-11:2016 (formerly ISO 1940-1), permissible residual unbalance.
 * Method: U = 1000·G·m/ω with the grade G in mm/s, the mass in kg and ω in rad/s.
 * Validity: rigid rotors; for a blade the mass is that of the blade alone, at its governed speed.
 * Example: 40 kg at 3600 rpm in G 6.3: 668 g·mm.
 */
export function allowedUnbalance(grade: number, { massKg, rpm }: Turning): GramMillimeters {
  const omega = radiansPerSecond(requirePositive(rpm, 'rpm'));
  return (1000 * requirePositive(grade, 'grade') * requirePositive(massKg, 'mass')) / omega;
}

/**
 * Force that an unbalance throws round at a speed, N: U·ω². Exact.
 * Example: 100 g·mm at 3000 rpm: 9.87 N.
 */
export function centrifugalForce(unbalance: GramMillimeters, rpm: number): number {
  return requireNotNegative(unbalance, 'unbalance') * 1e-6 * radiansPerSecond(rpm) ** 2;
}

/** The unbalance for which a blade may hang level on a pin all the same, g·mm. */
export interface Pin {
  readonly massKg: number;
  readonly pinDiameterMm: number;
  /** sliding friction between pin and hole; 0.15 dry steel on steel, clean (common practice) */
  readonly friction: number;
}

/**
 * The least unbalance that a hanging test can show, g·mm.
 * Source: own derivation from Coulomb friction in a journal (friction circle, radius r·sin(atan µ)), a textbook result.
 * Method: the blade tips when its unbalance exceeds the moment of friction at the pin, m·r·µ/√(1 + µ²).
 * Validity: a blade hung through its own hole on a smooth round pin; on a knife edge or a cone the radius is that of
 * the contact. What hangs level may be out of balance by anything up to this.
 * Example: 1.2 kg on a pin of 10 mm with µ = 0.15: 890 g·mm.
 */
export function pinResolution({ massKg, pinDiameterMm, friction }: Pin): GramMillimeters {
  requireWithin(friction, 0, 1, 'friction');
  const arm = (requirePositive(pinDiameterMm, 'pin') / 2) * (friction / Math.hypot(1, friction));
  return 1000 * requirePositive(massKg, 'mass') * arm;
}

const radiansPerSecond = (rpm: number): number => (requireNotNegative(rpm, 'rpm') * Math.PI) / 30;
