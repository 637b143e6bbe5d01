import { type Drill, type DrillSet, nearestDrill } from './drills.js';
import { within } from './error.js';
import type { ThreadForm } from './thread-form.js';

/** Twice 0.649519·P: the depth that the percent-of-thread rule counts as a full thread. */
const fullThreadPerPitch = (3 * Math.sqrt(3)) / 4;

/**
 * Hole to drill for a tapped thread of the given percentage, mm: d − 1.299038·P·percent/100.
 *
 * Source: the percent-of-thread rule of the tap makers' tables; inch form d − 0.01299·percent/n.
 * Validity: 1 to 100 %. 83 % is the basic minor diameter; a hole for more than about 80 % breaks taps.
 * Example: 1/4-20 at 75 % gives 0.2013 in (drill #7, 0.2010).
 */
export function tapHoleMm({ majorMm, pitchMm }: ThreadForm, percent = 75): number {
  within(percent, 1, 100, 'percent', '%');
  return majorMm - (fullThreadPerPitch * pitchMm * percent) / 100;
}

/** The percentage of thread that a hole leaves; above 100 or below 0 no proper thread can be cut. */
export function percentOfThread({ majorMm, pitchMm }: ThreadForm, holeMm: number): number {
  return (100 * (majorMm - holeMm)) / (fullThreadPerPitch * pitchMm);
}

export interface TapDrill {
  readonly holeMm: number;
  readonly inch: DrillChoice;
  readonly metric: DrillChoice;
}
export interface DrillChoice {
  readonly drill: Drill;
  /** percentage of thread that this very drill leaves */
  readonly percent: number;
}

function choose(form: ThreadForm, holeMm: number, set: DrillSet): DrillChoice {
  const drill = nearestDrill(holeMm, set);
  return { drill, percent: percentOfThread(form, drill.diameterMm) };
}

/**
 * The hole by the percent-of-thread rule and the nearest drill of each set.
 * Example: M8×1.25 at 75 % gives 6.78 mm, the 6.8 mm drill.
 */
export function tapDrill(form: ThreadForm, percent = 75): TapDrill {
  const holeMm = tapHoleMm(form, percent);
  return { holeMm, inch: choose(form, holeMm, 'inch'), metric: choose(form, holeMm, 'metric') };
}
