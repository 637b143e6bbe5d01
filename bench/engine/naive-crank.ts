import type {
  CompressionGauge,
  CrankedEngine,
  CrankingConditions,
  Sag,
} from '../../src/engine/cranking/setup.js';

const R = 287.05287;
const cv = 2.5 * R;
const cp = 3.5 * R;

function phi(ratio: number): number {
  if (ratio > 0.99) return (phi(0.99) * (1 - ratio)) / 0.01;
  const x = Math.max(ratio, (2 / 2.4) ** 3.5);
  return Math.sqrt(7 * (x ** (2 / 1.4) - x ** (2.4 / 1.4)));
}

const flow = (mm2: number, fromPa: number, fromK: number, toPa: number) =>
  fromPa <= toPa ? 0 : ((mm2 * 1e-6 * fromPa) / Math.sqrt(R * fromK)) * phi(toPa / fromPa);

function slider(engine: CrankedEngine) {
  const r = engine.strokeMm / 2000;
  const l = engine.rodMm / 1000;
  return (deg: number) => {
    const t = (deg * Math.PI) / 180;
    return r * (1 - Math.cos(t)) + l - Math.sqrt(l * l - (r * Math.sin(t)) ** 2);
  };
}

/** Open areas of intake and exhaust over the cycle, mm², and when the cylinder is shut. */
function openings({ exchange, strokeMm }: CrankedEngine, travel: (deg: number) => number) {
  if (exchange.cycle === 'two-stroke') {
    const { exhaustOpensDeg, transferOpensDeg, exhaustAreaMm2, transferAreaMm2 } = exchange;
    const port = (opens: number, mm2: number) => (deg: number) => {
      const edge = travel(opens);
      return (mm2 * Math.max(0, travel(deg) - edge)) / (strokeMm / 1000 - edge);
    };
    return {
      ...{ cycle: 360, start: 180, shutBeforeTop: exhaustOpensDeg },
      ...{ intake: port(transferOpensDeg, transferAreaMm2), exhaust: port(exhaustOpensDeg, exhaustAreaMm2) },
    };
  }
  const valve = ({ opensDeg, closesDeg, areaMm2 }: typeof exchange.intake, deg: number) =>
    deg > opensDeg && deg < closesDeg
      ? areaMm2 * Math.sin((Math.PI * (deg - opensDeg)) / (closesDeg - opensDeg)) ** 2
      : 0;
  return {
    ...{ cycle: 720, start: 360, shutBeforeTop: 720 - exchange.intake.closesDeg },
    intake: (deg: number) => valve(exchange.intake, deg),
    exhaust: (deg: number) => valve(exchange.exhaust, deg),
  };
}

/**
 * Parts of the pull's speed from where the cylinder shuts to as far after top, by Euler steps of a twentieth degree: the
 * flywheel's energy less the work on gas that follows p·V^1.25 and leaks on the way.
 */
function saggingSpeeds(
  { leaks, release }: CrankedEngine,
  volume: (deg: number) => number,
  { ambientPa, airK, rpm }: CrankingConditions,
  { inertiaKgM2, stallNm, idleRpm, slowestRpm }: Sag,
  shutDeg: number,
): (fromTopDeg: number) => number {
  const step = 0.05;
  const leakMm2 = Object.values(leaks).reduce((sum, each) => sum + each, 0);
  const speeds: number[] = [];
  let omega = (rpm * Math.PI) / 30;
  const [full, least] = [omega, (slowestRpm * Math.PI) / 30];
  const wholeKg = (ambientPa * volume(shutDeg)) / (R * airK);
  let kg = wholeKg;
  for (let deg = -shutDeg; deg < shutDeg; deg += step) {
    speeds.push(omega / full);
    const density = ((kg / wholeKg) * volume(shutDeg)) / volume(deg);
    const pascal = ambientPa * density ** 1.25;
    const acts =
      release &&
      rpm <= (release.outAboveRpm ?? rpm) &&
      deg >= -release.opensBeforeTop &&
      deg < -release.closesBeforeTop;
    const out = flow(leakMm2 + (acts ? release.areaMm2 : 0), pascal, airK * density ** 0.25, ambientPa);
    const seconds = (step * Math.PI) / 180 / omega;
    kg -= out * seconds;
    const moment = stallNm * Math.max(0, 1 - (omega * 30) / Math.PI / idleRpm);
    const joule =
      0.5 * inertiaKgM2 * omega ** 2 +
      (moment * step * Math.PI) / 180 +
      (pascal - ambientPa) * (volume(deg + step) - volume(deg));
    omega = Math.min(full, Math.sqrt(Math.max(least ** 2, (2 * joule) / inertiaKgM2)));
  }
  return (fromTop) => speeds[Math.round((fromTop + shutDeg) / step)] ?? 1;
}

/**
 * The same physics as `crank`, written apart and plainly: explicit Euler at one small fixed step, every flow worked out
 * for itself, valves or ports, a steady or a sagging pull, with or without release. A reference for the tests and for
 * the benchmark. Gives the gauge reading in pascal.
 */
export function naiveCrank(
  engine: CrankedEngine,
  gauge: CompressionGauge,
  conditions: CrankingConditions,
  stepDeg: number,
): number {
  const { ambientPa, airK, wallK, rpm, by, pulls, turnsPerPull, heatFactor, sags } = conditions;
  const { release } = engine;
  const r = engine.strokeMm / 2000;
  const bore = engine.boreMm / 1000;
  const area = (Math.PI / 4) * bore ** 2;
  const clearance = (area * 2 * r) / (engine.compressionRatio - 1) + gauge.adapterMl * 1e-6;
  const chamberM2 = engine.chamberMm2 === undefined ? 2 * area : engine.chamberMm2 * 1e-6;
  const travel = slider(engine);
  const volume = (deg: number) => clearance + area * travel(deg);
  const { cycle, start, shutBeforeTop, intake: intakeAt, exhaust: exhaustAt } = openings(engine, travel);
  const part = sags ? saggingSpeeds(engine, volume, conditions, sags, shutBeforeTop) : () => 1;
  let gaugeKg = (ambientPa * gauge.hoseMl * 1e-6) / (R * airK);
  for (let pull = 0; pull < pulls; pull += 1) {
    let kg = (ambientPa * volume(start)) / (R * airK);
    let joule = kg * cv * airK;
    let before = ambientPa;
    const steps = Math.round((360 * turnsPerPull) / stepDeg);
    for (let i = 0; i < steps; i += 1) {
      const deg = start + i * stepDeg;
      const base = by === 'starter' ? rpm : rpm * Math.sqrt(Math.min(1, 0.04 + (deg - start) / 360));
      const now = base * part(deg - Math.round(deg / cycle) * cycle);
      const dt = stepDeg / (6 * now);
      const v = volume(deg);
      const kelvin = joule / (kg * cv);
      const pascal = (kg * R * kelvin) / v;
      const gaugePa = (gaugeKg * R * airK) / (gauge.hoseMl * 1e-6);
      const inCycle = deg % cycle;
      const [intake, exhaust] = [intakeAt(inCycle), exhaustAt(inCycle)];
      const beforeTop = cycle - inCycle;
      const releases =
        release &&
        beforeTop < release.opensBeforeTop &&
        beforeTop > release.closesBeforeTop &&
        now <= (release.outAboveRpm ?? now);
      const { ringsMm2, headGasketMm2, intakeValveMm2, exhaustValveMm2 } = engine.leaks;
      const open =
        intake +
        exhaust +
        ringsMm2 +
        headGasketMm2 +
        (intake > 0 ? 0 : intakeValveMm2) +
        (exhaust > 0 ? 0 : exhaustValveMm2) +
        (releases ? release.areaMm2 : 0);
      const out = flow(open, pascal, kelvin, ambientPa);
      const back = flow(open, ambientPa, airK, pascal);
      const toGauge = flow(gauge.valveMm2, pascal, kelvin, gaugePa + gauge.opensAtPa);
      const h = 130 * v ** -0.06 * (pascal / 1e5) ** 0.8 * kelvin ** -0.4 * ((4 * r * now) / 60 + 1.4) ** 0.8;
      const walls = chamberM2 + 800e-6 * gauge.adapterMl + Math.PI * bore * travel(deg);
      const heat = heatFactor * h * walls * (wallK - kelvin);
      // what the narrow spaces took in the step before: one step late, as good as the step itself
      const narrow = ((engine.creviceMl ?? 0) * 1e-6 * (pascal - before)) / (R * wallK);
      before = pascal;
      joule +=
        dt * (heat + back * cp * airK - (out + toGauge) * cp * kelvin) -
        pascal * (volume(deg + stepDeg) - v) -
        narrow * cp * (narrow > 0 ? kelvin : wallK);
      kg += dt * (back - out - toGauge) - narrow;
      gaugeKg += dt * toGauge;
    }
  }
  return (gaugeKg * R * airK) / (gauge.hoseMl * 1e-6) - ambientPa;
}
