import { airGasConstant, flowFunction } from '../orifice.js';
import type { VolumeLaw } from '../volume-law.js';
import type { CrankedEngine, CrankingConditions, Sag } from './setup.js';

/** A rope pull reaches its top speed a little before one turn is out. */
const ropeFrom = 0.04;
export const ropeFullDeg = (1 - ropeFrom) * 360;

/** Compression at pull speed lies between isothermal and adiabatic; 0.1 either way moves a reading by about 1 %. */
const sagExponent = 1.25;

/** rpm at an angle of the pull. */
export type SpeedLaw = (angleDeg: number) => number;

/**
 * How fast the crank turns through a pull.
 *
 * Method: a rope speeds up under a constant force over its first turn; a starter is steady. Where a sag is given, hand
 * or starter keeps pace while its moment suffices; then flywheel and moment together push on against the gas, step by
 * step, and the speed comes back past top as the gas gives the work back. The gas follows p·V^1.25 = const·m^1.25,
 * where m is what leaks and an acting release have left of it: each vents by its own area and by the time that the pull
 * leaves it, so that a small release hardly lightens the pull. The speed never falls under the slowest that is given.
 * The energy of the flywheel is followed to 1 % (tested against a step ten times finer).
 * Example: side-valve of 65 × 62 mm by rope, 403 rpm: 87 rpm at the slowest, where the hand heaves it over.
 */
export function pullSpeed(
  engine: CrankedEngine,
  conditions: CrankingConditions,
  law: VolumeLaw,
  cycle: { readonly cycleDeg: number; readonly startDeg: number; readonly closedDeg: number },
): SpeedLaw {
  const { rpm, by, sags } = conditions;
  const { startDeg, cycleDeg, closedDeg } = cycle;
  const base =
    by === 'starter'
      ? () => rpm
      : (angle: number) => rpm * Math.sqrt(Math.min(1, ropeFrom + Math.max(0, angle - startDeg) / 360));
  if (!sags || sags.slowestRpm >= rpm) return base;
  const from = Math.max(1, closedDeg);
  const kept = smooth(partsKept(law, conditions, sags, from, stepDeg, ventOf(engine, rpm)), from, stepDeg);
  return (angle) => base(angle) * kept(angle - Math.round(angle / cycleDeg) * cycleDeg);
}

/** Coarser steps show in the reading: a degree by 0.3 %, a quarter by less than 0.1 %. */
const stepDeg = 0.125;

/** Effective area of what lets gas out so many degrees from top, m². */
type Vent = (fromTopDeg: number) => number;
const noVent: Vent = () => 0;

/** The leaks while the cylinder is shut, and a release while it acts. */
function ventOf({ release, leaks }: CrankedEngine, rpm: number): Vent {
  const { ringsMm2, intakeValveMm2, exhaustValveMm2, headGasketMm2 } = leaks;
  const always = (ringsMm2 + intakeValveMm2 + exhaustValveMm2 + headGasketMm2) * 1e-6;
  if (!release || rpm > (release.outAboveRpm ?? Number.POSITIVE_INFINITY)) return () => always;
  const { opensBeforeTop, closesBeforeTop, areaMm2 } = release;
  const acts = (angle: number) => angle >= -opensBeforeTop && angle < -closesBeforeTop;
  return (angle) => always + (acts(angle) ? areaMm2 * 1e-6 : 0);
}

/** The gas that a pull presses on: its pressure over crank angle, p·V^n = const·m^n. */
class Pressed {
  private kept = 1;
  pascal: number;
  private readonly firstM3: number;

  constructor(
    private readonly law: VolumeLaw,
    private readonly air: { readonly ambientPa: number; readonly airK: number },
    fromDeg: number,
    private readonly vent: Vent,
  ) {
    this.pascal = air.ambientPa;
    this.firstM3 = law.at(-fromDeg);
  }

  /** Work that it takes from the crank on the way from one angle to the next, J. */
  press(fromDeg: number, toDeg: number, rpm: number): number {
    const { law, air, vent, pascal } = this;
    const volume = law.at(toDeg);
    const area = vent(fromDeg);
    if (area > 0) this.kept -= this.vented(area, (toDeg - fromDeg) / (6 * rpm));
    const density = (this.kept * this.firstM3) / volume;
    this.pascal = air.ambientPa * Math.max(0, density) ** sagExponent;
    if (area > 0 && this.pascal < air.ambientPa) {
      this.kept = volume / this.firstM3;
      this.pascal = air.ambientPa;
    }
    return ((pascal + this.pascal) / 2 - air.ambientPa) * (law.at(fromDeg) - volume);
  }

  /** The part of the charge that goes in so many seconds; the gas is warmer by as much as p·V^n says. */
  private vented(area: number, seconds: number): number {
    const { ambientPa, airK } = this.air;
    const kelvin = airK * (this.pascal / ambientPa) ** (1 - 1 / sagExponent);
    const rate = (this.pascal / Math.sqrt(airGasConstant * kelvin)) * flowFunction(ambientPa / this.pascal);
    return (area * rate * seconds * airGasConstant * airK) / (ambientPa * this.firstM3);
  }
}

/** Speed over the pull's own from `fromDeg` before top to as much after it, step by step. */
export function partsKept(
  law: VolumeLaw,
  air: Pick<CrankingConditions, 'ambientPa' | 'airK' | 'rpm'>,
  { inertiaKgM2, stallNm, idleRpm, slowestRpm }: Sag,
  fromDeg: number,
  step = stepDeg,
  vent: Vent = noVent,
): readonly number[] {
  const { rpm } = air;
  const gas = new Pressed(law, air, fromDeg, vent);
  const stored = 0.5 * inertiaKgM2 * ((rpm * Math.PI) / 30) ** 2;
  const least = (slowestRpm / rpm) ** 2;
  const radians = (step * Math.PI) / 180;
  const parts = [1];
  let energy = 1;
  for (let angle = -fromDeg + step; angle < fromDeg + step; angle += step) {
    const now = rpm * Math.sqrt(energy);
    const taken = gas.press(angle - step, angle, now);
    const moment = stallNm * Math.max(0, 1 - now / idleRpm);
    energy = Math.min(1, Math.max(least, energy + (moment * radians - taken) / stored));
    parts.push(Math.sqrt(energy));
  }
  return parts;
}

/** A curve through the parts, a step apart, without corners (Catmull and Rom), 1 outside. */
function smooth(parts: readonly number[], fromDeg: number, step: number): (fromTopDeg: number) => number {
  // one more at the front and two at the end, so that the curve never reads beside the table
  const table = Float64Array.of(1, ...parts, 1, 1);
  const last = parts.length;
  return (fromTop) => {
    const at = (fromTop + fromDeg) / step;
    if (at <= 0 || at >= last) return 1;
    const i = Math.floor(at);
    const t = at - i;
    const a = table[i]!;
    const b = table[i + 1]!;
    const c = table[i + 2]!;
    const d = table[i + 3]!;
    return b + (t / 2) * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
  };
}
