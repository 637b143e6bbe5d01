import { positive, within } from './error.js';
import { minorExternalMm, type ThreadForm } from './thread-form.js';

/** Half the thread's included angle. */
const flankAngleRad = Math.PI / 6;

export interface Friction {
  /** thread friction coefficient f */
  readonly thread: number;
  /** friction coefficient under the head or nut, fc */
  readonly collar: number;
}

/** Mean thread diameter dm = (d + dr)/2 with the sharp-root dr of the handbook, mm. */
function meanDiameterMm(form: ThreadForm): number {
  return (form.majorMm + minorExternalMm(form, 'sharp-root')) / 2;
}

/**
 * N·m of torque per newton of clamp load, by the screw equation with thread and collar friction apart:
 * (dm/2)·(tan λ + f·sec α)/(1 − f·tan λ·sec α) + fc·dc/2, tan λ = P/(π·dm), α = 30°, dc = 1.25·d unless given.
 *
 * Source: Mechanical Engineering Design, 9th ed., Eq. 8-26. Validity: 0 ≤ f, fc ≤ 0.6; single-start 60° thread.
 * Special case: f = fc = 0 leaves T = F·P/2π, a frictionless screw.
 * Example: 3/4-16, 25 000 lbf, f = fc = 0.15 gives 3551 lbf·in.
 */
function torquePerNewton(form: ThreadForm, friction: Friction, collarMm: number): number {
  within(friction.thread, 0, 0.6, 'f');
  within(friction.collar, 0, 0.6, 'fc');
  positive(collarMm, 'dc', 'mm');
  const meanMm = meanDiameterMm(form);
  const lead = form.pitchMm / (Math.PI * meanMm);
  const slope = friction.thread / Math.cos(flankAngleRad);
  const threadMm = (meanMm / 2) * ((lead + slope) / (1 - lead * slope));
  return (threadMm + (friction.collar * collarMm) / 2) / 1000;
}

export const usualCollarMm = (form: ThreadForm) => 1.25 * form.majorMm;

/** Torque for a clamp load with the friction coefficients known, N·m. See `torquePerNewton` for source and validity. */
export function longFormTorque(
  form: ThreadForm,
  clampN: number,
  friction: Friction,
  collarMm = usualCollarMm(form),
): number {
  positive(clampN, 'clamp', 'N');
  return clampN * torquePerNewton(form, friction, collarMm);
}

/** Clamp load that a torque gives with the friction coefficients known, N. The inverse of `longFormTorque`. */
export function longFormClamp(
  form: ThreadForm,
  torqueNm: number,
  friction: Friction,
  collarMm = usualCollarMm(form),
): number {
  positive(torqueNm, 'torque', 'N·m');
  return torqueNm / torquePerNewton(form, friction, collarMm);
}

export interface TorqueParts {
  /** what stretches the bolt */
  readonly stretchNm: number;
  readonly threadNm: number;
  readonly collarNm: number;
}

/**
 * Where the torque goes: T = F·[P/2π + f·rt/cos α + fc·rb], rt = dm/2, rb = dc/2.
 *
 * Source: NASA RP-1228 and NASA-STD-5020 (from memory). A small-angle form: below Eq. 8-26 by less than 1.5 % for the
 * threads listed here at f ≤ 0.3. Typically one tenth stretches the bolt, the rest is friction.
 */
export function torqueParts(
  form: ThreadForm,
  clampN: number,
  friction: Friction,
  collarMm = usualCollarMm(form),
): TorqueParts {
  positive(clampN, 'clamp', 'N');
  const threadMm = (friction.thread * (meanDiameterMm(form) / 2)) / Math.cos(flankAngleRad);
  return {
    stretchNm: (clampN * form.pitchMm) / (2 * Math.PI * 1000),
    threadNm: (clampN * threadMm) / 1000,
    collarNm: (clampN * friction.collar * (collarMm / 2)) / 1000,
  };
}
