import type { Slope } from '../dormand-prince.js';
import { airGasConstant, chokedFlow, criticalRatio, freeFlow } from '../orifice.js';
import type { Place, VolumeLaw } from '../volume-law.js';
import { hohenbergCoefficient } from '../wall-heat.js';
import type { Openings } from './exchange.js';
import type { SpeedLaw } from './pull-speed.js';
import type { CompressionGauge, CrankedEngine, CrankingConditions } from './setup.js';
import { cp, cv, cylinderJ, cylinderKg, gammaLess1, gaugeKg, leakedKg } from './state.js';

/** Everything that the slope of a pull hangs on. */
export interface PullPhysics {
  readonly engine: CrankedEngine;
  readonly gauge: CompressionGauge;
  readonly conditions: CrankingConditions;
  readonly openings: Openings;
  readonly law: VolumeLaw;
  readonly speed: SpeedLaw;
  readonly laminarPart: number;
  readonly balance: boolean;
}

/** What a slope works out on the way: one each, filled anew at every call, so that nothing is allocated. */
interface Moment extends Place {
  rpm: number;
  inCycleDeg: number;
  intakeM2: number;
  exhaustM2: number;
  pascal: number;
  kelvin: number;
}

const nowhere: Moment = {
  ...{ travelM: 0, volumeM3: 0, perDegreeM3: 0, rpm: 0, inCycleDeg: 0 },
  ...{ intakeM2: 0, exhaustM2: 0, pascal: 0, kelvin: 0 },
};

/** Fills in what the angle alone tells. */
function looking({ law, speed, openings }: PullPhysics): (angleDeg: number, here: Moment) => void {
  const { cycleDeg, intakeM2, exhaustM2 } = openings;
  return (angleDeg, here) => {
    law.place(angleDeg, here);
    here.rpm = speed(angleDeg);
    here.inCycleDeg = angleDeg % cycleDeg;
    here.intakeM2 = intakeM2(here.inCycleDeg);
    here.exhaustM2 = exhaustM2(here.inCycleDeg);
  };
}

/** The flow function with its laminar end; one power and one root where it is not choked. */
function flowLaw(laminarPart: number): (ratio: number) => number {
  const critical = criticalRatio();
  const edge = 1 - laminarPart;
  const laminar = freeFlow(edge) / laminarPart;
  return (r) => (r <= critical ? chokedFlow : r < edge ? freeFlow(r) : laminar * (1 - r));
}

/** Effective area of all leaks, m²: a valve's counts while that valve is down. */
function leakLaw({ ringsMm2, headGasketMm2, intakeValveMm2, exhaustValveMm2 }: CrankedEngine['leaks']) {
  const [always, intake, exhaust] = [ringsMm2 + headGasketMm2, intakeValveMm2, exhaustValveMm2].map(
    (mm2) => mm2 * 1e-6,
  ) as [number, number, number];
  return (here: Moment) => always + (here.intakeM2 > 0 ? 0 : intake) + (here.exhaustM2 > 0 ? 0 : exhaust);
}

/** Effective area that an automatic release holds open, m². */
function releaseLaw(release: CrankedEngine['release'], cycleDeg: number): (here: Moment) => number {
  if (!release) return () => 0;
  const areaM2 = release.areaMm2 * 1e-6;
  const from = cycleDeg - release.opensBeforeTop;
  const to = cycleDeg - release.closesBeforeTop;
  const { outAboveRpm = Number.POSITIVE_INFINITY } = release;
  return ({ inCycleDeg, rpm }) => (inCycleDeg > from && inCycleDeg < to && rpm <= outAboveRpm ? areaM2 : 0);
}

/** An adapter's bore of 5 mm has so much wall to its volume, m²/m³ (trade judgement, no source). */
const adapterWallPerM = 800;

/** Heat from the walls (chamber, crown, the gauge's adapter and the uncovered liner), W. */
function heatLaw({ engine, gauge, conditions, law }: PullPhysics): (here: Moment) => number {
  const { heatFactor, wallK } = conditions;
  const chamberM2 = engine.chamberMm2 === undefined ? 2 * law.areaM2 : engine.chamberMm2 * 1e-6;
  const fixedM2 = chamberM2 + gauge.adapterMl * 1e-6 * adapterWallPerM;
  const linerPerM = (Math.PI * engine.boreMm) / 1000;
  const speedPerRpm = (4 * law.throwM) / 60;
  if (heatFactor === 0) return () => 0;
  return ({ pascal, kelvin, volumeM3, travelM, rpm }) => {
    const pistonSpeed = speedPerRpm * rpm;
    const h = hohenbergCoefficient({ volumeM3, bar: pascal * 1e-5, kelvin, pistonSpeed });
    return heatFactor * h * (fixedM2 + linerPerM * travelM) * (wallK - kelvin);
  };
}

/**
 * d(state)/d(crank degree) with every flow followed: valves, leaks, release and check valve as orifices, heat from the
 * walls, gas into and out of the narrow spaces. Called some ten thousand times a reading.
 */
export function slopeOf(physics: PullPhysics): Slope {
  const { engine, gauge, conditions, openings, balance } = physics;
  const { ambientPa, airK, wallK } = conditions;
  const [look, phi, wallHeat] = [looking(physics), flowLaw(physics.laminarPart), heatLaw(physics)];
  const [leaks, release] = [leakLaw(engine.leaks), releaseLaw(engine.release, openings.cycleDeg)];
  const gaugeValveM2 = gauge.valveMm2 * 1e-6;
  const gaugePerKg = (airGasConstant * airK) / (gauge.hoseMl * 1e-6);
  const crevicePerPa = ((engine.creviceMl ?? 0) * 1e-6) / (airGasConstant * wallK);
  const inward = ambientPa / Math.sqrt(airGasConstant * airK);
  const here = { ...nowhere };
  return (angle, y, out) => {
    look(angle, here);
    const pascal = (gammaLess1 * y[cylinderJ]!) / here.volumeM3;
    const kelvin = y[cylinderJ]! / (y[cylinderKg]! * cv);
    here.pascal = pascal;
    here.kelvin = kelvin;
    const secondsPerDegree = 1 / (6 * here.rpm);
    const outward = pascal / Math.sqrt(airGasConstant * kelvin);
    const valves = here.intakeM2 + here.exhaustM2;
    const leaking = leaks(here);
    const released = release(here);
    const leaving = pascal > ambientPa;
    // per unit of area, out of the cylinder
    const flux = leaving ? outward * phi(ambientPa / pascal) : -inward * phi(Math.max(0, pascal / ambientPa));
    const kgPerDegree = flux * secondsPerDegree;
    const held = y[gaugeKg]! * gaugePerKg + gauge.opensAtPa;
    const toGauge = pascal > held ? gaugeValveM2 * outward * phi(held / pascal) * secondsPerDegree : 0;
    const heat = wallHeat(here) * secondsPerDegree;
    const outKg = kgPerDegree * (valves + leaking + released);
    const goneByFlow = outKg * cp * (leaving ? kelvin : airK) + toGauge * cp * kelvin;
    const work = pascal * here.perDegreeM3;
    // the pressure's own rate first: the narrow spaces take gas in proportion to it, and give it back at wall temperature
    const drive = gammaLess1 * (heat - work - goneByFlow) - work;
    const creviceK = drive > 0 ? kelvin : wallK;
    const toCrevice = crevicePerPa * (drive / (here.volumeM3 + gammaLess1 * cp * creviceK * crevicePerPa));
    const gone = goneByFlow + toCrevice * cp * creviceK;
    out[cylinderKg] = -outKg - toGauge - toCrevice;
    out[cylinderJ] = heat - work - gone;
    out[gaugeKg] = toGauge;
    if (!balance) return;
    const through = [leaking, valves, released].map((areaM2) => kgPerDegree * areaM2);
    out.set([...through, toCrevice, work, heat, gone], leakedKg);
  };
}

/**
 * The same while a valve or port stands so wide open that the cylinder keeps the outside's pressure: what the volume
 * and the heat leave over flows through it. It takes away the fast settling that would hold the step to a degree.
 */
export function wideOpenSlopeOf(physics: PullPhysics): Slope {
  const { conditions, balance } = physics;
  const { ambientPa, airK } = conditions;
  const [look, wallHeat] = [looking(physics), heatLaw(physics)];
  const here = { ...nowhere, pascal: ambientPa };
  return (angle, y, out) => {
    look(angle, here);
    const { perDegreeM3, volumeM3, rpm } = here;
    const kelvin = (ambientPa * volumeM3) / (airGasConstant * y[cylinderKg]!);
    here.kelvin = kelvin;
    const heat = wallHeat(here) / (6 * rpm);
    const through = (perDegreeM3 * 6 * rpm) / (here.intakeM2 + here.exhaustM2);
    // what the piston feels of the flow, ½ρu²; it heats the charge a little
    const lost =
      (0.5 * ambientPa * through * Math.abs(through)) / (airGasConstant * (perDegreeM3 > 0 ? airK : kelvin));
    const work = (ambientPa - lost) * perDegreeM3;
    const filled = (ambientPa * perDegreeM3) / gammaLess1;
    const gone = heat - work - filled;
    const outKg = gone / (cp * (gone > 0 ? kelvin : airK));
    out[cylinderKg] = -outKg;
    out[cylinderJ] = filled;
    out[gaugeKg] = 0;
    if (balance) out.set([0, outKg, 0, 0, work, heat, gone], leakedKg);
  };
}
