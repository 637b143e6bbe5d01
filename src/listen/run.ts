import { lowBandOf } from './bands.js';
import { type BladeStop, bladeStop } from './blade-stop.js';
import { type Belt, cycleOf, type EngineKind } from './engine-kind.js';
import { type EngineSpeed, speedIn } from './engine-speed.js';
import type { Signal } from './resample.js';
import { type RunDown, runDown } from './run-down.js';
import { type SecondShaft, secondShaft } from './second-shaft.js';
import { type SteadySegment, steadySegments } from './segments.js';
import { requireSound, type Sound } from './sound.js';
import { type Starts, startAttempts } from './starts.js';
import { type TurnBeat, turnBeat } from './turn-beat.js';

/** Something that happened at a moment of the recording. */
export interface RunEvent {
  readonly t: number;
  readonly kind: 'start attempt' | 'caught' | 'run-down';
}

/** All that a recording of a run tells without marks. */
export interface RunReport extends EngineSpeed {
  readonly events: readonly RunEvent[];
  readonly segments: readonly SteadySegment[];
  readonly starts: Starts;
  readonly runDown: RunDown | null;
  /** how long it turned on after it was let go; what drives a blade on the shaft stops with it */
  readonly stop: BladeStop;
  /** whether a blade on the shaft beats once a turn while it runs down */
  readonly beat: TurnBeat;
  /** what a belt turns beside it; only where the belt's ratio was said */
  readonly shaft?: SecondShaft;
}

/**
 * Everything that a recording of a run tells: speed over time, attempts to start, steady stretches, the last run-down,
 * the time in which it stood, what a belt turns. Method, error and validity as `engineSpeed`, `startAttempts`,
 * `steadySegments`, `runDown`, `bladeStop`, `turnBeat` and `secondShaft` have them.
 * Throws a ListenError for a sound or an engine that cannot be listened to.
 */
export function listenToRun(sound: Sound, engine: EngineKind): RunReport {
  const low = lowBandOf(requireSound(sound));
  const { signs: _, ...speed } = speedIn(sound, low, cycleOf(engine));
  const starts = startAttempts(low, speed.track);
  const down = runDown(speed.track);
  const stop = bladeStop(sound, speed.track);
  return {
    ...speed,
    says: [...cutShort(sound), speed.says].join(' '),
    events: eventsOf(starts, down),
    segments: steadySegments(low, speed.track, engine),
    starts,
    runDown: down,
    stop,
    beat: turnBeat(sound, stop, engine.strokes),
    ...(engine.belt && { shaft: shaftOf(sound, low, speed, { ...engine, belt: engine.belt }) }),
  };
}

function shaftOf(
  sound: Sound,
  low: Signal,
  { ambiguous, track }: EngineSpeed,
  engine: EngineKind & { readonly belt: Belt },
): SecondShaft {
  if (ambiguous) return { told: false, why: 'the speed of the engine itself is not settled' };
  return secondShaft(sound, low, track, engine);
}

const cutShort = ({ missingS }: Sound): string[] =>
  missingS === undefined ? [] : [`The file was cut short: its last ${missingS.toFixed(1)} s are missing.`];

function eventsOf({ attempts }: Starts, down: RunDown | null): readonly RunEvent[] {
  const events = attempts.flatMap(({ from, caught }): RunEvent[] => [
    { t: from, kind: 'start attempt' },
    ...(caught ? [{ t: from, kind: 'caught' } as const] : []),
  ]);
  return down ? [...events, { t: down.from, kind: 'run-down' }] : events;
}
