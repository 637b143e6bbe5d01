import { type Band, type BandShare, bandOf, byLn, byStep, evenShare, shareOf, widestFirst } from '../band.js';
import { classEngines } from '../cranking/class-engine.js';
import { type KnownGeometry, likelyEngine, ratioSpread } from '../cranking/likely-engine.js';
import { dryAirDensity, type Weather } from '../moist-air.js';
import { atSeaLevel, powerLeft } from '../power-correction.js';
import { cylinderVolumeCc, displacementCc } from '../slider-crank.js';
import { durationPartAt } from './burn.js';
import { type ClassFiring, classFiring, firingSpreads } from './class-firing.js';
import { type FiredEngine, type FiringResult, fire } from './fire.js';
import { automotiveFriction, twoStrokeFriction } from './friction.js';
import { airFuelRatio, fuelHeatJPerKg, gasolineCharge } from './gas.js';

export type FiringGeometry = Omit<KnownGeometry, 'exchange'>;

export interface FiringGiven {
  readonly rpm: number;
  /** of the air it breathes */
  readonly weather: Weather;
}

export interface ExpectedFiring {
  readonly firing: FiringResult;
  readonly engine: FiredEngine;
  readonly peakPa: Band;
  /** widest first, of the logarithm of the peak pressure */
  readonly peakShares: readonly BandShare[];
}

export interface ExpectedPower {
  readonly firing: FiringResult;
  /** at the crankshaft */
  readonly watt: Band;
  /** before friction: power, and mean effective pressure */
  readonly indicatedW: number;
  readonly indicatedPa: number;
  readonly frictionPa: number;
  /** widest first, of the logarithm of the power */
  readonly shares: readonly BandShare[];
}

/**
 * The pressure of firing in an engine of this geometry at full throttle, with its band.
 *
 * Source and method: `fire` at the likely values of the class; then each thing not known moved by two standard
 * uncertainties down and up, added in quadrature in the logarithm, each side for itself (JCGM 100:2008, 5.1.2, with
 * differences at k = 2). Scatter from cycle to cycle is in the band. Knock is not: it may pass twice the peak.
 * Everything but bore, stroke and ratio is trade judgement; take the likely peak within a quarter.
 * Example: overhead valve, 68 × 54 mm, ratio 8.3, 3600 rpm, 20 °C at sea level: 3.95 MPa, 2.9 to 5.3.
 */
export function expectedFiring(geometry: FiringGeometry, given: FiringGiven): ExpectedFiring {
  const likely = valuesOf(geometry);
  const run = (values: Values) => fireWith(geometry, given, values);
  const firing = run(likely);
  const shares = sharesOf(likely, ratioSpread(geometry), (values) => run(values).peakPa, firing.peakPa);
  shares.push(evenShare('cycle to cycle', firingSpreads.cycleLn));
  return {
    firing,
    engine: engineOf(geometry, likely.compressionRatio),
    peakPa: bandOf(firing.peakPa, shares),
    peakShares: widestFirst(shares),
  };
}

/**
 * The power that an engine of this geometry should give at the crankshaft here, full throttle, with its band.
 *
 * Method: indicated work of `fire` at the class's figures, every second turn or every turn, less friction
 * (`frictionOf`, a factor of 1.6 either way), at sea level; what the height takes away is `powerLeft`'s, as on every
 * sheet; the band as `expectedFiring` has it. An engine that makes clearly less is worn, leaks, breathes ill or is out of
 * time; a plate's figure may be gross, without muffler and air cleaner. A two-stroke's filling hangs on its exhaust, so
 * that its band is wide. Throws EngineError outside 500 to 6000 rpm, for a two-stroke 12 000.
 * Example: overhead valve, 68 × 54 mm, ratio 8.3, 3600 rpm, 20 °C at sea level: 4.15 kW (5.6 hp), 3.1 to 5.2.
 */
export function expectedPower(geometry: FiringGeometry, given: FiringGiven): ExpectedPower {
  const { rpm } = given;
  const low = { rpm, weather: atSeaLevel(given.weather) };
  const left = powerLeft(given.weather, low.weather);
  const run = (values: Values) => fireWith(geometry, low, values);
  const watt = (firing: FiringResult, values: Values) => left * wattOf(geometry, rpm, firing, values);
  const likely = valuesOf(geometry);
  const firing = run(likely);
  const power = watt(firing, likely);
  const shares = sharesOf(likely, ratioSpread(geometry), (values) => watt(run(values), values), power);
  const frictionEnds = [-2, 2].map((sign) =>
    Math.log(watt(firing, { ...likely, frictionFactor: Math.exp(sign * firingSpreads.frictionLn) }) / power),
  );
  shares.push(
    shareOf('friction', frictionEnds),
    evenShare('what the model leaves out', firingSpreads.modelLn),
  );
  const frictionPa = frictionOf(geometry, rpm);
  const wattPerPa = displacementCc(geometry) * 1e-6 * firingsPerSecond(geometry, rpm);
  const indicatedW = power + frictionPa * wattPerPa;
  return {
    ...{ firing, watt: bandOf(power, shares), indicatedW, indicatedPa: indicatedW / wattPerPa, frictionPa },
    shares: widestFirst(shares),
  };
}

/** The likely power alone, W: one run instead of some twenty. Same source, method and refusals as `expectedPower`. */
export function likelyPower(geometry: FiringGeometry, { rpm, weather }: FiringGiven): number {
  const likely = valuesOf(geometry);
  const low = atSeaLevel(weather);
  const firing = fireWith(geometry, { rpm, weather: low }, likely);
  return powerLeft(weather, low) * wattOf(geometry, rpm, firing, likely);
}

/** The likely firing stroke alone: one run of `fire` instead of some twenty. Example: that of `expectedFiring`: 3.95 MPa. */
export function likelyFiring(geometry: FiringGeometry, given: FiringGiven): FiringResult {
  return fireWith(geometry, given, valuesOf(geometry));
}

/** At the shaft; never below 1 W, where an engine would no longer turn itself. */
function wattOf(geometry: FiringGeometry, rpm: number, firing: FiringResult, values: Values): number {
  const netPa = firing.meanPa - values.frictionFactor * frictionOf(geometry, rpm);
  return Math.max(1, netPa * displacementCc(geometry) * 1e-6 * firingsPerSecond(geometry, rpm));
}

const firingsPerSecond = ({ architecture }: FiringGeometry, rpm: number) =>
  rpm / (architecture === 'two-stroke' ? 60 : 120);

const frictionOf = ({ architecture, strokeMm }: FiringGeometry, rpm: number) =>
  architecture === 'two-stroke' ? twoStrokeFriction(strokeMm, rpm) : automotiveFriction(rpm);

interface Values extends ClassFiring {
  readonly compressionRatio: number;
  readonly heatFactor: number;
  readonly frictionFactor: number;
}

function valuesOf({ architecture, compressionRatio }: FiringGeometry): Values {
  return {
    ...classFiring[architecture],
    compressionRatio: compressionRatio ?? classEngines[architecture].compressionRatio,
    ...{ heatFactor: 1, frictionFactor: 1 },
  };
}

function engineOf(geometry: FiringGeometry, compressionRatio: number): FiredEngine {
  const { exchange, ...engine } = likelyEngine({ ...geometry, compressionRatio });
  const [closedFromDeg, openFromDeg] =
    exchange.cycle === 'four-stroke'
      ? [720 - exchange.intake.closesDeg, exchange.exhaust.opensDeg]
      : [exchange.exhaustOpensDeg, exchange.exhaustOpensDeg];
  return { ...engine, closedFromDeg, openFromDeg };
}

function fireWith(geometry: FiringGeometry, { rpm, weather }: FiringGiven, values: Values): FiringResult {
  const engine = engineOf(geometry, values.compressionRatio);
  const durationDeg = values.burnDeg;
  return fire(
    engine,
    chargeOf(engine, weather, values),
    { startsDeg: values.halfBurnedDeg - durationPartAt(0.5) * durationDeg, durationDeg },
    {
      ...{ rpm, wallK: values.wallK, heatFactor: values.heatFactor, ambientPa: weather.pascal },
    },
  );
}

/** What the cylinder holds: so much dry air, the fuel to it, and what was left; its pressure follows from the volume. */
function chargeOf(engine: FiredEngine, weather: Weather, values: Values) {
  const { volumetricEfficiency, heatingK, residualPart, residualK, releasedPart } = values;
  const sweptM3 = displacementCc(engine) * 1e-6;
  const airKg = volumetricEfficiency * dryAirDensity(weather) * sweptM3;
  const chargeKg = (airKg * (1 + 1 / airFuelRatio)) / (1 - residualPart);
  const startK = (1 - residualPart) * (weather.celsius + 273.15 + heatingK) + residualPart * residualK;
  const { unburned, burned } = gasolineCharge;
  const gasConstant = (1 - residualPart) * unburned.gasConstant + residualPart * burned.gasConstant;
  return {
    startPa: (chargeKg * gasConstant * startK) / closedM3(engine),
    ...{ startK, residualPart },
    heatJPerKg: (releasedPart * fuelHeatJPerKg) / (1 + airFuelRatio),
  };
}

const closedM3 = (engine: FiredEngine) =>
  1e-6 * cylinderVolumeCc(engine, engine.compressionRatio, engine.closedFromDeg);

function sharesOf(
  likely: Values,
  spreadOfRatio: number,
  result: (values: Values) => number,
  atLikely: number,
): BandShare[] {
  return movesOf(likely, spreadOfRatio).map(([what, field, move]) => {
    const at = (sign: number) => result({ ...likely, [field]: move(likely[field], sign) });
    return shareOf(
      what,
      [-2, 2].map((sign) => Math.log(Math.max(1, at(sign)) / atLikely)),
    );
  });
}

/** A part moved by its odds stays a part. Example: 0.25 by twice 0.3: 0.38. */
const byOdds = (ln: number) => (part: number, sign: number) => {
  const odds = (part / (1 - part)) * Math.exp(sign * ln);
  return odds / (1 + odds);
};

type Move = readonly [what: string, field: keyof Values, move: (value: number, sign: number) => number];

function movesOf({ fillingLn }: Values, spreadOfRatio: number): readonly Move[] {
  const s = firingSpreads;
  return [
    ['how well it fills', 'volumetricEfficiency', byLn(fillingLn)],
    ['heating on the way in', 'heatingK', byStep(s.heatingK)],
    ['burned gas left over', 'residualPart', byOdds(s.residualLn)],
    ['how fast it burns', 'burnDeg', byLn(s.burnLn)],
    ['where the spark stands', 'halfBurnedDeg', byStep(s.halfBurnedDeg)],
    ['how much of the fuel’s heat comes out', 'releasedPart', byStep(s.releasedPart)],
    ['heat to the walls', 'heatFactor', byLn(s.heatLn)],
    ['compression ratio', 'compressionRatio', byStep(spreadOfRatio)],
  ];
}
