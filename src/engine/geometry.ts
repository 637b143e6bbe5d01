import { EngineError, requireFinite, requireNotNegative, requirePositive } from './error.js';
import { displacementCc } from './slider-crank.js';

/** What bounds the space over the piston at top. */
export interface Chamber {
  readonly boreMm: number;
  readonly strokeMm: number;
  /** of the head, by burette */
  readonly headCc: number;
  /** squeezed gasket: thickness and the area of its opening; a side-valve's opening spans the valves too */
  readonly gasketMm: number;
  readonly gasketAreaMm2: number;
  /** the piston below the block's face at top; negative when it stands above */
  readonly deckMm: number;
  /** hollow in the crown positive, dome negative; a side-valve's pockets over the valves belong here too */
  readonly crownCc: number;
}

export interface CompressionRatio {
  readonly ratio: number;
  readonly sweptCc: number;
  readonly clearanceCc: number;
}

/**
 * Geometric compression ratio from the chamber's parts.
 *
 * Method: (swept + clearance)/clearance, clearance = head + gasket opening × thickness + bore area × deck + crown.
 * Exact for the figures given; 1 cc of burette error on a 29 cc chamber is 0.25 of a ratio of 8. Throws EngineError for
 * a chamber without volume. Example: 65 × 62 mm, head 24 cc, gasket 1.2 mm over 3318 mm², deck 0.3 mm: ratio 8.10.
 */
export function compressionRatio(chamber: Chamber): CompressionRatio {
  const sweptCc = displacementCc(chamber);
  const clearanceCc = clearance(chamber);
  if (!(clearanceCc > 0))
    throw new EngineError(
      `the chamber must have a volume above 0; its parts add up to ${clearanceCc.toFixed(2)} cc.`,
      'head',
      clearanceCc,
    );
  const ratio = (sweptCc + clearanceCc) / clearanceCc;
  if (ratio > 16)
    throw new EngineError(
      `its parts make a ratio of ${ratio.toFixed(1)}:1, which no engine of this kind has: look at head, deck and crown.`,
      'head',
      ratio,
    );
  return { ratio, sweptCc, clearanceCc };
}

function clearance({ boreMm, headCc, gasketMm, gasketAreaMm2, deckMm, crownCc }: Chamber): number {
  requireNotNegative(headCc, 'head');
  requireNotNegative(gasketMm, 'gasket');
  requireNotNegative(gasketAreaMm2, 'gasketArea');
  requireFinite(crownCc, 'crown');
  const deckCc = ((Math.PI / 4) * boreMm * boreMm * requireFinite(deckMm, 'deck')) / 1000;
  return headCc + (gasketMm * gasketAreaMm2) / 1000 + deckCc + crownCc;
}

/** Standard uncertainties of a chamber's parts as they are measured in a shop. */
export interface ChamberDoubt {
  readonly headCc: number;
  readonly lengthMm: number;
}

/** A burette in practised hands and a caliper: trade judgement, no source. */
export const usualDoubt: ChamberDoubt = { headCc: 0.25, lengthMm: 0.05 };

/**
 * Standard uncertainty of the ratio: each part moved by its own, in quadrature (JCGM 100:2008, 5.1.2).
 * Example: 65 × 62 mm, head 29.4 cc by burette: 0.09.
 */
export function ratioUncertainty(chamber: Chamber, { headCc, lengthMm }: ChamberDoubt = usualDoubt): number {
  const { ratio } = compressionRatio(chamber);
  const moved = (change: Partial<Chamber>) => compressionRatio({ ...chamber, ...change }).ratio - ratio;
  return Math.hypot(
    moved({ headCc: chamber.headCc + headCc }),
    moved({ gasketMm: chamber.gasketMm + lengthMm }),
    moved({ deckMm: chamber.deckMm + lengthMm }),
    moved({ boreMm: chamber.boreMm + lengthMm }),
    moved({ strokeMm: chamber.strokeMm + lengthMm }),
  );
}

/**
 * The ratio after so much is milled off the head's face, over a recess of this area at the face.
 *
 * Method: the recess loses area × cut. Exact while the recess has straight walls over the cut; a sloped wall loses less
 * as it goes. On a side-valve the recess spans bore and valves, so the same cut takes more volume than on an overhead
 * valve, and the valves come nearer to the roof by the whole cut. Throws EngineError when nothing of the chamber is
 * left. Example: 205.7 cc swept, 29 cc, recess 4500 mm², cut 0.5 mm: 8.09 to 8.69.
 */
export function ratioAfterMilling(
  { sweptCc, clearanceCc }: Pick<CompressionRatio, 'sweptCc' | 'clearanceCc'>,
  cutMm: number,
  recessMm2: number,
): number {
  requirePositive(recessMm2, 'recess');
  const left =
    requirePositive(clearanceCc, 'clearance') - (requireNotNegative(cutMm, 'cut') * recessMm2) / 1000;
  if (!(left > 0))
    throw new EngineError(`a cut of ${cutMm} mm leaves no chamber (${left.toFixed(2)} cc).`, 'cut', cutMm);
  return (requirePositive(sweptCc, 'swept') + left) / left;
}

/** Clearance volume of a ratio: swept/(ratio − 1). Example: 205.7 cc at 8: 29.4 cc. */
export function clearanceForRatio(sweptCc: number, ratio: number): number {
  return requirePositive(sweptCc, 'swept') / (requireRatio(ratio) - 1);
}

/**
 * Efficiency of the ideal Otto cycle, 1 − r^{1−γ}.
 * Source: *Internal Combustion Engine Fundamentals* 1988, ch. 5. An upper bound: a real small engine reaches a third to
 * a half of it; what it is good for is a comparison of two ratios. Example: 8: 0.5647.
 */
export function ottoEfficiency(ratio: number, gamma = 1.4): number {
  return 1 - requireRatio(ratio) ** (1 - gamma);
}

function requireRatio(ratio: number): number {
  if (ratio > 1) return ratio;
  throw new EngineError(`a compression ratio is above 1; got ${ratio}.`, 'ratio', ratio);
}
