import { type Bands, bandsOf, cut, lasting, lowBandOf } from './bands.js';
import { isDoubtful, type Signs, signsOf } from './doubt.js';
import { type Cycle, cycleOf, type EngineKind, firingHz, rpmOfCycle } from './engine-kind.js';
import { fallAfter, heardUntil, longestFallS } from './falling.js';
import { followed, type Known } from './follow.js';
import { framesOf } from './frames.js';
import { goingOn, type Part, pieces } from './going-on.js';
import { type Hearing, hear, loosely } from './hearing.js';
import { isMainsHum } from './hum.js';
import { median } from './quantile.js';
import type { Signal } from './resample.js';
import type { Choice } from './rivals.js';
import { requireSound, type Sound, seconds } from './sound.js';
import { meanHz, refined, type Stretch } from './stretches.js';
import { type TrackPoint, trackOf } from './track.js';
import { accepted, longestHeld, refused, type Verdict } from './verdict.js';

/** The crank speed over time; without a track where no engine is heard. */
export interface EngineSpeed extends Verdict {
  readonly track: readonly TrackPoint[];
  /** by which an engine was told from what is none; none of what was refused */
  readonly signs?: Signs;
}

/**
 * Crank speed from sound alone, at steps of 0.05 s, with its mean, its uncertainty and its rivals.
 *
 * Method: each part in which something goes on is heard in pieces of 20 s, see `hear`; what follows a piece's last firm
 * moment is looked through for a fall, see `fallAfter`. rpm is 120 × the cycle rate of a four-stroke, 60 × that of a
 * two-stroke. The mean is that of the longest stretch at one speed; a sound that holds none has that of its whole track.
 * Error: on made sounds of 800 to 4,500 rpm (two-strokes 1,800 to 14,000) at a signal-to-noise ratio of 0 dB and more,
 * the median error of a steady run is below 0.3 %; which multiple is meant is judged from the lines between firings and
 * from how like itself the sound is after a cycle, and is said to be ambiguous when another fits nearly as well.
 * Validity: 0.2 s and more; a sound shorter than one window (0.36 to 0.8 s) is taken whole as one window.
 * It is fast enough to be asked again and again for the last two seconds of a live recording.
 * Throws a ListenError for a sound or an engine that cannot be listened to.
 */
export function engineSpeed(sound: Sound, engine: EngineKind): EngineSpeed {
  requireSound(sound);
  return speedIn(sound, lowBandOf(sound), cycleOf(engine));
}

/** A piece long enough to tell an engine from a tune, short enough that its windows take little memory. */
const pieceS = 20;
/** An engine that runs on from one piece into the next stays within this factor. */
const runsOn = 1.6;

/** As `engineSpeed`, for a sound whose low band is at hand. */
export function speedIn(sound: Sound, low: Signal, cycle: Cycle): EngineSpeed {
  if (isSilent(low)) return { ...refused('The recording is silent.'), track: [] };
  const parts = goingOn(low).map((part) => heardInPart(sound, low, part, cycle));
  const heard = parts.flatMap(({ heard }) => heard);
  if (heard.length === 0) return { ...refused(parts[0]!.objection), track: [] };
  const track = inTime(heard.flatMap(({ track }) => track));
  const { choice, signs } = speaking(heard, track);
  return { ...accepted(choice, track, cycle, isDoubtful(signs, cycle)), track, signs };
}

/** The piece that speaks for the mean: one in which that stretch was heard, and of these one that settles it. */
function speaking(heard: readonly Piece[], track: readonly TrackPoint[]): Piece {
  const held = longestHeld(track);
  const [from, to] = [held[0]!.t, held.at(-1)!.t];
  const within = heard.filter((piece) => piece.track.some(({ t }) => t >= from && t <= to));
  return within.find(({ verdict }) => !verdict.ambiguous) ?? within[0] ?? heard[0]!;
}

/** A fall may reach into the next piece, which then begins with what is known already. */
function inTime(points: readonly TrackPoint[]): readonly TrackPoint[] {
  let last = Number.NEGATIVE_INFINITY;
  return points.filter(({ t }) => {
    if (t <= last) return false;
    last = t;
    return true;
  });
}

interface Piece {
  readonly choice: Choice;
  readonly evidence: number;
  readonly signs: Signs;
  readonly verdict: Verdict;
  readonly track: readonly TrackPoint[];
}

/** A multiple that was weighed in so many pieces and is not settled will not be by the next one either. */
const weighedEnough = 3;

/**
 * The pieces of a part in turn. Once a speed is settled, or was weighed often enough, the engine is followed from piece to
 * piece; where that is not plain the piece is heard near to that speed, and only if that fails anew.
 */
function heardInPart(sound: Sound, low: Signal, part: Part, cycle: Cycle) {
  const heard: Piece[] = [];
  let objection = '';
  let known: Known | undefined;
  let unsettled = 0;
  for (const piece of pieces(part, pieceS)) {
    const found = heardPiece({ sound, low, piece }, cycle, known);
    known = undefined;
    if (typeof found === 'string') {
      objection ||= found;
      unsettled = 0;
      continue;
    }
    heard.push(found);
    unsettled = found.verdict.ambiguous ? unsettled + 1 : 0;
    const last = found.track.at(-1)?.rpm;
    if (last !== undefined && (unsettled === 0 || unsettled >= weighedEnough))
      known = { choice: found.choice, evidence: found.evidence, lastHz: firingHz(cycle, last) };
  }
  return { heard, objection };
}

const around = (rpm: number, cycle: Cycle): Cycle => ({
  ...cycle,
  runsOn: true,
  lowRpm: Math.max(cycle.lowRpm, rpm / runsOn),
  highRpm: Math.min(cycle.highRpm, rpm * runsOn),
});

interface Listened {
  readonly sound: Sound;
  readonly low: Signal;
  readonly piece: Part;
}

/** What is heard in a piece, or why nothing is. */
function heardPiece({ sound, low, piece }: Listened, cycle: Cycle, known?: Known): Piece | string {
  const { from, to } = piece;
  const beyond = bandsOf(sound, low, from, Math.min(seconds(sound), to + longestFallS));
  const bands = cut(beyond, 0, to - from);
  const hearing = (known && heardOn(bands, cycle, known)) ?? hear(bands, cycle);
  if (hearing === null) return 'Nothing in this recording repeats.';
  const { choice, stretches, steadiness, objection } = hearing;
  if (objection !== null) return objection;
  if (steadiness.roughness < asTheMains && isMainsHum(bands, meanHz(stretches))) return hum;
  const exact = choice.best.evidence > clear ? refined(bands.low, bands.rate, stretches, 2) : stretches;
  const track = audible(wholeTrack(beyond, exact, hearing, cycle)).map((point) => ({
    ...point,
    t: point.t + from,
  }));
  const signs = signsOf(choice, stretches, steadiness);
  return {
    ...{ choice, signs, track },
    evidence: median(steadiness.evidence),
    verdict: accepted(choice, track, cycle, isDoubtful(signs, cycle)),
  };
}

/** What is known followed, or else heard near to its speed. */
function heardOn(bands: Bands, cycle: Cycle, known: Known): Hearing | null {
  const close = around(rpmOfCycle(cycle, known.lastHz / cycle.cylinders), cycle);
  const framing = loosely(close);
  const frames = framesOf(bands, framing);
  return followed(bands, close, frames, known) ?? firmly(hear(bands, close, framing, frames));
}

const firmly = (hearing: Hearing | null): Hearing | null => (hearing?.objection === null ? hearing : null);

/** The stretches, the last up to where it is firmly heard, and the fall that follows it, if one does. */
function wholeTrack(
  bands: Bands,
  stretches: readonly Stretch[],
  { frames, steadiness }: Hearing,
  cycle: Cycle,
): readonly TrackPoint[] {
  const evidence = { t: Float64Array.from(frames, ({ t }) => t), hz: Float64Array.from(steadiness.evidence) };
  const last = stretches.at(-1)!;
  const firm = {
    ...last,
    end: Math.min(last.end, heardUntil(last, frames, steadiness.evidence) + halfWindowS),
  };
  // heard to the very end of a piece with more to come: the next piece begins with what follows
  const goesOn = last.end - firm.end < halfWindowS && lasting(bands) > last.end + longestFallS - halfWindowS;
  // as firmly heard as ever when the sound ends: there is no room for a fall
  const toTheEnd = lasting(bands) - firm.end < noRoomS;
  const fall = goesOn || toTheEnd ? null : fallAfter(bands, firm, cycle);
  if (fall === null) return trackOf(stretches, evidence, cycle);
  const before = trackOf([...stretches.slice(0, -1), { ...firm, end: fall.stretch.start }], evidence, cycle);
  return [
    ...before,
    ...trackOf([fall.stretch], fall.evidence, cycle).filter(({ t }) => t > before.at(-1)!.t),
  ];
}

const halfWindowS = 0.2;
const noRoomS = 0.1;

/** What hums on the mains is tracked more smoothly than this. */
const asTheMains = 0.003;
const hum =
  'No engine is heard: what hums here keeps exactly to the frequency of the mains, as a lamp or a motor on it does.';

/** Lines this clear leave so little noise in the path that fast swings may be followed more closely. */
const clear = 0.02;

/** One part in a million of full scale: below what any microphone's own noise leaves. */
const isSilent = ({ values }: Signal): boolean => values.every((sample) => Math.abs(sample) < 1e-6);

/** A moment with less confidence carries a path over a gap, no speed of its own. */
const leastConfidence = 0.15;
/** A faint recording that is hardly heard at any one moment, only as a whole, keeps all of them. */
const faintShare = 0.4;

function audible(track: readonly TrackPoint[]): readonly TrackPoint[] {
  const heard = track.filter(({ confidence }) => confidence >= leastConfidence);
  return heard.length < faintShare * track.length ? track : heard;
}
