import { DormandPrince, type Slope } from '../dormand-prince.js';
import { airGamma, airGasConstant, criticalRatio } from '../orifice.js';
import { displacementCc } from '../slider-crank.js';
import { type Openings, openingsOf } from './exchange.js';
import {
  type CompressionGauge,
  type CrankedEngine,
  type CrankingConditions,
  requireCranking,
} from './setup.js';
import { wallHeatCoefficient } from './wall-heat.js';

export interface CrankingResult {
  /** over the air outside, after the last pull */
  readonly readingPa: number;
  readonly readingsPa: readonly number[];
  /** highest absolute pressure in the cylinder during the last pull */
  readonly peakPa: number;
  /** when asked for */
  readonly balance?: Balance;
  /** accepted steps of the integrator */
  readonly steps: number;
}

/** Sums over all pulls. Mass: cylinder + gauge + out = 0. Energy: cylinder + work + gone − heat = 0. */
export interface Balance {
  readonly cylinderKg: number;
  readonly gaugeKg: number;
  readonly leakedKg: number;
  readonly throughValvesKg: number;
  readonly throughReleaseKg: number;
  readonly cylinderJ: number;
  readonly workJ: number;
  readonly heatJ: number;
  /** enthalpy that left with the gas, net */
  readonly goneJ: number;
}

export interface CrankingOptions {
  /** keep the sums of mass and energy along the way; a third slower */
  readonly balance?: boolean;
  /** 1e-5 stands; the reading is then within 2e-4 of the converged one (tested) */
  readonly relativeTolerance?: number;
  /** sees every step of the last pull; angle in degrees from where the pull began plus `startDeg` */
  readonly each?: (point: TracePoint) => void;
  /**
   * Nearer than this part of equal pressures an orifice is taken as laminar (flow in proportion to the difference),
   * which takes the infinite slope out of the square root. 0.01 stands; ten times less moves a reading by under 0.1 %.
   */
  readonly laminarPart?: number;
}

export interface TracePoint {
  /** degrees after firing top (two-stroke: after top), rising through the pull */
  readonly angleDeg: number;
  readonly cylinderPa: number;
  readonly gaugePa: number;
  readonly kelvin: number;
}

const cv = airGasConstant / (airGamma - 1);
const cp = cv + airGasConstant;
const critical = criticalRatio();
const choked = Math.sqrt(airGamma * (2 / (airGamma + 1)) ** ((airGamma + 1) / (airGamma - 1)));
const phiFactor = (2 * airGamma) / (airGamma - 1);
const perGamma = 1 / airGamma;

/** What rides in the state vector: the first three steer the step, the rest are sums for the balance. */
const cylinderKg = 0;
const cylinderJ = 1;
const gaugeKg = 2;
const leakedKg = 3;
const throughValvesKg = 4;
const throughReleaseKg = 5;
const workJ = 6;
const heatJ = 7;
const goneJ = 8;
const steering = 3;
const withSums = 9;

/**
 * What a compression gauge reads when this engine is turned over, and how the gas got there.
 *
 * Method: mass and internal energy of the air in the cylinder and the air in the gauge over crank angle; slider-crank
 * volume; valves or ports, leaks and release as orifices to the outside, choked or not; wall heat by Woschni; a check
 * valve into the gauge, whose air stays at room temperature. Dormand–Prince 5(4), every event ending a stretch.
 * Simplified: perfect air with γ 1.4 (real air at 600 K: 1.376, peak pressure about 1 % less); throttle open, both
 * ports at the outside's pressure; a two-stroke's crankcase likewise; the speed is given and does not sag on
 * compression; each pull begins with the cylinder full of outside air. Validity: 20 to 3000 rpm. The integration is
 * within 2e-4 of the converged reading; what the model leaves out and what is not known about the engine is far more:
 * `expectedCompression` states it. Throws EngineError naming the field.
 * Example: 65 × 62 mm, rod 100 mm, ratio 8, no leak, no heat, valves instant at the dead centers, no gauge flow: peak
 * 8^1.4 = 18.38 times the outside's pressure.
 */
export function crank(
  engine: CrankedEngine,
  gauge: CompressionGauge,
  conditions: CrankingConditions,
  options: CrankingOptions = {},
): CrankingResult {
  requireCranking(engine, gauge, conditions);
  return new Cranking(engine, gauge, conditions, options).run();
}

class Cranking {
  private readonly openings: Openings;
  private readonly solver: DormandPrince;
  private readonly state: Float64Array;
  private readonly sums: Float64Array;
  private readonly startVolume: number;
  private peakPa = 0;

  constructor(
    private readonly engine: CrankedEngine,
    private readonly gauge: CompressionGauge,
    private readonly conditions: CrankingConditions,
    private readonly options: CrankingOptions,
  ) {
    this.openings = openingsOf(engine.exchange, engine);
    const size = options.balance ? withSums : steering;
    this.state = new Float64Array(size);
    this.sums = new Float64Array(size);
    this.startVolume = volumeLaw(engine, gauge).at(this.openings.startDeg);
    const { ambientPa, airK } = conditions;
    const fullKg = (ambientPa * this.startVolume) / (airGasConstant * airK);
    this.solver = new DormandPrince(slopeOf(engine, gauge, conditions, this.openings, options), size, {
      relative: options.relativeTolerance ?? 1e-5,
      absolute: [1e-9 * fullKg, 1e-9 * fullKg * cv * airK, 1e-9 * fullKg],
      largestStep: 30,
      controlled: steering,
    });
  }

  run(): CrankingResult {
    const { ambientPa, airK, pulls } = this.conditions;
    const perKg = (airGasConstant * airK) / (this.gauge.hoseMl * 1e-6);
    this.state[gaugeKg] = ambientPa / perKg;
    const readingsPa: number[] = [];
    for (let pull = 1; pull <= pulls; pull += 1) {
      this.pull(pull === pulls);
      readingsPa.push(this.state[gaugeKg]! * perKg - ambientPa);
    }
    const readingPa = readingsPa.at(-1)!;
    return {
      ...{ readingPa, readingsPa, peakPa: this.peakPa, steps: this.solver.steps },
      ...(this.options.balance && { balance: this.balance() }),
    };
  }

  private pull(last: boolean): void {
    const { state, sums } = this;
    const { ambientPa, airK, turnsPerPull } = this.conditions;
    const before = state[gaugeKg]!;
    state.fill(0);
    state[cylinderKg] = (ambientPa * this.startVolume) / (airGasConstant * airK);
    state[cylinderJ] = state[cylinderKg]! * cv * airK;
    state[gaugeKg] = before;
    const started = state.slice();
    this.stretches(this.openings.startDeg, this.openings.startDeg + 360 * turnsPerPull, last);
    for (let i = 0; i < sums.length; i += 1) sums[i]! += state[i]! - started[i]!;
  }

  private stretches(from: number, to: number, last: boolean): void {
    const watch = last ? this.watcher() : undefined;
    let at = from;
    let step = 2;
    for (const end of [...breaksBetween(from, to, this.openings, this.engine), to]) {
      if (end > at)
        step = this.solver.run(this.state, at, end, step, watch, largestStepAt(at, this.openings));
      at = Math.max(at, end);
    }
  }

  private watcher(): (angle: number, y: Float64Array) => void {
    const volume = volumeLaw(this.engine, this.gauge);
    const perKg = (airGasConstant * this.conditions.airK) / (this.gauge.hoseMl * 1e-6);
    return (angleDeg, y) => {
      const cylinderPa = ((airGamma - 1) * y[cylinderJ]!) / volume.at(angleDeg);
      if (cylinderPa > this.peakPa) this.peakPa = cylinderPa;
      this.options.each?.({
        angleDeg,
        cylinderPa,
        gaugePa: y[gaugeKg]! * perKg,
        kelvin: y[cylinderJ]! / (y[cylinderKg]! * cv),
      });
    };
  }

  private balance(): Balance {
    const at = (i: number) => this.sums[i]!;
    return {
      cylinderKg: at(cylinderKg),
      gaugeKg: at(gaugeKg),
      leakedKg: at(leakedKg),
      throughValvesKg: at(throughValvesKg),
      throughReleaseKg: at(throughReleaseKg),
      cylinderJ: at(cylinderJ),
      workJ: at(workJ),
      heatJ: at(heatJ),
      goneJ: at(goneJ),
    };
  }
}

/**
 * The check valve opens for a few degrees about top and ever shorter as the gauge fills: a long step would pass over it
 * unseen by the error estimate.
 */
const nearTopDeg = 36;
const stepNearTopDeg = 1;

function largestStepAt(angle: number, { cycleDeg }: Openings): number {
  const inCycle = angle % cycleDeg;
  return inCycle < nearTopDeg || inCycle >= cycleDeg - nearTopDeg ? stepNearTopDeg : 30;
}

/** A rope pull reaches its top speed a little before one turn is out. */
const ropeFrom = 0.04;
const ropeFullDeg = (1 - ropeFrom) * 360;

/** Every angle of the pull where the slope changes its law, in rising order; the tops too, where the peak is read. */
function breaksBetween(
  from: number,
  to: number,
  { cycleDeg, breaksDeg }: Openings,
  { release }: CrankedEngine,
): number[] {
  const top = cycleDeg;
  const within = [
    0,
    nearTopDeg,
    top - nearTopDeg,
    ...breaksDeg,
    ...(release ? [top - release.opensBeforeTop, top - release.closesBeforeTop] : []),
  ];
  const found = [from + ropeFullDeg];
  for (let cycle = 0; cycle * cycleDeg < to; cycle += 1)
    for (const angle of within) found.push(cycle * cycleDeg + (angle % cycleDeg));
  return found.filter((angle) => angle > from && angle < to).sort((p, q) => p - q);
}

function volumeLaw(engine: CrankedEngine, { adapterMl }: CompressionGauge) {
  const swept = displacementCc(engine) * 1e-6;
  const clearance = swept / (engine.compressionRatio - 1) + adapterMl * 1e-6;
  const r = engine.strokeMm / 2000;
  const l = engine.rodMm / 1000;
  const area = swept / (2 * r);
  return {
    area,
    clearance,
    r,
    l,
    at(angleDeg: number): number {
      const angle = (angleDeg * Math.PI) / 180;
      const across = r * Math.sin(angle);
      return clearance + area * (r * (1 - Math.cos(angle)) + l - Math.sqrt(l * l - across * across));
    },
  };
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

/**
 * d(state)/d(crank degree). One long function on purpose: it is called some hundred thousand times a reading, and
 * shares the sines, the pressure and the flow function among all paths.
 */
function slopeOf(
  engine: CrankedEngine,
  gauge: CompressionGauge,
  conditions: CrankingConditions,
  { cycleDeg, startDeg, intakeM2, exhaustM2 }: Openings,
  { laminarPart = 0.01, balance = false }: CrankingOptions,
): Slope {
  const { area, clearance, r, l } = volumeLaw(engine, gauge);
  const { ambientPa, airK, wallK, rpm, by, heatFactor } = conditions;
  const phi = flowLaw(laminarPart);
  const { release, leaks } = engine;
  const alwaysM2 = (leaks.ringsMm2 + leaks.headGasketMm2) * 1e-6;
  const intakeLeakM2 = leaks.intakeValveMm2 * 1e-6;
  const exhaustLeakM2 = leaks.exhaustValveMm2 * 1e-6;
  const releaseM2 = (release?.areaMm2 ?? 0) * 1e-6;
  const releaseFrom = cycleDeg - (release?.opensBeforeTop ?? 0);
  const releaseTo = cycleDeg - (release?.closesBeforeTop ?? 0);
  const gaugeValveM2 = gauge.valveMm2 * 1e-6;
  const gaugePerKg = (airGasConstant * airK) / (gauge.hoseMl * 1e-6);
  const boreM = engine.boreMm / 1000;
  const crownM2 = 2 * area;
  const heatBase = { closed: heatAt(boreM, r, false), open: heatAt(boreM, r, true) };
  const inFactor = ambientPa / Math.sqrt(airGasConstant * airK);
  const steadyPower = rpm ** 0.8;
  const speed = (angle: number) =>
    by === 'starter' ? rpm : rpm * Math.sqrt(Math.min(1, ropeFrom + Math.max(0, angle - startDeg) / 360));
  return (angle, y, out) => {
    const turning = speed(angle);
    const secondsPerDegree = 1 / (6 * turning);
    const radians = (angle * Math.PI) / 180;
    const sine = Math.sin(radians);
    const cosine = Math.cos(radians);
    const rodAcross = Math.sqrt(l * l - r * r * sine * sine);
    const travel = r * (1 - cosine) + l - rodAcross;
    const volume = clearance + area * travel;
    const volumePerDegree = (area * r * sine * (1 + (r * cosine) / rodAcross) * Math.PI) / 180;
    const kg = y[cylinderKg]!;
    const pressure = ((airGamma - 1) * y[cylinderJ]!) / volume;
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

    const coefficient =
      (valves > 0 ? heatBase.open : heatBase.closed) *
      (turning === rpm ? steadyPower : turning ** 0.8) *
      Math.exp(0.8 * Math.log(pressure) - 0.55 * Math.log(kelvin));
    const wall = crownM2 + Math.PI * boreM * travel;
    const heat = heatFactor * coefficient * wall * (wallK - kelvin) * secondsPerDegree;

    const total = valves + leaking + released;
    const outKg = kgPerDegree * total;
    const gone = outKg * cp * (leaving ? kelvin : airK) + toGauge * cp * kelvin;
    const work = pressure * volumePerDegree;
    out[cylinderKg] = -outKg - toGauge;
    out[cylinderJ] = heat - work - gone;
    out[gaugeKg] = toGauge;
    if (!balance) return;
    out[leakedKg] = kgPerDegree * leaking;
    out[throughValvesKg] = kgPerDegree * valves;
    out[throughReleaseKg] = kgPerDegree * released;
    out[workJ] = work;
    out[heatJ] = heat;
    out[goneJ] = gone;
  };
}

/** Woschni's coefficient at 1 Pa, 1 K and 1 rpm: what does not change over the cycle. */
function heatAt(boreM: number, throwM: number, open: boolean): number {
  return wallHeatCoefficient({ boreM, kPa: 1e-3, kelvin: 1, pistonSpeed: (4 * throwM) / 60, open });
}
