import { EngineError, requireNotNegative, requirePositive, requireWithin } from './error.js';

/** Blade tip speed allowed on walk-behind and ride-on rotary mowers: 19 000 ft/min (ANSI B71.1). */
export const tipSpeedLimit = 19_000 * (0.3048 / 60);

/**
 * Mean piston speed, m/s: twice the stroke a turn. Exact. Example: 62 mm at 3600 rpm: 7.44 m/s.
 */
export function meanPistonSpeed(strokeMm: number, rpm: number): number {
  return (2 * requirePositive(strokeMm, 'stroke') * requireNotNegative(rpm, 'rpm')) / 60_000;
}

/**
 * Speed of the outermost point of a blade or rotor, m/s: π·diameter·turns. Source: ANSI B71.1. Exact for a blade that
 * is measured tip to tip through the center. Example: 21 in at 3100 rpm: 86.6 m/s (17 042 ft/min).
 */
export function tipSpeed(diameterMm: number, rpm: number): number {
  return (Math.PI * requirePositive(diameterMm, 'diameter') * requireNotNegative(rpm, 'rpm')) / 60_000;
}

/** The rotor's speed at which its tip reaches a speed in m/s. Example: 22 in at 19 000 ft/min: 3299 rpm. */
export function rpmAtTipSpeed(diameterMm: number, metersPerSecond = tipSpeedLimit): number {
  return (
    (60_000 * requirePositive(metersPerSecond, 'tipSpeed')) /
    (Math.PI * requirePositive(diameterMm, 'diameter'))
  );
}

export interface BeltDrive {
  readonly driverRpm: number;
  readonly driverMm: number;
  readonly drivenMm: number;
  /** part of the driven speed lost; a V-belt in order slips 0.01 to 0.03 (common practice) */
  readonly slip: number;
}

/**
 * Driven speed and belt speed of two pulleys.
 * Method: equal belt speed on the *pitch* diameters: for a V-belt a little inside the rim (about 3 mm on the radius of
 * an A section, common practice). Example: 3600 rpm, 60 on 120 mm, no slip: 1800 rpm, belt 11.3 m/s.
 */
export function beltDrive({ driverRpm, driverMm, drivenMm, slip }: BeltDrive): {
  readonly drivenRpm: number;
  readonly beltSpeed: number;
} {
  requireWithin(slip, 0, 0.5, 'slip');
  const beltSpeed = tipSpeed(requirePositive(driverMm, 'driver'), driverRpm);
  const ratio = driverMm / requirePositive(drivenMm, 'driven');
  return { drivenRpm: driverRpm * ratio * (1 - slip), beltSpeed };
}

/** Frequency of a generator, Hz: rpm·poles/120. Exact without slip. Example: 3600 rpm, 2 poles: 60 Hz. */
export function generatorHz(rpm: number, poles: number): number {
  return (requireNotNegative(rpm, 'rpm') * requirePoles(poles)) / 120;
}

/** Speed that gives a frequency. Example: 50 Hz, 2 poles: 3000 rpm. */
export function rpmForHz(hz: number, poles: number): number {
  return (120 * requirePositive(hz, 'frequency')) / requirePoles(poles);
}

function requirePoles(poles: number): number {
  if (!Number.isInteger(poles / 2) || poles < 2)
    throw new EngineError(`poles come in pairs, 2 or more; got ${poles}.`, 'poles', poles);
  return poles;
}

/**
 * Droop of a governor as a part of the loaded speed: (no load − loaded)/loaded. Source: ISO 3046-4 (from memory).
 * Example: 3720 rpm falling to 3540: 0.051.
 */
export function droop(noLoadRpm: number, loadedRpm: number): number {
  requirePositive(loadedRpm, 'loaded');
  if (noLoadRpm < loadedRpm)
    throw new EngineError(
      `without load the engine turns no slower than loaded (${loadedRpm} rpm); got ${noLoadRpm} rpm.`,
      'noLoad',
      noLoadRpm,
    );
  return (noLoadRpm - loadedRpm) / loadedRpm;
}
