import { engineSpeed } from '../../src/listen/engine-speed.js';
import type { EngineKind } from '../../src/listen/index.js';
import { engineSound } from '../../test/listen/engine-sound.js';
import { type MadeEngine, madeEngine } from './made.js';

/** Right within this share. */
const right = 0.03;
/** An answer to “was it idling?” leaves the speeds within this factor. */
const answered = 1.4;

/** What is said of the engine before it is listened to; null where the engine runs outside of that. */
const saidOf: Readonly<Record<string, (of: MadeEngine) => EngineKind | null>> = {
  'nothing said': ({ strokes, cylinders }) => ({ strokes, cylinders }),
  'its range said': ({ strokes, cylinders, steadyRpm }) => {
    const [lowRpm, highRpm] = strokes === 2 ? [2200, 12_500] : cylinders === 1 ? [900, 3800] : [700, 4200];
    return steadyRpm < lowRpm! || steadyRpm > highRpm!
      ? null
      : { strokes, cylinders, range: { lowRpm: lowRpm!, highRpm: highRpm! } };
  },
  'idling or not answered': ({ strokes, cylinders, steadyRpm }) => ({
    ...{ strokes, cylinders },
    range: { lowRpm: steadyRpm / answered, highRpm: steadyRpm * answered },
  }),
};

interface Tally {
  sounds: number;
  none: number;
  right: number;
  rightFlagged: number;
  wrongFlagged: number;
  wrongUnflagged: number;
}

/** Made engines of one half, one with even and one with odd seeds: what is heard right, wrong, and said to be unsettled. */
export function overMadeEngines(half: 'guides' | 'measured', engines: number): void {
  const tallies = new Map<string, Tally>();
  for (let n = 0; n < engines; n += 1) {
    const of = madeEngine(2 * n + (half === 'guides' ? 0 : 1));
    const sound = engineSound(of);
    for (const [said, kindOf] of Object.entries(saidOf)) {
      const kind = kindOf(of);
      if (kind === null) continue;
      const name = `${of.cylinders === 1 ? 'one cylinder' : 'many cylinders'}, ${said}`;
      const tally = tallies.get(name) ?? {
        ...{ sounds: 0, none: 0, right: 0, rightFlagged: 0, wrongFlagged: 0, wrongUnflagged: 0 },
      };
      tallies.set(name, tally);
      const { meanRpm, ambiguous } = engineSpeed(sound, kind);
      tally.sounds += 1;
      if (meanRpm === null) tally.none += 1;
      else if (Math.abs(meanRpm / of.steadyRpm - 1) < right) {
        tally.right += 1;
        if (ambiguous) tally.rightFlagged += 1;
      } else tally[ambiguous ? 'wrongFlagged' : 'wrongUnflagged'] += 1;
    }
  }
  for (const [name, { sounds, none, ...heard }] of [...tallies].sort())
    console.log(
      `  ${name.padEnd(38)} ${sounds} made engines (${half}): ${heard.right} right, ${heard.rightFlagged} of them flagged; ${heard.wrongFlagged} wrong and flagged, ${heard.wrongUnflagged} wrong unflagged; ${none} not heard`,
    );
}
