import { bandsOf } from './bands.js';
import { salienceAt } from './comb.js';
import type { Belt, EngineKind } from './engine-kind.js';
import { orderSalience } from './orders.js';
import { median } from './quantile.js';
import type { Signal } from './resample.js';
import type { Salience } from './salience.js';
import { lasts, steadyRuns } from './segments.js';
import type { Sound } from './sound.js';
import type { Stretch } from './stretches.js';
import type { TrackPoint } from './track.js';

/** What a belt turns beside the engine, as far as the sound tells its speed. */
export type SecondShaft =
  | {
      readonly told: true;
      /** mean speed of the driven pulley over the stretch */
      readonly rpm: number;
      /** share of its speed that the belt loses, from the pulleys' ratio: 0 none */
      readonly slip: number;
      /** standard uncertainty of `slip`; that of the ratio as it was given is not in it */
      readonly u: number;
    }
  | { readonly told: false; readonly why: string };

/** A belt that loses more than this stands or smokes; one that gains this much has other pulleys than were said. */
const most = { slip: 0.4, gain: 0.03 };
/** Shares of a turn of the engine from one speed that is tried to the next. */
const step = 0.0004;
const longestS = 16;
const shortestS = 2;
/** A line this near to one of the engine's own, in orders, is not told from it: two lines of the longest window. */
const apart = 0.035;
const harmonics = 6;
/** Lines of the driven shaft that are clear of the engine's, and how far they must stand out. */
const least = { lines: 2, salience: 0.3, lead: 1.5 };
/** Speeds that differ by less are one. */
const same = 0.012;

/**
 * The speed of the driven pulley beside the engine's, out of one recording: what is missing from the ratio, the belt loses.
 *
 * Source: Machinery's Handbook, belts: without slip speeds are inversely as the pitch diameters.
 * Method: on orders of the engine's own path (so that its changes of speed smear nothing) a second row of lines is looked
 * for: multiples of the beats that the driven shaft gives in a turn, its speed from 40 % below to 3 % above what the
 * pulleys ask for; lines that fall together with the engine's are left out. Uncertainty: the width over which the row
 * loses half of its height, and the engine's own. Error: below 0.5 % of speed on made sounds.
 * Validity: a shaft that is heard at all: blades, knives, teeth. Not told: where the engine's multiple is open, nothing was
 * held for two seconds, fewer than two lines are clear of the engine's, or another speed fits nearly as well.
 *
 * @param track crank speed as it was heard
 */
export function secondShaft(
  sound: Sound,
  low: Signal,
  track: readonly TrackPoint[],
  { strokes, belt }: EngineKind & { readonly belt: Belt },
): SecondShaft {
  const run = steadyRuns(track).toSorted((a, b) => lasts(b) - lasts(a))[0];
  if (!run || lasts(run) < shortestS)
    return { told: false, why: 'no speed of the engine is held for two seconds' };
  const part = run.slice(0, longestS * 20);
  const [from, to] = [part[0]!.t, part.at(-1)!.t];
  const witnesses = orderSalience(bandsOf(sound, low, from, to), [turnsOf(part)]);
  const own = strokes === 2 ? 1 : 0.5;
  const asked = 1 / belt.ratio;
  const tried = Array.from(
    { length: Math.floor((asked * (most.slip + most.gain)) / step) },
    (_, i) => asked * (1 - most.slip) + i * step,
  );
  const rated = tried.map((turns) => ({ turns, worth: worthOf(witnesses, turns * belt.beats, own) }));
  return judged(rated, { asked, part, perTurn: belt.beats / own });
}

type Rated = { readonly turns: number; readonly worth: number };

function judged(
  rated: readonly Rated[],
  {
    asked,
    part,
    perTurn,
  }: { readonly asked: number; readonly part: readonly TrackPoint[]; readonly perTurn: number },
): SecondShaft {
  const best = rated.reduce((a, b) => (b.worth > a.worth ? b : a), { turns: 0, worth: 0 });
  if (best.worth < least.salience) return { told: false, why: 'no second shaft stands out of the sound' };
  const others = rated.filter(({ turns }) => Math.abs(turns / best.turns - 1) > same);
  const next = Math.max(0, ...others.map(({ worth }) => worth));
  if (best.worth < least.lead * next)
    return { told: false, why: 'more than one speed of it fits what is heard' };
  if (isSimple(best.turns * perTurn))
    return {
      told: false,
      why: 'what is heard may be the engine itself: it stands in a whole ratio to its speed',
    };
  const near = rated.filter(
    ({ turns, worth }) => Math.abs(turns / best.turns - 1) <= same && worth > best.worth / 2,
  );
  const width = near.at(-1)!.turns - near[0]!.turns + step;
  const weight = near.reduce((sum, { worth }) => sum + worth, 0);
  const turns = near.reduce((sum, { turns, worth }) => sum + turns * worth, 0) / weight;
  return {
    told: true,
    rpm: turns * median(part.map(({ rpm }) => rpm)),
    slip: 1 - turns / asked,
    u: width / 4 / asked,
  };
}

/** Where a wrong multiple was taken for the engine's speed, its own lines stand in such a ratio to that. */
const simpleParts = [1, 2, 3, 4];
const simpleWithin = 0.008;

const isSimple = (ratio: number): boolean =>
  simpleParts.some((q) => Math.abs((ratio * q) / Math.round(ratio * q) - 1) < simpleWithin);

/** Mean salience of the multiples that are clear of the engine's own; 0 where too few are, or too few stand out. */
function worthOf(witnesses: readonly Salience[], beats: number, own: number): number {
  let [sum, count, standing] = [0, 0, 0];
  for (let k = 1; k <= harmonics; k += 1) {
    const order = k * beats;
    if (Math.abs(order / own - Math.round(order / own)) * own < apart) continue;
    const value = Math.max(...witnesses.map((each) => salienceAt(each, order / each.step)));
    sum += value;
    count += 1;
    if (value > least.salience) standing += 1;
  }
  return standing < least.lines ? 0 : sum / count;
}

/** The track as a path of crank turns, from the beginning of the part on. */
function turnsOf(part: readonly TrackPoint[]): Stretch {
  const begins = part[0]!.t;
  const t = Float64Array.from(part, (point) => point.t - begins);
  return {
    path: { t, hz: Float64Array.from(part, ({ rpm }) => rpm / 60) },
    start: 0,
    end: t.at(-1)!,
    relativeU: Float64Array.from(part, ({ rpm, u }) => u / rpm),
  };
}
