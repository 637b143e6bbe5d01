import { airGamma, airGasConstant } from '../orifice.js';
import type { VolumeLaw } from '../volume-law.js';
import type { Openings } from './exchange.js';
import type { SpeedLaw } from './pull-speed.js';

/** Under this part of the outside's pressure the flow costs nothing worth following. */
const mostLost = 1e-2;
/** Degrees in which a difference of pressure settles; from here up the whole law is as cheap. */
const settlesWithinDeg = 1.2;
/** Shorter stretches are not worth a change of law, degrees. */
const shortest = 10;

/**
 * Stretches of a pull in which a valve or port stands so wide open that the cylinder keeps the outside's pressure, as
 * [from, to] in degrees of the pull.
 *
 * Method: degree by degree, by the pressure it takes to bring the swept air through the opening (½ρu², under 1 %) and
 * by how soon a difference settles (within 1.2°), both at the speed there. What it leaves out moves a reading by under
 * 3e-4 (tested), as the piston stands nearly still where the charge is closed in. Empty at high speed.
 */
export function wideOpenStretches(
  { cycleDeg, startDeg, intakeM2, exhaustM2 }: Openings,
  endDeg: number,
  law: VolumeLaw,
  speed: SpeedLaw,
  airK: number,
): readonly (readonly [from: number, to: number])[] {
  const gas = airGasConstant * airK;
  const fastest = Math.sqrt(2 * gas * mostLost);
  const settling = airGamma * Math.sqrt(gas) * settlingSlope * settlesWithinDeg;
  const wide = (angle: number) => {
    const inCycle = angle % cycleDeg;
    const area = intakeM2(inCycle) + exhaustM2(inCycle);
    if (area <= 0) return false;
    const perDegree = 6 * speed(angle);
    const swept = Math.abs(law.at(angle + 0.5) - law.at(angle - 0.5));
    return swept * perDegree < fastest * area && perDegree * law.at(angle) < settling * area;
  };
  const found: [number, number][] = [];
  for (let angle = startDeg; angle <= endDeg; angle += 1) {
    if (!wide(angle)) continue;
    const open = found.at(-1);
    if (open && open[1] === angle - 1) open[1] = angle;
    else found.push([angle, angle]);
  }
  return found.filter(([from, to]) => to - from >= shortest);
}

/** How steeply the orifice's flow rises with the difference of pressure, at a hundredth of it: φ(0.99)/0.01. */
const settlingSlope = 14.1;
