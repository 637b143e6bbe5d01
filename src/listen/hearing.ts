import { type Bands, lasting } from './bands.js';
import { type CoarsePoint, coarseTrack, fieldOf } from './coarse.js';
import { type Cycle, firingHz } from './engine-kind.js';
import { type Frame, type Framing, framesOf } from './frames.js';
import { likenessOf } from './likeness.js';
import { loudnessOf } from './loudness.js';
import { orderSalience } from './orders.js';
import { median } from './quantile.js';
import { type Choice, choose } from './rivals.js';
import { secondWitness } from './second-witness.js';
import { type Steadiness, steadinessOf } from './steadiness.js';
import { meanHz, refined, type Stretch, scaled, stretchesOf } from './stretches.js';
import { hasRival, objection } from './verdict.js';

/** What one path through the evidence leads to. */
export interface Hearing {
  readonly frames: readonly Frame[];
  readonly choice: Choice;
  readonly stretches: readonly Stretch[];
  readonly steadiness: Steadiness;
  /** why this is no engine, or null */
  readonly objection: string | null;
}

/**
 * The clearest way to hear an engine in a sound; null if nothing repeats at all.
 *
 * Method: evidence for each speed in each window; a stiff and a loose path through it; each path made exact on the
 * phases of its orders; on orders of that path, averaged over the whole sound, every speed weighed against every other.
 */
export function hear(
  bands: Bands,
  cycle: Cycle,
  framing = closely(cycle),
  frames = framesOf(bands, framing),
): Hearing | null {
  const even = [frames];
  const field = fieldOf(even, cycle);
  const stiff = heardAlong(bands, cycle, even, coarseTrack(field, 'stiff'));
  if (stiff?.objection === null && isSmooth(stiff.steadiness)) return stiff;
  const first = better(stiff, heardAlong(bands, cycle, even, coarseTrack(field, 'loose')));
  if (first?.objection === null && (first.steadiness.ongoing > brokenUp || isLevel(first.stretches)))
    return first;
  // a changing speed smears every line: look again with time bent
  const bent = [...even, ...slopes.map((slope) => framesOf(bands, framing, slope))];
  return better(first, heardAlong(bands, cycle, bent, coarseTrack(fieldOf(bent, cycle), 'loose')));
}

export const closely = (cycle: Cycle): Framing => ({ windowS: windowFor(cycle), hopS: windowFor(cycle) / 4 });
/** Half as many windows as an unknown engine is looked for in. */
export const loosely = (cycle: Cycle): Framing => ({ windowS: windowFor(cycle), hopS: windowFor(cycle) / 2 });

/** A path that holds on throughout without a kink has lost nothing that a looser one could find. */
export const isSmooth = ({ ongoing, roughness }: Steadiness): boolean => ongoing > 0.85 && roughness < 0.004;

/** Rates of change of speed tried when nothing steady is heard, logarithms a second. */
const slopes = [0.25, -0.25, 0.6, -0.6];

/** Bending time sharpens nothing where the speed hardly changes: logarithms a second. */
const levelSlope = 0.08;

const isLevel = (stretches: readonly Stretch[]): boolean =>
  median(
    stretches.flatMap(({ path: { t, hz } }) =>
      Array.from(
        { length: t.length - 1 },
        (_, i) => Math.abs(Math.log(hz[i + 1]! / hz[i]!)) / (t[i + 1]! - t[i]!),
      ),
    ),
  ) < levelSlope;

/** Below this share of frames with evidence a path has probably lost the engine somewhere. */
const brokenUp = 0.6;

/** A stiff path is believed unless a looser one makes the lines this much clearer. */
const looserMustWin = 1.25;

function better(a: Hearing | null, b: Hearing | null): Hearing | null {
  if (a === null || b === null || b.objection !== null) return a ?? b;
  return a.objection !== null || b.choice.highest > looserMustWin * a.choice.highest ? b : a;
}

function heardAlong(
  bands: Bands,
  cycle: Cycle,
  bent: readonly (readonly Frame[])[],
  path: readonly CoarsePoint[],
): Hearing | null {
  const coarse = stretchesOf(path, windowFor(cycle) / 2, lasting(bands));
  if (coarse.length === 0) return null;
  const { choice, stretches } = settle(bands, coarse, cycle);
  const steadiness = steadinessOf(bent, stretches, cycle);
  const loudness = loudnessOf({ values: bands.low, rate: bands.rate }, cycle.cylinders / meanHz(stretches));
  return {
    frames: bent[0]!,
    choice,
    stretches,
    steadiness,
    objection: objection(choice, steadiness, loudness, typicalU(stretches)),
  };
}

const typicalU = (stretches: readonly Stretch[]): number =>
  median(stretches.flatMap(({ relativeU }) => [...relativeU]));

export const windowFor = (cycle: Cycle): number =>
  Math.min(0.8, Math.max(0.36, (4.5 * cycle.cylinders ** 0.7) / firingHz(cycle, cycle.lowRpm)));

/** Factors nearer to one than this are the grid's own width. */
const sameFactor = 0.03;

/** The path made exact and its factor chosen, twice: a wrong factor leaves lines that the path was not made exact for. */
function settle(
  bands: Bands,
  coarse: readonly Stretch[],
  cycle: Cycle,
): { readonly choice: Choice; readonly stretches: readonly Stretch[] } {
  let stretches = refined(bands.low, bands.rate, coarse, 2);
  const chosen = () => {
    const pathHz = meanHz(stretches);
    const choice = choose(orderSalience(bands, stretches), pathHz, cycle);
    // a multiple that is known and has no rival is not asked for again
    if (cycle.runsOn && !hasRival(choice, cycle)) return choice;
    return secondWitness(choice, likenessOf(bands, stretches), cycle, pathHz);
  };
  let choice = chosen();
  for (let round = 0; round < 2; round += 1) {
    const factor = choice.best.ratio * cycle.cylinders;
    if (Math.abs(Math.log(factor)) < sameFactor) break;
    stretches = refined(bands.low, bands.rate, scaled(stretches, factor));
    if (round === 0) choice = chosen();
  }
  return { choice, stretches };
}
