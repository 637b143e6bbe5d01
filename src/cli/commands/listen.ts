import {
  ListenError,
  listenToRun,
  type RunReport,
  type Sound,
  type SteadySegment,
} from '../../listen/index.js';
import { counted, inPercent } from '../../phrase/index.js';
import { type Call, type Command, Failed, flag, text, WronglyCalled } from '../command.js';
import { decodeSound } from './decode-sound.js';
import { readWhole } from './in-file.js';

export const listen: Command = {
  usage: 'wristpin listen FILE --strokes 4|2 [--cylinders N] [--json]',
  options: {
    strokes: { type: 'string', value: '4|2', help: 'four-stroke or two-stroke' },
    cylinders: { type: 'string', value: 'N', help: 'how many cylinders fire; 1 when left out' },
    json: {
      type: 'boolean',
      help: 'print {meanRpm, uncertaintyRpm, ambiguous, rivals, says, track, events, segments, starts, runDown} as JSON',
    },
  },
  examples: ['wristpin listen first-run.wav --strokes 4', 'wristpin listen saw.mp3 --strokes 2 --json'],
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const engine = { strokes: strokes(call), cylinders: cylinders(call) };
    const [file] = call.positionals;
    const sound = await decodeSound(await readWhole(file!), file!);
    const heard = heardIn(sound, engine, file!);
    around.out(flag(call, 'json') ? JSON.stringify(heard, null, 2) : asText(heard));
  },
};

function heardIn(sound: Sound, engine: { strokes: 2 | 4; cylinders: number }, file: string): RunReport {
  try {
    return listenToRun(sound, engine);
  } catch (error) {
    if (error instanceof ListenError) throw new Failed(`${file}: ${error.message}`, { cause: error });
    throw error;
  }
}

function asText({ says, segments, starts, runDown }: RunReport): string {
  return [says, ...startWords(starts), ...segments.map(segmentWords), ...downWords(runDown)].join('\n');
}

function startWords({ attempts, untilCaught, secondsToRun }: RunReport['starts']): string[] {
  if (attempts.length === 0) return [];
  if (untilCaught === null) return [`${counted(attempts.length, 'start attempt')}; none caught.`];
  return [`Caught at attempt ${untilCaught}, ${secondsToRun!.toFixed(1)} s after the first.`];
}

function segmentWords({ from, to, meanRpm, u, hunting, beats }: SteadySegment): string {
  const swing = hunting
    ? `; hunts ±${hunting.swingRpm.toFixed(0)} rpm, ${hunting.hz.toFixed(2)} times a second`
    : '';
  const missed =
    beats && beats.missedShare > 0 ? `; ${inPercent(beats.missedShare, 1)} of the beats missing` : '';
  return `${from.toFixed(1)} to ${to.toFixed(1)} s: ${meanRpm.toFixed(0)} ±${Math.max(1, 2 * u).toFixed(0)} rpm${swing}${missed}.`;
}

const downWords = (down: RunReport['runDown']): string[] =>
  down ? [`Runs down from ${down.fromRpm.toFixed(0)} rpm in ${down.seconds.toFixed(1)} s.`] : [];

function strokes(call: Call): 2 | 4 {
  const given = text(call, 'strokes');
  if (given === '4') return 4;
  if (given === '2') return 2;
  throw new WronglyCalled(
    given === undefined
      ? 'Say --strokes 4 or --strokes 2: the beat alone does not tell.'
      : `--strokes takes 4 or 2, not “${given}”.`,
  );
}

function cylinders(call: Call): number {
  const given = text(call, 'cylinders') ?? '1';
  const value = Number(given);
  if (/^\d+$/.test(given) && value >= 1 && value <= 16) return value;
  throw new WronglyCalled(`--cylinders takes a whole number from 1 to 16, not “${given}”.`);
}
