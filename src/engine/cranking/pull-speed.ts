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
 * or starter keeps pace while its moment suffices; then flywheel and moment together push on against the gas (work of
 * compression by p·V^1.25), degree by degree, and the speed comes back past top as the gas gives the work back. It
 * never falls under the slowest that is given. With a release the compression begins where that lets go. The energy of
 * the flywheel is followed to 1 % (tested against a step ten times finer).
 * Example: 65 × 62 mm, ratio 6, 455 rpm, 0.012 kg·m², 14 N·m at standstill and none at 910 rpm: 162 rpm at the slowest.
 */
export function pullSpeed(
  engine: CrankedEngine,
  conditions: CrankingConditions,
  law: VolumeLaw,
  cycle: { readonly cycleDeg: number; readonly startDeg: number; readonly closedDeg: number },
): SpeedLaw {
  const { rpm, by, sags } = conditions;
  const { startDeg, cycleDeg } = cycle;
  const base =
    by === 'starter'
      ? () => rpm
      : (angle: number) => rpm * Math.sqrt(Math.min(1, ropeFrom + Math.max(0, angle - startDeg) / 360));
  if (!sags || sags.slowestRpm >= rpm) return base;
  const from = compressionBegins(engine, rpm, cycle.closedDeg);
  const kept = smooth(partsKept(law, conditions, sags, from), from);
  return (angle) => base(angle) * kept(angle - Math.round(angle / cycleDeg) * cycleDeg);
}

/** Degrees before top from which the cylinder is shut: valve or port closed, and the release let go. */
function compressionBegins({ release }: CrankedEngine, rpm: number, closedDeg: number): number {
  const acting = release && (release.outAboveRpm === undefined || rpm <= release.outAboveRpm);
  return Math.max(1, acting ? Math.min(closedDeg, release.closesBeforeTop) : closedDeg);
}

/** Work that the gas has taken from the crank since it was shut in, J. */
function workOfCompression(
  law: VolumeLaw,
  ambientPa: number,
  fromDeg: number,
): (fromTopDeg: number) => number {
  const first = law.at(-fromDeg);
  const k = sagExponent - 1;
  return (angle) => {
    const volume = law.at(angle);
    return ((ambientPa * first) / k) * ((first / volume) ** k - 1) - ambientPa * (first - volume);
  };
}

/** Speed over the pull's own from `fromDeg` before top to as much after it, degree by degree. */
export function partsKept(
  law: VolumeLaw,
  { ambientPa, rpm }: Pick<CrankingConditions, 'ambientPa' | 'rpm'>,
  { inertiaKgM2, stallNm, idleRpm, slowestRpm }: Sag,
  fromDeg: number,
  stepDeg = 1,
): readonly number[] {
  const work = workOfCompression(law, ambientPa, fromDeg);
  const stored = 0.5 * inertiaKgM2 * ((rpm * Math.PI) / 30) ** 2;
  const least = (slowestRpm / rpm) ** 2;
  const radians = (stepDeg * Math.PI) / 180;
  const parts = [1];
  let energy = 1;
  let taken = work(-fromDeg);
  for (let angle = -fromDeg + stepDeg; angle < fromDeg + stepDeg; angle += stepDeg) {
    const nextTaken = work(angle);
    const moment = stallNm * Math.max(0, 1 - (rpm * Math.sqrt(energy)) / idleRpm);
    energy = Math.min(1, Math.max(least, energy + (moment * radians - (nextTaken - taken)) / stored));
    taken = nextTaken;
    parts.push(Math.sqrt(energy));
  }
  return parts;
}

/** A curve through the parts, a degree apart, without corners (Catmull and Rom), 1 outside. */
function smooth(parts: readonly number[], fromDeg: number): (fromTopDeg: number) => number {
  // one more at the front and two at the end, so that the curve never reads beside the table
  const table = Float64Array.of(1, ...parts, 1, 1);
  const last = parts.length;
  return (fromTop) => {
    const at = fromTop + fromDeg;
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
