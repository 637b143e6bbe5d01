import type { EngineKind } from './engine-kind.js';
import { type EngineSpeed, engineSpeed } from './engine-speed.js';
import { type RunDown, runDown } from './run-down.js';
import { type SteadySegment, steadySegments } from './segments.js';
import type { Sound } from './sound.js';
import { type Starts, startAttempts } from './starts.js';

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
}

/**
 * Everything that a recording of a run tells: speed over time, attempts to start, steady stretches, the last run-down.
 * Method, error and validity as `engineSpeed`, `startAttempts`, `steadySegments` and `runDown` have them.
 * Throws a ListenError for a sound or an engine that cannot be listened to.
 */
export function listenToRun(sound: Sound, engine: EngineKind): RunReport {
  const speed = engineSpeed(sound, engine);
  const starts = startAttempts(sound, speed.track);
  const down = runDown(speed.track);
  return {
    ...speed,
    events: eventsOf(starts, down),
    segments: steadySegments(sound, speed.track, engine),
    starts,
    runDown: down,
  };
}

function eventsOf({ attempts }: Starts, down: RunDown | null): readonly RunEvent[] {
  const events = attempts.flatMap(({ from, caught }): RunEvent[] => [
    { t: from, kind: 'start attempt' },
    ...(caught ? [{ t: from, kind: 'caught' } as const] : []),
  ]);
  return down ? [...events, { t: down.from, kind: 'run-down' }] : events;
}
