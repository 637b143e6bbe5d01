import { minorInternalMm, mmPerInch, type ThreadForm } from './thread-form.js';

/** Least and greatest of a diameter that a caliper can touch, mm. */
export interface Limits {
  readonly leastMm: number;
  readonly mostMm: number;
}

/**
 * Limits of the bolt's outside diameter: class 2A (inch) or 6g (metric), the usual commercial fits. A bolt always
 * measures under its name.
 *
 * Inch: allowance 0.3·(0.0015·∛d + 0.0015·√Le + 0.015·∛P²), Le = d; tolerance 0.060·∛P². Source: ASME B1.1 (from memory, recomputed).
 * Metric: deviation 15 + 11·P µm; tolerance 180·∛P² − 3.15/√P µm. Source: ISO 965-1 (from memory, recomputed); the
 * standard then rounds to preferred numbers, up to 3 % of the tolerance.
 * Example: 1/4-20 gives 0.2408 to 0.2489 in; M8×1.25 about 7.76 to 7.97 mm.
 */
export function boltDiameterLimits({ system, majorMm, pitchMm }: ThreadForm): Limits {
  if (system === 'metric') {
    const mostMm = majorMm - (15 + 11 * pitchMm) / 1000;
    return { leastMm: mostMm - (180 * Math.cbrt(pitchMm ** 2) - 3.15 / Math.sqrt(pitchMm)) / 1000, mostMm };
  }
  const [d, p] = [majorMm / mmPerInch, pitchMm / mmPerInch];
  const allowance = 0.3 * (0.0015 * Math.cbrt(d) + 0.0015 * Math.sqrt(d) + 0.015 * Math.cbrt(p ** 2));
  const mostIn = d - allowance;
  return { leastMm: (mostIn - 0.06 * Math.cbrt(p ** 2)) * mmPerInch, mostMm: mostIn * mmPerInch };
}

/**
 * Limits of the bore of a tapped hole: class 2B (inch) or 6H (metric), from the basic minor diameter up.
 *
 * Inch: 0.25·P − 0.40·P² from 1/4 in up; below, 0.05·∛P² + 0.03·P/d − 0.002, within 0.25·P − 0.40·P² and 0.394·P.
 * Metric: 433·P − 190·P^1.22 µm up to 0.8 mm pitch, 230·P^0.7 µm above. Sources: ASME B1.1 and ISO 965-1 (from memory, recomputed).
 * Example: 1/4-20 gives 0.196 to 0.207 in; M8×1.25 6.647 to 6.912 mm (printed) against 6.916 here.
 */
export function nutBoreLimits(form: ThreadForm): Limits {
  const leastMm = minorInternalMm(form);
  return { leastMm, mostMm: leastMm + boreToleranceMm(form) };
}

function boreToleranceMm({ system, majorMm, pitchMm }: ThreadForm): number {
  if (system === 'metric') {
    return (pitchMm <= 0.8 ? 433 * pitchMm - 190 * pitchMm ** 1.22 : 230 * pitchMm ** 0.7) / 1000;
  }
  const [d, p] = [majorMm / mmPerInch, pitchMm / mmPerInch];
  const coarse = 0.25 * p - 0.4 * p * p;
  if (d >= 0.25 - 1e-9) return coarse * mmPerInch;
  const small = 0.05 * Math.cbrt(p * p) + (0.03 * p) / d - 0.002;
  return Math.min(0.394 * p, Math.max(coarse, small)) * mmPerInch;
}
