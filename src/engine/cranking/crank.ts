import { DormandPrince } from '../dormand-prince.js';
import { airGamma, airGasConstant } from '../orifice.js';
import { volumeLaw } from '../volume-law.js';
import { type Openings, openingsOf } from './exchange.js';
import { pullSpeed, ropeFullDeg } from './pull-speed.js';
import {
  type CompressionGauge,
  type CrankedEngine,
  type CrankingConditions,
  requireCranking,
} from './setup.js';
import { type PullPhysics, slopeOf, wideOpenSlopeOf } from './slope.js';
import {
  type Balance,
  balanceOf,
  cp,
  cv,
  cylinderJ,
  cylinderKg,
  gammaLess1,
  gaugeKg,
  goneJ,
  steering,
  throughValvesKg,
  withSums,
} from './state.js';
import { wideOpenStretches } from './wide-open.js';

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

export interface CrankingOptions {
  /** keep the sums of mass and energy along the way; some two times slower */
  readonly balance?: boolean;
  /** 1e-5 stands, with a release 1e-6; the reading is then within 5e-4 of the converged one (tested) */
  readonly relativeTolerance?: number;
  /** sees every step of the last pull; angle in degrees from where the pull began plus `startDeg` */
  readonly each?: (point: TracePoint) => void;
  /**
   * Nearer than this part of equal pressures an orifice is taken as laminar (flow in proportion to the difference),
   * which takes the infinite slope out of the square root. 0.01 stands; ten times less moves a reading by under 0.1 %.
   */
  readonly laminarPart?: number;
  /** follow the flow through valves wide open too, where the cylinder else keeps the outside's pressure; for checks */
  readonly everyFlow?: boolean;
}

export interface TracePoint {
  /** degrees after firing top (two-stroke: after top), rising through the pull */
  readonly angleDeg: number;
  readonly cylinderPa: number;
  readonly gaugePa: number;
  readonly kelvin: number;
}

/**
 * What a compression gauge reads when this engine is turned over, and how the gas got there.
 *
 * Method: mass and internal energy of the air in the cylinder and the air in the gauge over crank angle; slider-crank
 * volume; valves or ports, leaks and release as orifices to the outside, choked or not, wide-open ones at the outside's
 * pressure; wall heat by Hohenberg; narrow spaces that hold gas at wall temperature; a pull that sags on compression
 * (`pullSpeed`); a check valve into the gauge, whose air stays at room temperature. Dormand–Prince 5(4), every event
 * ending a stretch. Pulls are alike until the check valve lifts, so that each is taken up from there.
 * Simplified: perfect air with γ 1.4 (real air at 600 K: 1.376, peak pressure about 1 % less); throttle open, both
 * ports at the outside's pressure; a two-stroke's crankcase likewise; each pull begins with the cylinder full of outside
 * air. Validity: 20 to 3000 rpm. The integration is within 3e-4 of the converged reading; what the model leaves out and
 * what is not known about the engine is far more: `expectedCompression` states it. Throws EngineError naming the field.
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

/** A state of the pull with the gauge shut off, from which a pull can be taken up. */
interface Station {
  readonly angleDeg: number;
  readonly pascal: number;
  readonly state: Float64Array;
}

type Watch = (angleDeg: number, y: Float64Array) => void;

/** After the last top the pressure only falls; so far at a time it is looked whether the check valve is down for good. */
const pastTopDeg = 20;

class Cranking {
  private readonly physics: PullPhysics;
  private readonly openings: Openings;
  private readonly wide: readonly (readonly [number, number])[];
  private readonly state: Float64Array;
  private readonly sums: Float64Array;
  private readonly relative: number;
  private readonly endDeg: number;
  private readonly gaugePaPerKg: number;
  private readonly whole: DormandPrince;
  private readonly wideOpen: DormandPrince;
  private peakPa = 0;

  constructor(
    engine: CrankedEngine,
    gauge: CompressionGauge,
    private readonly conditions: CrankingConditions,
    private readonly options: CrankingOptions,
  ) {
    const law = volumeLaw(engine, engine.compressionRatio, gauge.adapterMl);
    this.relative = options.relativeTolerance ?? (engine.release ? 1e-6 : 1e-5);
    this.openings = openingsOf(engine.exchange, engine);
    this.physics = {
      ...{ engine, gauge, conditions, law, openings: this.openings },
      speed: pullSpeed(engine, conditions, law, this.openings),
      laminarPart: options.laminarPart ?? 0.01,
      balance: options.balance ?? false,
    };
    this.state = new Float64Array(options.balance ? withSums : steering);
    this.sums = new Float64Array(this.state.length);
    this.endDeg = this.openings.startDeg + 360 * conditions.turnsPerPull;
    this.wide = options.everyFlow
      ? []
      : wideOpenStretches(this.openings, this.endDeg, law, this.physics.speed, conditions.airK);
    this.gaugePaPerKg = (airGasConstant * conditions.airK) / (gauge.hoseMl * 1e-6);
    this.whole = this.solver(slopeOf(this.physics));
    this.wideOpen = this.solver(wideOpenSlopeOf(this.physics));
  }

  private solver(slope: ReturnType<typeof slopeOf>): DormandPrince {
    const fullKg = this.fullKg();
    return new DormandPrince(slope, this.state.length, {
      relative: this.relative,
      absolute: [1e-9 * fullKg, 1e-9 * fullKg * cv * this.conditions.airK, 1e-9 * fullKg],
      largestStep: 30,
      controlled: steering,
    });
  }

  /** The cylinder full of outside air where a pull begins. */
  private fullKg(): number {
    const { ambientPa, airK } = this.conditions;
    return (ambientPa * this.physics.law.at(this.openings.startDeg)) / (airGasConstant * airK);
  }

  run(): CrankingResult {
    const { ambientPa, pulls } = this.conditions;
    const shut = this.pullWithGaugeShut();
    let held = ambientPa / this.gaugePaPerKg;
    const readingsPa: number[] = [];
    for (let pull = 1; pull <= pulls; pull += 1) {
      held = this.pull(shut, held, pull === pulls);
      readingsPa.push(held * this.gaugePaPerKg - ambientPa);
    }
    return {
      ...{ readingPa: readingsPa.at(-1)!, readingsPa, peakPa: this.peakPa },
      steps: this.whole.steps + this.wideOpen.steps,
      ...(this.options.balance && { balance: balanceOf(this.sums) }),
    };
  }

  private pullWithGaugeShut(): readonly Station[] {
    const { state, openings } = this;
    const gauge = { ...this.physics.gauge, valveMm2: 0 };
    const solver = this.solver(slopeOf({ ...this.physics, gauge }));
    state.fill(0);
    state[cylinderKg] = this.fullKg();
    state[cylinderJ] = state[cylinderKg]! * cv * this.conditions.airK;
    const stations: Station[] = [];
    const keep: Watch = (angleDeg, y) =>
      stations.push({ angleDeg, pascal: this.pascal(angleDeg, y), state: y.slice() });
    keep(openings.startDeg, state);
    this.stretches(solver, openings.startDeg, this.endDeg, 2, keep);
    this.whole.steps += solver.steps;
    return stations;
  }

  /** Gives the air in the gauge after the pull, kg. */
  private pull(shut: readonly Station[], heldKg: number, last: boolean): number {
    const { state, sums, options } = this;
    const lifts = heldKg * this.gaugePaPerKg + this.physics.gauge.opensAtPa;
    const opening = shut.findIndex(({ pascal }) => pascal > lifts);
    const from = shut.at(opening < 0 ? -1 : Math.max(0, opening - 1))!;
    state.set(from.state);
    state[gaugeKg] = heldKg;
    const watch = last ? this.watcher(shut, from, heldKg) : undefined;
    const step = stepNearTopDeg(this.relative);
    let at = from.angleDeg;
    let to = options.balance || (last && options.each) ? this.endDeg : this.pastLastTop(at);
    while (at < to) {
      this.stretches(this.whole, at, to, step, watch);
      at = to;
      if (this.lifts(at)) to = Math.min(this.endDeg, at + pastTopDeg);
    }
    for (let i = 0; i < sums.length; i += 1) sums[i]! += state[i]! - shut[0]!.state[i]!;
    sums[gaugeKg]! -= heldKg;
    return state[gaugeKg]!;
  }

  /** The check valve stands open: it may do so well past the last top where the gauge fills slowly. */
  private lifts(angleDeg: number): boolean {
    const held = this.state[gaugeKg]! * this.gaugePaPerKg + this.physics.gauge.opensAtPa;
    return this.pascal(angleDeg, this.state) > held;
  }

  private pastLastTop(fromDeg: number): number {
    const { cycleDeg } = this.openings;
    const top = Math.floor(this.endDeg / cycleDeg) * cycleDeg;
    return Math.min(this.endDeg, Math.max(fromDeg, top) + pastTopDeg);
  }

  private stretches(
    solver: DormandPrince,
    from: number,
    to: number,
    nearTopStep: number,
    watch?: Watch,
  ): void {
    let at = from;
    let step = 2;
    for (const end of [...this.breaksBetween(from, to), to]) {
      if (end <= at) continue;
      const open = this.isWideOpen((at + end) / 2);
      if (open) this.settle(at);
      const by = open ? this.wideOpen : solver;
      step = by.run(this.state, at, end, step, watch, this.largestStepAt(at, nearTopStep));
      at = end;
    }
  }

  private largestStepAt(angle: number, nearTopStep: number): number {
    const { cycleDeg } = this.openings;
    const inCycle = angle % cycleDeg;
    return inCycle < nearTopDeg || inCycle >= cycleDeg - nearTopDeg ? nearTopStep : 30;
  }

  private isWideOpen(angle: number): boolean {
    return this.wide.some(([from, to]) => angle > from && angle < to);
  }

  /**
   * Brings the cylinder to the outside's pressure through the open valve: what is left expands on its own while gas
   * goes out, or outside air mixes in. Both are exact for a perfect gas and keep the sums closed.
   */
  private settle(angleDeg: number): void {
    const { state, conditions } = this;
    const { ambientPa, airK } = conditions;
    const volume = this.physics.law.at(angleDeg);
    const pascal = (gammaLess1 * state[cylinderJ]!) / volume;
    const gained = (volume * (ambientPa - pascal)) / gammaLess1;
    const out =
      pascal > ambientPa
        ? state[cylinderKg]! * (1 - (ambientPa / pascal) ** (1 / airGamma))
        : -gained / (cp * airK);
    state[cylinderKg]! -= out;
    state[cylinderJ]! += gained;
    if (!this.options.balance) return;
    state[throughValvesKg]! += out;
    state[goneJ]! -= gained;
  }

  private pascal(angleDeg: number, y: Float64Array): number {
    return (gammaLess1 * y[cylinderJ]!) / this.physics.law.at(angleDeg);
  }

  private watcher(shut: readonly Station[], from: Station, heldKg: number): Watch {
    const { each } = this.options;
    const watch = (angleDeg: number, y: Float64Array, inGaugeKg: number) => {
      const cylinderPa = this.pascal(angleDeg, y);
      if (cylinderPa > this.peakPa) this.peakPa = cylinderPa;
      const gaugePa = inGaugeKg * this.gaugePaPerKg;
      each?.({ angleDeg, cylinderPa, gaugePa, kelvin: y[cylinderJ]! / (y[cylinderKg]! * cv) });
    };
    for (const station of shut) {
      if (station.angleDeg > from.angleDeg) break;
      watch(station.angleDeg, station.state, heldKg);
    }
    return (angleDeg, y) => watch(angleDeg, y, y[gaugeKg]!);
  }

  /** Every angle of the pull where the slope changes its law, in rising order; the tops too, where the peak is read. */
  private breaksBetween(from: number, to: number): number[] {
    const { cycleDeg: top, breaksDeg, startDeg } = this.openings;
    const { release } = this.physics.engine;
    const within = [
      ...[0, nearTopDeg, top - nearTopDeg],
      ...breaksDeg,
      ...(release ? [top - release.opensBeforeTop, top - release.closesBeforeTop] : []),
    ];
    const found = [startDeg + ropeFullDeg, ...this.wide.flat()];
    for (let cycle = 0; cycle * top < to; cycle += 1)
      for (const angle of within) found.push(cycle * top + (angle % top));
    return found.filter((angle) => angle > from && angle < to).sort((p, q) => p - q);
  }
}

/**
 * The check valve opens for a few degrees about top and ever shorter as the gauge fills: a long step would pass over it
 * unseen by the error estimate.
 */
const nearTopDeg = 36;
/** A coarse tolerance sees less of it. */
const stepNearTopDeg = (relativeTolerance: number) => (relativeTolerance > 1e-5 ? 1 : 2);
