import { standardAirAtMapHeight } from '../atmosphere.js';
import { type BandShare, bandOf, byLn, byStep, evenShare, shareOf, widestFirst } from '../band.js';
import { requireWithin } from '../error.js';
import { displacementCc } from '../slider-crank.js';
import {
  classCreviceMl,
  classEngines,
  classGauge,
  classRelease,
  classSag,
  classSpeed,
  type EngineArchitecture,
  soundLeaks,
} from './class-engine.js';
import { crank } from './crank.js';
import type { Exchange } from './exchange.js';
import { type KnownGeometry, likelyEngine, ratioSpread } from './likely-engine.js';
import type { CompressionGauge, CrankedEngine, CrankingConditions, Release } from './setup.js';

export interface CompressionGeometry extends KnownGeometry {
  /** `unknown` counts as fitted: a four-stroke of the last decades usually has one */
  readonly release: 'none' | 'fitted' | 'unknown' | Release;
}

export interface CompressionConditions {
  /** map height; sea level stands */
  readonly altitudeM?: number;
  /** the barometer's own reading, not reduced to sea level; goes before the altitude */
  readonly ambientPa?: number;
  /** 20 °C stands */
  readonly airC?: number;
  /** of the cylinder; that of the air stands */
  readonly wallC?: number;
  readonly by: 'rope' | 'starter';
  /** before the compression holds it back; what a hand brings the class's flywheel to stands, 350 for a starter */
  readonly rpm?: number;
  /** 6 stands */
  readonly pulls?: number;
  readonly gauge?: CompressionGauge;
}

/**
 * Standard uncertainties (k = 1); `…Ln` are of the logarithm: 0.35 is a factor of 1.42 either way. Trade judgement, no
 * source; the heat's spans Hohenberg's, Annand's and, at two of it, half of them; the weather's 800 Pa is a day's usual
 * departure from the standard atmosphere.
 */
const usualSpreads = {
  rpmLn: 0.15,
  /** of the moment of hand or starter and of the flywheel's inertia together */
  sagLn: 0.25,
  leakLn: 0.5,
  intakeClosesDeg: 8,
  airK: 3,
  wallK: 5,
  ambientPa: 800,
  heatLn: 0.4,
  hoseLn: 0.3,
  adapterMl: 0.7,
  checkValveLn: 0.4,
  releaseAreaLn: 0.5,
  releaseClosesDeg: 8,
  modelLn: 0.1,
};
type CompressionSpreads = Readonly<Record<keyof typeof usualSpreads | 'ratio', number>>;

export interface ExpectedCompression {
  /** gauge pressures; low and high at k = 2 */
  readonly lowPa: number;
  readonly likelyPa: number;
  readonly highPa: number;
  /** widest first */
  readonly shares: readonly BandShare[];
  /** what it rests on, in words: what was given, what stands in for it */
  readonly restsOn: readonly string[];
  readonly release: 'none' | 'may act';
  readonly engine: CrankedEngine;
  readonly gauge: CompressionGauge;
  readonly conditions: CrankingConditions;
}

/**
 * The gauge pressure a sound engine of this geometry should show after so many pulls, with its band.
 *
 * Method: `crank` at the likely values; then each thing not known moved by two standard uncertainties down and up (two
 * more runs each; one for the five that act evenly and little), the downward moves added in quadrature for the low end
 * and the upward ones for the high end, in the logarithm of the reading. They are worked out over three pulls, which
 * leaves the band's ends within 1 %. That is the GUM's law of propagation (JCGM 100:2008, 5.1.2) with differences at
 * k = 2 in place of derivatives, each side for itself, because a leak and a slow pull take away more than their opposites
 * give. Checked against a seeded Monte Carlo (JCGM 101): 95.3 % of 1500 draws fall inside, the ends agree within 6 % of
 * the reading.
 *
 * Where the reading goes, side-valve 65 × 62 mm at ratio 6: the power law gives 166 psi; an intake valve closing 55°
 * after bottom leaves 5.2 of the 6 at a slow pull: 151; the gauge's adapter: 143; heat to cold walls, of which a
 * side-valve has many: 123; narrow spaces: 121; the leak: 107; a pull over a drum of 55 mm, slowed by the gas: 82.
 * Against the trade's figures for engines in use (common practice), from 75 to 400 cc: side-valve 81 to 89 (60 to 90), with
 * release 39 to 55 (35 to 65); overhead valve 102 to 125 (100 to 140), with release 54 to 76 (50 to 90); two-stroke of 20 to
 * 100 cc 95 to 126 (90 to 150). The drum's radius is common practice; what a hand gives is trade judgement, and an
 * overhead valve without release stands or falls with it: turned steadily at 300 rpm the same engine would show 142.
 * The spreads are trade judgement; the model's own share is 10 %. Takes some 40 ms, the first time of a program several
 * times that. Throws EngineError naming the field. Example: overhead valve, 65 × 62 mm, ratio 8, no release, sea level,
 * rope, 6 pulls: 105 psi, 66 to 165.
 */
export function expectedCompression(
  geometry: CompressionGeometry,
  given: CompressionConditions,
  spreads: Partial<CompressionSpreads> = {},
): ExpectedCompression {
  const setup = crankedSetup(geometry, given);
  const { engine, gauge, conditions } = setup;
  const used: CompressionSpreads = { ...usualSpreads, ratio: ratioSpread(geometry), ...spreads };
  const likelyPa = read(setup);
  const first = firstPulls(setup);
  const firstPa = read(first);
  const shares = moves(used, engine).map((unknown) =>
    unknown.ofGauge ? moved(unknown, setup, likelyPa) : moved(unknown, first, firstPa),
  );
  shares.push(evenShare('what the model leaves out', used.modelLn));
  const { low, high } = bandOf(likelyPa, shares);
  return {
    ...{ lowPa: low, likelyPa, highPa: high, shares: widestFirst(shares) },
    restsOn: restsOn(geometry, given, engine.release !== undefined),
    release: engine.release ? 'may act' : 'none',
    ...{ engine, gauge, conditions },
  };
}

/** All that `crank` wants. */
export interface CrankedSetup {
  readonly engine: CrankedEngine;
  readonly gauge: CompressionGauge;
  readonly conditions: CrankingConditions;
}

/** The engine as it is cranked, what is not known of it taken from its class. */
export function crankedSetup(geometry: CompressionGeometry, given: CompressionConditions): CrankedSetup {
  return {
    engine: engineOf(geometry),
    gauge: given.gauge ?? classGauge(geometry.architecture),
    conditions: conditionsOf(given, geometry),
  };
}

const read = ({ engine, gauge, conditions }: CrankedSetup) => crank(engine, gauge, conditions).readingPa;

/** What moves the cylinder moves every pull alike: so many tell it, and save a third of the time. */
const pullsThatTell = 3;
const firstPulls = (setup: CrankedSetup): CrankedSetup => ({
  ...setup,
  conditions: { ...setup.conditions, pulls: Math.min(pullsThatTell, setup.conditions.pulls) },
});

/** `sign` is how many standard uncertainties, and which way */
type Move = (setup: CrankedSetup, sign: number) => CrankedSetup;

interface Unknown {
  readonly what: string;
  readonly move: Move;
  /** the reading goes with it so evenly, and so little, that one run tells both ways */
  readonly bothWays?: true;
  /** it hangs on how far the gauge has filled: all pulls count */
  readonly ofGauge?: true;
}

/** The things not known, each as a change to the setup. */
function moves(s: CompressionSpreads, { release }: CrankedEngine): Unknown[] {
  const condition =
    (
      field: 'rpm' | 'airK' | 'wallK' | 'ambientPa' | 'heatFactor',
      to: (value: number, sign: number) => number,
    ): Move =>
    ({ conditions, ...setup }, sign) => ({
      ...setup,
      conditions: { ...conditions, [field]: to(conditions[field], sign) },
    });
  const ofGauge =
    (field: 'hoseMl' | 'valveMm2' | 'adapterMl', to: (value: number, sign: number) => number): Move =>
    ({ gauge, ...setup }, sign) => ({
      ...setup,
      gauge: { ...gauge, [field]: Math.max(0, to(gauge[field], sign)) },
    });
  return [
    { what: 'pull speed', move: condition('rpm', byLn(s.rpmLn)) },
    { what: 'how far the compression slows the pull', move: (setup, sign) => withSag(setup, sign * s.sagLn) },
    { what: leakageShare, move: (setup, sign) => withLeak(setup, Math.exp(sign * s.leakLn)) },
    { what: 'compression ratio', move: (setup, sign) => withRatio(setup, sign * s.ratio) },
    { what: 'valve or port timing', move: (setup, sign) => withTiming(setup, -sign * s.intakeClosesDeg) },
    { what: 'wall heat transfer', move: condition('heatFactor', byLn(s.heatLn)) },
    { what: 'air temperature', move: condition('airK', byStep(s.airK)), bothWays: true },
    { what: 'cylinder temperature', move: condition('wallK', byStep(s.wallK)), bothWays: true },
    { what: 'air pressure', move: condition('ambientPa', byStep(s.ambientPa)), bothWays: true },
    { what: 'space before the check valve of the gauge', move: ofGauge('adapterMl', byStep(s.adapterMl)) },
    {
      what: 'hose volume of the gauge',
      move: ofGauge('hoseMl', byLn(s.hoseLn)),
      bothWays: true,
      ofGauge: true,
    },
    {
      what: 'check valve of the gauge',
      move: ofGauge('valveMm2', byLn(s.checkValveLn)),
      bothWays: true,
      ofGauge: true,
    },
    ...(release ? releaseMoves(s, release) : []),
  ];
}

function releaseMoves(s: CompressionSpreads, release: Release): Unknown[] {
  const change = (setup: CrankedSetup, changed: Partial<Release>): CrankedSetup => ({
    ...setup,
    engine: { ...setup.engine, release: { ...release, ...changed } },
  });
  const { areaMm2, closesBeforeTop, opensBeforeTop } = release;
  return [
    {
      what: 'how far the release lifts',
      move: (setup, sign) => change(setup, { areaMm2: areaMm2 * Math.exp(sign * s.releaseAreaLn) }),
    },
    {
      what: 'where the release lets go',
      move: (setup, sign) =>
        change(setup, {
          closesBeforeTop: Math.min(opensBeforeTop, Math.max(0, closesBeforeTop + sign * s.releaseClosesDeg)),
        }),
    },
  ];
}

/**
 * Standard uncertainty of the reading as a part of it, leaving out the leak itself and adding the gauge's own: what an
 * inverse (`leakFromReading`) has to go on.
 */
export function uncertaintyBesideLeak({ shares }: ExpectedCompression, gaugePart: number): number {
  const rest = shares
    .filter(({ what }) => what !== leakageShare)
    .map(({ down, up }) => Math.max(down, up) / 2);
  return Math.min(1, Math.hypot(...rest, gaugePart));
}

const leakageShare = 'leakage of a sound cylinder';

function withLeak(setup: CrankedSetup, factor: number): CrankedSetup {
  const { ringsMm2, intakeValveMm2, exhaustValveMm2, headGasketMm2 } = setup.engine.leaks;
  const leaks = {
    ...{ ringsMm2: ringsMm2 * factor, headGasketMm2: headGasketMm2 * factor },
    ...{ intakeValveMm2: intakeValveMm2 * factor, exhaustValveMm2: exhaustValveMm2 * factor },
  };
  return { ...setup, engine: { ...setup.engine, leaks } };
}

function withRatio(setup: CrankedSetup, by: number): CrankedSetup {
  const compressionRatio = Math.max(1.6, setup.engine.compressionRatio + by);
  return { ...setup, engine: { ...setup.engine, compressionRatio } };
}

/** The cylinder closes later by so many degrees: the intake valve of a four-stroke, the ports of a two-stroke. */
function withTiming(setup: CrankedSetup, laterDeg: number): CrankedSetup {
  const { exchange } = setup.engine;
  const moved: Exchange =
    exchange.cycle === 'four-stroke'
      ? { ...exchange, intake: { ...exchange.intake, closesDeg: exchange.intake.closesDeg + laterDeg } }
      : {
          ...exchange,
          // a port stands where it was cast: a third of a valve's doubt
          exhaustOpensDeg: exchange.exhaustOpensDeg - laterDeg / 3,
          transferOpensDeg: exchange.transferOpensDeg - laterDeg / 3,
        };
  return { ...setup, engine: { ...setup.engine, exchange: moved } };
}

/** Both what turns and what it turns: either keeps the speed up. */
function withSag(setup: CrankedSetup, ln: number): CrankedSetup {
  const { sags } = setup.conditions;
  if (!sags) return setup;
  const part = Math.exp(ln);
  const moved = { ...sags, stallNm: sags.stallNm * part, inertiaKgM2: sags.inertiaKgM2 * part };
  return { ...setup, conditions: { ...setup.conditions, sags: moved } };
}

function moved({ what, move, bothWays }: Unknown, setup: CrankedSetup, likelyPa: number): BandShare {
  const at = (sign: number) => Math.log(Math.max(1, read(move(setup, sign))) / likelyPa);
  const up = at(2);
  return shareOf(what, bothWays ? [up, -up] : [at(-2), up]);
}

function engineOf(geometry: CompressionGeometry): CrankedEngine {
  const { architecture, boreMm, release } = geometry;
  const acting = releaseOf(release, architecture, boreMm);
  return {
    ...likelyEngine(geometry),
    creviceMl: classCreviceMl(boreMm),
    ...(acting && { release: acting }),
    leaks: leaksOf(architecture, boreMm),
  };
}

/** A two-stroke's is worked by hand: it counts only when said to be fitted. */
function releaseOf(
  release: CompressionGeometry['release'],
  architecture: EngineArchitecture,
  boreMm: number,
): Release | undefined {
  if (typeof release === 'object') return release;
  if (release === 'none' || (release === 'unknown' && architecture === 'two-stroke')) return undefined;
  return classRelease(boreMm);
}

/** A two-stroke has no valves to leak. */
function leaksOf(architecture: EngineArchitecture, boreMm: number) {
  const sound = soundLeaks(boreMm);
  return architecture === 'two-stroke' ? { ...sound, intakeValveMm2: 0, exhaustValveMm2: 0 } : sound;
}

function conditionsOf(given: CompressionConditions, geometry: CompressionGeometry): CrankingConditions {
  const { architecture } = geometry;
  const sweptCc = displacementCc(geometry);
  const airC = requireWithin(given.airC ?? 20, -45, 60, 'air', '°C');
  const air = standardAirAtMapHeight(given.altitudeM ?? 0);
  return {
    ambientPa: given.ambientPa ?? air.pascal,
    airK: airC + 273.15,
    wallK: requireWithin(given.wallC ?? airC, -45, 250, 'wall', '°C') + 273.15,
    rpm: given.rpm ?? classSpeed(given.by, architecture, sweptCc),
    by: given.by,
    pulls: given.pulls ?? 6,
    // a rope's length gives about four turns, two compressions of a four-stroke; a starter is held for a second or so
    turnsPerPull: given.by === 'rope' || architecture === 'two-stroke' ? 4 : 6,
    heatFactor: 1,
    sags: classSag(given.by, architecture, sweptCc),
  };
}

/** Two decimals at most, for words. */
const short = (mm: number) => Number(mm.toFixed(2));

function restsOn(geometry: CompressionGeometry, given: CompressionConditions, releases: boolean): string[] {
  const fallback = (known: unknown, what: string, stands: string) =>
    known === undefined ? `${what}: ${stands}, of the class, not this engine's` : `${what}: as given`;
  const ratio = classEngines[geometry.architecture].compressionRatio;
  return [
    `bore ${short(geometry.boreMm)} mm and stroke ${short(geometry.strokeMm)} mm: as given`,
    fallback(
      geometry.compressionRatio,
      'compression ratio',
      `${ratio} ± ${2 * classEngines[geometry.architecture].ratioSpread}`,
    ),
    fallback(geometry.exchange, 'valve or port timing', 'usual angles'),
    fallback(geometry.rodMm, 'rod length', '1.75 strokes'),
    given.ambientPa === undefined
      ? `air pressure: standard atmosphere at ${Math.round(given.altitudeM ?? 0)} m`
      : 'air pressure: as given',
    given.rpm === undefined
      ? `pull speed: ${Math.round(classSpeed(given.by, geometry.architecture, displacementCc(geometry)))} rpm before the compression holds it back`
      : 'pull speed: as given',
    'throttle and choke open, plug out, cold and dry',
    ...(releases ? ['automatic release: it may act, so that the band says little'] : []),
  ];
}
