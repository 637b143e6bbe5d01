import {
  type EngineKind,
  ListenError,
  listenToRun,
  type RunReport,
  type Sound,
  type SteadySegment,
} from '../../listen/index.js';
import { counted, inPercent } from '../../phrase/index.js';
import { type Call, type Command, Failed, flag, text, WronglyCalled } from '../command.js';
import { decodeSound } from './decode-sound.js';
import { readInParts } from './in-file.js';

export const listen: Command = {
  usage: 'wristpin listen FILE --strokes 4|2 [--cylinders N] [--range LOW-HIGH] [--belt RATIO] [--json]',
  options: {
    strokes: { type: 'string', value: '4|2', help: 'four-stroke or two-stroke' },
    cylinders: { type: 'string', value: 'N', help: 'how many cylinders fire; 1 when left out' },
    range: {
      type: 'string',
      value: 'LOW-HIGH',
      help: 'speeds that this engine can have, in rpm, from its idle to its top; tells one multiple from another',
    },
    belt: {
      type: 'string',
      value: 'RATIO',
      help: 'driven over driving pulley, as 2.4: the speed of what the belt turns is looked for, and what the belt loses',
    },
    beats: {
      type: 'string',
      value: 'N',
      help: 'blades, knives or teeth on that shaft; 2 when left out',
    },
    json: {
      type: 'boolean',
      help: 'print {meanRpm, uncertaintyRpm, ambiguous, rivals, says, track, events, segments, starts, runDown, stop, beat, shaft} as JSON',
    },
  },
  examples: [
    'wristpin listen first-run.wav --strokes 4',
    'wristpin listen saw.mp3 --strokes 2 --range 2500-13500 --json',
    'wristpin listen tiller.wav --strokes 4 --belt 2.4 --beats 4',
  ],
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const engine = { strokes: strokes(call), cylinders: cylinders(call), ...range(call), ...belt(call) };
    const [file] = call.positionals;
    const sound = await readInParts(file!, (bytes) => decodeSound(bytes, file!));
    const heard = heardIn(sound, engine, file!);
    around.out(flag(call, 'json') ? JSON.stringify(heard, null, 2) : asText(heard));
  },
};

function heardIn(sound: Sound, engine: EngineKind, file: string): RunReport {
  try {
    return listenToRun(sound, engine);
  } catch (error) {
    if (error instanceof ListenError) throw new Failed(`${file}: ${error.message}`, { cause: error });
    throw error;
  }
}

function asText({ says, segments, starts, runDown, stop, beat, shaft }: RunReport): string {
  return [
    says,
    ...startWords(starts),
    ...segments.map(segmentWords),
    ...downWords(runDown),
    ...stopWords(stop),
    ...beatWords(beat),
    ...shaftWords(shaft),
  ].join('\n');
}

function startWords({ attempts, untilCaught, secondsToRun, told }: RunReport['starts']): string[] {
  if (attempts.length === 0) return [];
  if (!told)
    return [
      `${counted(attempts.length, 'start attempt')}; whether the engine ran on cannot be told from the sound.`,
    ];
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

const stopWords = (stop: RunReport['stop']): string[] =>
  stop.told
    ? [
        `It stood ${stop.seconds.toFixed(2)} ± ${(2 * stop.u).toFixed(2)} s after it was let go at ${stop.from.toFixed(2)} s.`,
      ]
    : [];

const beatWords = (beat: RunReport['beat']): string[] =>
  beat.told
    ? [
        beat.beats
          ? `While it ran down it beat once a turn, ${beat.share.toFixed(1)} times as loud as its two ends: hang the blade on a pin.`
          : 'While it ran down no beat once a turn stood out.',
      ]
    : [];

function shaftWords(shaft: RunReport['shaft']): string[] {
  if (!shaft) return [];
  if (!shaft.told) return [`What the belt turns cannot be told: ${shaft.why}.`];
  const { rpm, slip, u } = shaft;
  return [
    `The belt turns its shaft at ${rpm.toFixed(0)} rpm: it loses ${inPercent(slip, 1)} ± ${inPercent(2 * u, 1)}.`,
  ];
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

function belt(call: Call): Pick<EngineKind, 'belt'> {
  const [given, beats] = [text(call, 'belt'), text(call, 'beats') ?? '2'];
  if (given === undefined) return {};
  const ratio = Number(given);
  if (!/^\d*\.?\d+$/.test(given) || !(ratio >= 0.1 && ratio <= 20))
    throw new WronglyCalled(`--belt takes driven over driving diameter, 0.1 to 20, as 2.4; not “${given}”.`);
  if (!/^\d+$/.test(beats) || !(Number(beats) >= 1 && Number(beats) <= 40))
    throw new WronglyCalled(`--beats takes a whole number from 1 to 40, not “${beats}”.`);
  return { belt: { ratio, beats: Number(beats) } };
}

/** 800-3600, 800 to 3600, with or without rpm behind it. */
function range(call: Call): Pick<EngineKind, 'range'> {
  const given = text(call, 'range');
  if (given === undefined) return {};
  const found = /^(\d+(?:\.\d+)?)\s*(?:-|–|to)\s*(\d+(?:\.\d+)?)(?:\s*rpm)?$/.exec(given.trim());
  const [lowRpm, highRpm] = [Number(found?.[1]), Number(found?.[2])];
  if (found === null || !(lowRpm >= 100 && highRpm > lowRpm && highRpm <= 30_000))
    throw new WronglyCalled(
      `--range takes two speeds within 100 and 30000 rpm, the lower one first, as 900-3800; not “${given}”.`,
    );
  return { range: { lowRpm, highRpm } };
}
