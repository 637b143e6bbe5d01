import type { CompressionGauge, CrankedEngine, CrankingConditions } from '../../src/engine/cranking/setup.js';

/**
 * The same physics as `crank`, written apart and plainly: explicit Euler at one small fixed step, every flow worked out
 * for itself. A reference for the tests and for the benchmark; four-strokes only. Gives the gauge reading in pascal.
 */
export function naiveCrank(
  engine: CrankedEngine,
  gauge: CompressionGauge,
  conditions: CrankingConditions,
  stepDeg: number,
): number {
  const { exchange } = engine;
  if (exchange.cycle !== 'four-stroke') throw new Error('four-strokes only');
  const R = 287.05287;
  const cv = 2.5 * R;
  const cp = 3.5 * R;
  const { ambientPa, airK, wallK, rpm, by, pulls, turnsPerPull, heatFactor } = conditions;
  const r = engine.strokeMm / 2000;
  const l = engine.rodMm / 1000;
  const bore = engine.boreMm / 1000;
  const area = (Math.PI / 4) * bore ** 2;
  const clearance = (area * 2 * r) / (engine.compressionRatio - 1) + gauge.adapterMl * 1e-6;
  const travel = (deg: number) => {
    const t = (deg * Math.PI) / 180;
    return r * (1 - Math.cos(t)) + l - Math.sqrt(l * l - (r * Math.sin(t)) ** 2);
  };
  const volume = (deg: number) => clearance + area * travel(deg);
  const phi = (ratio: number): number => {
    if (ratio > 0.99) return (phi(0.99) * (1 - ratio)) / 0.01;
    const x = Math.max(ratio, (2 / 2.4) ** 3.5);
    return Math.sqrt(7 * (x ** (2 / 1.4) - x ** (2.4 / 1.4)));
  };
  const flow = (mm2: number, fromPa: number, fromK: number, toPa: number) =>
    fromPa <= toPa ? 0 : ((mm2 * 1e-6 * fromPa) / Math.sqrt(R * fromK)) * phi(toPa / fromPa);
  const valve = ({ opensDeg, closesDeg, areaMm2 }: typeof exchange.intake, deg: number) =>
    deg > opensDeg && deg < closesDeg
      ? areaMm2 * Math.sin((Math.PI * (deg - opensDeg)) / (closesDeg - opensDeg)) ** 2
      : 0;
  let gaugeKg = (ambientPa * gauge.hoseMl * 1e-6) / (R * airK);
  for (let pull = 0; pull < pulls; pull += 1) {
    let kg = (ambientPa * volume(360)) / (R * airK);
    let joule = kg * cv * airK;
    let before = ambientPa;
    const steps = Math.round((360 * turnsPerPull) / stepDeg);
    for (let i = 0; i < steps; i += 1) {
      const deg = 360 + i * stepDeg;
      const now = by === 'starter' ? rpm : rpm * Math.sqrt(Math.min(1, 0.04 + (deg - 360) / 360));
      const dt = stepDeg / (6 * now);
      const v = volume(deg);
      const kelvin = joule / (kg * cv);
      const pascal = (kg * R * kelvin) / v;
      const gaugePa = (gaugeKg * R * airK) / (gauge.hoseMl * 1e-6);
      const inCycle = deg % 720;
      const intake = valve(exchange.intake, inCycle);
      const exhaust = valve(exchange.exhaust, inCycle);
      const { ringsMm2, headGasketMm2, intakeValveMm2, exhaustValveMm2 } = engine.leaks;
      const open =
        intake +
        exhaust +
        ringsMm2 +
        headGasketMm2 +
        (intake > 0 ? 0 : intakeValveMm2) +
        (exhaust > 0 ? 0 : exhaustValveMm2);
      const out = flow(open, pascal, kelvin, ambientPa);
      const back = flow(open, ambientPa, airK, pascal);
      const toGauge = flow(gauge.valveMm2, pascal, kelvin, gaugePa + gauge.opensAtPa);
      const h = 130 * v ** -0.06 * (pascal / 1e5) ** 0.8 * kelvin ** -0.4 * ((4 * r * now) / 60 + 1.4) ** 0.8;
      const walls = 2 * area + 800e-6 * gauge.adapterMl + Math.PI * bore * travel(deg);
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
