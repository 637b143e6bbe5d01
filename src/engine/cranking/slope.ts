import type { Slope } from '../dormand-prince.js';
import { airGamma, airGasConstant, criticalRatio } from '../orifice.js';
import type { Openings } from './exchange.js';
import type { SpeedLaw, VolumeLaw } from './pull-speed.js';
import type { CompressionGauge, CrankedEngine, CrankingConditions } from './setup.js';
import {
  cp,
  creviceKg,
  cv,
  cylinderJ,
  cylinderKg,
  gaugeKg,
  goneJ,
  heatJ,
  leakedKg,
  throughReleaseKg,
  throughValvesKg,
  workJ,
} from './state.js';
import { hohenbergBase } from './wall-heat.js';

const critical = criticalRatio();
const choked = Math.sqrt(airGamma * (2 / (airGamma + 1)) ** ((airGamma + 1) / (airGamma - 1)));
const phiFactor = (2 * airGamma) / (airGamma - 1);
const perGamma = 1 / airGamma;
const k = airGamma - 1;

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

/** The flow function with its laminar end; one power and one root where it is not choked. */
function flowLaw(laminarPart: number): (ratio: number) => number {
  const edge = 1 - laminarPart;
  const free = (r: number) => {
    const s = r ** perGamma;
    return Math.sqrt(phiFactor * (s * s - r * s));
  };
  const laminar = free(edge) / laminarPart;
  return (r) => (r <= critical ? choked : r < edge ? free(r) : laminar * (1 - r));
}

/** An adapter's bore of 5 mm has so much wall to its volume, m²/m³ (trade judgement, no source). */
const adapterWallPerM = 800;

/** Wall area beside the liner's: chamber, crown and the gauge's adapter, m². */
function fixedWall({ engine, gauge, law }: PullPhysics): number {
  const chamber = engine.chamberMm2 === undefined ? 2 * law.area : engine.chamberMm2 * 1e-6;
  return chamber + gauge.adapterMl * 1e-6 * adapterWallPerM;
}

/** Heat from the wall per second, W. */
function heatLaw(physics: PullPhysics): (state: CylinderState) => number {
  const { engine, conditions, law } = physics;
  const { heatFactor, wallK } = conditions;
  const fixed = fixedWall(physics);
  const linerPerM = (Math.PI * engine.boreMm) / 1000;
  const speedPerRpm = (4 * law.r) / 60;
  if (heatFactor === 0) return () => 0;
  return ({ pressure, kelvin, volume, travel, rpm }) =>
    heatFactor *
    hohenbergBase *
    Math.exp(
      0.8 * Math.log(pressure * 1e-5 * (speedPerRpm * rpm + 1.4)) -
        0.4 * Math.log(kelvin) -
        0.06 * Math.log(volume),
    ) *
    (fixed + linerPerM * travel) *
    (wallK - kelvin);
}

interface CylinderState {
  pressure: number;
  kelvin: number;
  volume: number;
  travel: number;
  rpm: number;
}

/**
 * d(state)/d(crank degree). One long function on purpose: it is called some ten thousand times a reading, and shares
 * the sines, the pressure and the flow function among all paths.
 */
export function slopeOf(physics: PullPhysics): Slope {
  const { engine, gauge, conditions, openings, law, speed, balance } = physics;
  const { cycleDeg, intakeM2, exhaustM2 } = openings;
  const { area, clearance, r, l } = law;
  const { ambientPa, airK, wallK } = conditions;
  const phi = flowLaw(physics.laminarPart);
  const { release, leaks } = engine;
  const alwaysM2 = (leaks.ringsMm2 + leaks.headGasketMm2) * 1e-6;
  const intakeLeakM2 = leaks.intakeValveMm2 * 1e-6;
  const exhaustLeakM2 = leaks.exhaustValveMm2 * 1e-6;
  const releaseM2 = (release?.areaMm2 ?? 0) * 1e-6;
  const releaseFrom = cycleDeg - (release?.opensBeforeTop ?? 0);
  const releaseTo = cycleDeg - (release?.closesBeforeTop ?? 0);
  const gaugeValveM2 = gauge.valveMm2 * 1e-6;
  const gaugePerKg = (airGasConstant * airK) / (gauge.hoseMl * 1e-6);
  const crevicePerPa = ((engine.creviceMl ?? 0) * 1e-6) / (airGasConstant * wallK);
  const inFactor = ambientPa / Math.sqrt(airGasConstant * airK);
  const wallHeat = heatLaw(physics);
  const here: CylinderState = { pressure: 0, kelvin: 0, volume: 0, travel: 0, rpm: 0 };
  return (angle, y, out) => {
    const radians = (angle * Math.PI) / 180;
    const sine = Math.sin(radians);
    const cosine = Math.cos(radians);
    const rodAcross = Math.sqrt(l * l - r * r * sine * sine);
    const travel = r * (1 - cosine) + l - rodAcross;
    const volume = clearance + area * travel;
    const volumePerDegree = (area * r * sine * (1 + (r * cosine) / rodAcross) * Math.PI) / 180;
    const turning = speed(angle);
    const secondsPerDegree = 1 / (6 * turning);
    const kg = y[cylinderKg]!;
    const pressure = (k * y[cylinderJ]!) / volume;
    const kelvin = y[cylinderJ]! / (kg * cv);
    const fromCylinder = pressure / Math.sqrt(airGasConstant * kelvin);

    const inCycle = angle % cycleDeg;
    const intake = intakeM2(inCycle);
    const exhaust = exhaustM2(inCycle);
    const valves = intake + exhaust;
    const leaking = alwaysM2 + (intake > 0 ? 0 : intakeLeakM2) + (exhaust > 0 ? 0 : exhaustLeakM2);
    const released =
      inCycle > releaseFrom && inCycle < releaseTo && turning <= (release?.outAboveRpm ?? turning)
        ? releaseM2
        : 0;
    const leaving = pressure > ambientPa;
    // per unit of area, out of the cylinder
    const flux = leaving
      ? fromCylinder * phi(ambientPa / pressure)
      : -inFactor * phi(Math.max(0, pressure / ambientPa));
    const kgPerDegree = flux * secondsPerDegree;

    const held = y[gaugeKg]! * gaugePerKg + gauge.opensAtPa;
    const toGauge =
      pressure > held ? gaugeValveM2 * fromCylinder * phi(held / pressure) * secondsPerDegree : 0;

    here.pressure = pressure;
    here.kelvin = kelvin;
    here.volume = volume;
    here.travel = travel;
    here.rpm = turning;
    const heat = wallHeat(here) * secondsPerDegree;

    const outKg = kgPerDegree * (valves + leaking + released);
    const goneByFlow = outKg * cp * (leaving ? kelvin : airK) + toGauge * cp * kelvin;
    const work = pressure * volumePerDegree;
    // the pressure's own rate first: the narrow spaces take gas in proportion to it, and give it back at wall temperature
    const drive = k * (heat - work - goneByFlow) - work;
    const creviceK = drive > 0 ? kelvin : wallK;
    const paPerDegree = drive / (volume + k * cp * creviceK * crevicePerPa);
    const toCrevice = crevicePerPa * paPerDegree;
    const gone = goneByFlow + toCrevice * cp * creviceK;
    out[cylinderKg] = -outKg - toGauge - toCrevice;
    out[cylinderJ] = heat - work - gone;
    out[gaugeKg] = toGauge;
    if (!balance) return;
    out[leakedKg] = kgPerDegree * leaking;
    out[throughValvesKg] = kgPerDegree * valves;
    out[throughReleaseKg] = kgPerDegree * released;
    out[creviceKg] = toCrevice;
    out[workJ] = work;
    out[heatJ] = heat;
    out[goneJ] = gone;
  };
}

/**
 * The same while a valve or port stands so wide open that the cylinder keeps the outside's pressure: what the volume
 * and the heat leave over flows through it. It takes away the fast settling that would hold the step to a degree.
 */
export function wideOpenSlopeOf(physics: PullPhysics): Slope {
  const { conditions, law, speed, balance, openings } = physics;
  const { cycleDeg, intakeM2, exhaustM2 } = openings;
  const { area, clearance, r, l } = law;
  const { ambientPa, airK } = conditions;
  const wallHeat = heatLaw(physics);
  const here: CylinderState = { pressure: ambientPa, kelvin: 0, volume: 0, travel: 0, rpm: 0 };
  return (angle, y, out) => {
    const radians = (angle * Math.PI) / 180;
    const sine = Math.sin(radians);
    const cosine = Math.cos(radians);
    const rodAcross = Math.sqrt(l * l - r * r * sine * sine);
    const travel = r * (1 - cosine) + l - rodAcross;
    const volume = clearance + area * travel;
    const swept = (area * r * sine * (1 + (r * cosine) / rodAcross) * Math.PI) / 180;
    const kelvin = (ambientPa * volume) / (airGasConstant * y[cylinderKg]!);
    here.kelvin = kelvin;
    here.volume = volume;
    here.travel = travel;
    here.rpm = speed(angle);
    const heat = wallHeat(here) / (6 * here.rpm);
    const inCycle = angle % cycleDeg;
    const through = (swept * 6 * here.rpm) / (intakeM2(inCycle) + exhaustM2(inCycle));
    // what the piston feels of the flow, ½ρu²; it heats the charge a little
    const lost =
      (0.5 * ambientPa * through * Math.abs(through)) / (airGasConstant * (swept > 0 ? airK : kelvin));
    const work = (ambientPa - lost) * swept;
    const filled = (ambientPa * swept) / k;
    const gone = heat - work - filled;
    const outKg = gone / (cp * (gone > 0 ? kelvin : airK));
    out[cylinderKg] = -outKg;
    out[cylinderJ] = filled;
    out[gaugeKg] = 0;
    if (!balance) return;
    out[leakedKg] = 0;
    out[throughValvesKg] = outKg;
    out[throughReleaseKg] = 0;
    out[creviceKg] = 0;
    out[workJ] = work;
    out[heatJ] = heat;
    out[goneJ] = gone;
  };
}
