import { type Bands, cut, lasting } from './bands.js';
import { coarseTrack, fieldOf, highest } from './coarse.js';
import { type Cycle, firingHz, rpmOfCycle } from './engine-kind.js';
import { cycleEvidence } from './evidence.js';
import { type Frame, framesOf } from './frames.js';
import { type Path, readerOf } from './path.js';
import { median } from './quantile.js';
import { refined, type Stretch, stretchesOf } from './stretches.js';

/** Falls are looked for from this long before the end of a stretch … */
const leadS = 0.8;
/** … and no farther beyond it: an engine without fuel or spark stands by then. Trade judgement, no source. */
export const longestFallS = 10;
/** A stretch goes on as long as its speed holds this share of its usual evidence. */
const stillHeard = 0.4;
/** Short windows, for the speed changes much within a long one; cycles of the slowest end still fit in. */
const framing = { windowS: 0.36, hopS: 0.06 };
/** Rates of fall that time is bent by, logarithms a second: a saw stands within a second, a flywheel in five. */
const slopes = [0, -0.25, -0.6, -1.2, -2.2];
/** Below this share of the speed before it nothing fires and nothing pumps that could be heard. */
const lowest = 0.22;
/** A fall that is heard for so short a time, or falls by less, is the end of the sound. */
const least = { seconds: 0.25, share: 0.9 };
/** Room noise alone gives a path this share of what the engine gave before it, and more a fall. */
const overNoise = 0.008;
/** A path that begins farther from where the stretch ended, in logarithms, hears something else. */
const near = 0.06;

/** A stretch in which the speed falls, with the evidence for it at each moment of its path. */
export interface Fall {
  readonly stretch: Stretch;
  readonly evidence: Path;
}

/**
 * The fall of the speed after a stretch has ended, or null where none is heard.
 *
 * Method: the multiple is known, so only speeds from a little above the last one downward are looked among, in short
 * windows with time bent by five rates of fall; the loose path from there on, as long as something is heard, made exact.
 */
export function fallAfter(bands: Bands, stretch: Stretch, cycle: Cycle): Fall | null {
  const from = Math.max(stretch.start, stretch.end - leadS);
  const to = Math.min(lasting(bands), stretch.end + longestFallS);
  if (to - from < framing.windowS + 2 * framing.hopS) return null;
  const begins = readerOf(stretch.path)(from);
  const rpm = rpmOfCycle(cycle, begins / cycle.cylinders);
  const falling = { ...cycle, lowRpm: lowest * rpm, highRpm: 1.1 * rpm };
  if (framing.windowS * firingHz(cycle, falling.lowRpm) < 1) return null;
  const part = cut(bands, from, to);
  if (to - stretch.end < framing.windowS && runsToTheEnd(part, stretch, from, cycle)) return null;
  const field = fieldOf(
    slopes.map((slope) => framesOf(part, framing, slope)),
    falling,
  );
  const evidence = field.rows.map(highest);
  const until = lastHeard(evidence);
  const path = coarseTrack(field, 'loose').filter((_, n) => n <= until);
  const [found] = stretchesOf(path, 0, lasting(part));
  if (!found || found.start > leadS || Math.abs(Math.log(found.path.hz[0]! / begins)) > near) return null;
  const [fine] = refined(part.low, part.rate, [found], 2);
  if (!isFall(fine!)) return null;
  const t = Float64Array.from(field.times, (each) => each + from);
  return { stretch: later(fine!, from), evidence: { t, hz: Float64Array.from(evidence) } };
}

/** At its end the sound repeats at the speed of the stretch about as clearly as before: there is no fall to be looked for. */
function runsToTheEnd(part: Bands, { path }: Stretch, from: number, cycle: Cycle): boolean {
  const { windowS } = framing;
  const frames = framesOf(part, { windowS, hopS: lasting(part) - windowS });
  const [before, last] = [frames[0]!, frames.at(-1)!].map(({ t, witnesses }) =>
    cycleEvidence(witnesses, readerOf(path)(from + t) / cycle.cylinders, cycle),
  );
  return last! > asClear * before!;
}

/** A fall by a tenth within a window smears all lines but the lowest, and leaves far less of the evidence than this. */
const asClear = 0.6;

/** The last frame around which more is heard than room noise gives. */
function lastHeard(evidence: readonly number[]): number {
  const before = median(evidence.slice(0, Math.floor(leadS / framing.hopS) >> 1));
  return evidence.findLastIndex(
    (_, n) => median(evidence.slice(Math.max(0, n - 3), n + 4)) > overNoise * before,
  );
}

const isFall = ({ path: { hz, t } }: Stretch): boolean =>
  hz.at(-1)! < least.share * hz[0]! && t.at(-1)! - t[0]! >= least.seconds;

const later = (stretch: Stretch, by: number): Stretch => ({
  ...stretch,
  start: stretch.start + by,
  end: stretch.end + by,
  path: { ...stretch.path, t: stretch.path.t.map((t) => t + by) },
});

/** The moment up to which the evidence speaks for a path: a stiff one may be drawn on through what is a fall. */
export function heardUntil(stretch: Stretch, frames: readonly Frame[], evidence: readonly number[]): number {
  const within = frames.flatMap(({ t }, n) =>
    t >= stretch.start && t <= stretch.end ? [{ t, e: evidence[n]! }] : [],
  );
  const usual = median(within.map(({ e }) => e));
  return within.findLast(({ e }) => e > stillHeard * usual)?.t ?? stretch.end;
}
