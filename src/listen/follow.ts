import { type Bands, lasting } from './bands.js';
import { coarseTrack, fieldOf } from './coarse.js';
import type { Cycle } from './engine-kind.js';
import type { Frame } from './frames.js';
import { type Hearing, isSmooth, windowFor } from './hearing.js';
import { isMainsHum } from './hum.js';
import { median } from './quantile.js';
import type { Choice } from './rivals.js';
import { steadinessOf } from './steadiness.js';
import { refined, stretchesOf } from './stretches.js';

/** What is known from the pieces before, of which the next one goes on. */
export interface Known {
  readonly choice: Choice;
  /** usual evidence of a moment */
  readonly evidence: number;
  /** firings a second at the end */
  readonly lastHz: number;
}

/** It begins this near to where the last piece ended, in logarithms … */
const near = 0.06;
/** … and holds this share of its evidence. */
const asClear = 0.6;
/**
 * The same engine running on from one piece into the next, or null where that is not plain: heard at nearly the
 * same speed, without a break or a kink, as clearly as before. What was weighed there need not be weighed again.
 */
export function followed(
  bands: Bands,
  cycle: Cycle,
  even: readonly Frame[],
  { choice, evidence, lastHz }: Known,
): Hearing | null {
  const coarse = stretchesOf(
    coarseTrack(fieldOf([even], cycle), 'stiff'),
    windowFor(cycle) / 2,
    lasting(bands),
  );
  const [one, ...others] = coarse;
  if (!one || others.length > 0 || Math.abs(Math.log(one.path.hz[0]! / lastHz)) > near) return null;
  const stretches = refined(bands.low, bands.rate, coarse, 2);
  const steadiness = steadinessOf([even], stretches, cycle);
  const clear = median(steadiness.evidence) > asClear * evidence;
  if (!clear || !isSmooth(steadiness) || isMainsHum(bands, lastHz)) return null;
  return { choice, frames: even, stretches, steadiness, objection: null };
}
