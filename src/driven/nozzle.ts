import { requirePositive } from './error.js';

/** The pressure at which a washer nozzle's number is its flow in gallons a minute: 4000 psi, the trade's own rule. */
const numberedAtPsi = 4000;

/**
 * Number of a washer nozzle from its flow and pressure: gal/min·√(4000/psi).
 * Source: the trade's own rule (common practice): flow goes as the root of the pressure. Example: 3 gal/min at 2500 psi: 3.79.
 */
export function nozzleNumber(gallonsPerMinute: number, psi: number): number {
  return (
    requirePositive(gallonsPerMinute, 'flow') * Math.sqrt(numberedAtPsi / requirePositive(psi, 'pressure'))
  );
}

/** Flow of a numbered nozzle, gal/min. Example: number 4 at 1000 psi: 2.0. */
export function nozzleFlow(number: number, psi: number): number {
  return requirePositive(number, 'nozzle') * Math.sqrt(requirePositive(psi, 'pressure') / numberedAtPsi);
}

/** Pressure that a flow raises at a numbered nozzle, psi. Example: 2.5 gal/min through number 3: 2778 psi. */
export function nozzlePressure(number: number, gallonsPerMinute: number): number {
  return numberedAtPsi * (requirePositive(gallonsPerMinute, 'flow') / requirePositive(number, 'nozzle')) ** 2;
}

/**
 * Bore of a smooth nozzle, mm, from flow (m³/s), pressure (Pa) and density.
 * Source: orifice equation Q = C·A·√(2p/ρ); fire-service form 29.84·C·d²·√p in gal/min, in, psi.
 * `coefficient`: 0.97 to 0.99 for a smooth taper. Example: 1 in at 50 psi, C = 0.99: 209 gal/min.
 */
export function boreOf(flow: number, pressure: number, density: number, coefficient: number): number {
  const speed = Math.sqrt((2 * requirePositive(pressure, 'pressure')) / requirePositive(density, 'density'));
  return (
    1000 *
    Math.sqrt(
      (4 * requirePositive(flow, 'flow')) / (Math.PI * requirePositive(coefficient, 'coefficient') * speed),
    )
  );
}

/**
 * Push of a jet back on the gun, N: mass flow times jet speed, Q·√(2ρp).
 * Source: momentum; fire-service form 1.57·d²·p and washer form 0.0526·gal/min·√psi. Exact without loss.
 * Example: 4 gal/min at 3000 psi: 51 N (11.5 lbf).
 */
export function jetReaction(flow: number, pressure: number, density: number): number {
  return (
    requirePositive(flow, 'flow') *
    Math.sqrt(2 * requirePositive(density, 'density') * requirePositive(pressure, 'pressure'))
  );
}
