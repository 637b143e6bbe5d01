/** Engine speed from sound, side by side with general pitch trackers on the same made sounds. */
import { engineSpeed } from '../src/listen/engine-speed.js';
import { type EngineSound, engineSound } from '../test/listen/engine-sound.js';
import { overCollection } from './listen/collection.js';
import collection from './listen/collection.tsv?raw';
import { listenedTo } from './listen/command.js';
import { overMadeEngines } from './listen/engines.js';
import { others, type PitchTracker } from './listen/others.js';
import { noisyHarmonics } from './listen/tones.js';

const conditions: readonly Partial<EngineSound>[] = [
  { snrDb: 10 },
  { snrDb: 0 },
  { snrDb: 10, highPassHz: 100 },
  { snrDb: 10, fan: { blades: 9, level: 1 } },
  { snrDb: 10, alternate: 0.7 },
];
const speeds = { 4: [800, 1500, 2400, 3200, 4500], 2: [1800, 2700, 5000, 9000, 14_000] } as const;

const cases = ([4, 2] as const).flatMap((strokes) =>
  speeds[strokes].flatMap((rpm, i) =>
    conditions.map((more, j): EngineSound & { readonly steadyRpm: number } => ({
      strokes,
      rpm: () => rpm,
      steadyRpm: rpm,
      seconds: 4,
      sampleRate: 48_000,
      seed: 100 * strokes + 10 * i + j,
      ...more,
    })),
  ),
);

interface Tally {
  readonly errors: number[];
  octaves: number;
  flagged: number;
  none: number;
  ms: number;
}

/** User time of this process: other programs on the computer do not count. */
const timed = <T>(work: () => T): readonly [T, number] => {
  const start = process.cpuUsage().user;
  return [work(), (process.cpuUsage().user - start) / 1000] as const;
};

function note(tally: Tally, rpm: number | null, truth: number, ambiguous: boolean): void {
  const error = rpm === null ? Number.NaN : Math.abs(rpm / truth - 1);
  if (Number.isNaN(error)) tally.none += 1;
  else if (error <= 0.1) tally.errors.push(error);
  else if (ambiguous) tally.flagged += 1;
  else tally.octaves += 1;
}

const tallies = new Map<string, Tally>();
const tallyOf = (name: string): Tally => {
  const kept = tallies.get(name) ?? { errors: [], octaves: 0, flagged: 0, none: 0, ms: 0 };
  tallies.set(name, kept);
  return kept;
};

// each is let run warm first: a shop listens for minutes, and compiling is not listening
for (const of of cases.slice(0, 5)) {
  const sound = engineSound(of);
  engineSpeed(sound, { strokes: of.strokes, cylinders: 1 });
  for (const tracker of Object.values<PitchTracker>(others)) tracker(sound.samples, sound.sampleRate, 5, 45);
}

for (const of of cases) {
  const sound = engineSound(of);
  const ours = tallyOf('wristpin');
  const [heard, ms] = timed(() => engineSpeed(sound, { strokes: of.strokes, cylinders: 1 }));
  ours.ms += ms;
  note(ours, heard.meanRpm, of.steadyRpm, heard.ambiguous);
  const [low, high] = of.strokes === 4 ? [560 / 120, 5600 / 120] : [1400 / 60, 15_500 / 60];
  for (const [name, tracker] of Object.entries<PitchTracker>(others)) {
    const [hz, took] = timed(() => tracker(sound.samples, sound.sampleRate, low, high));
    const theirs = tallyOf(name);
    theirs.ms += took;
    note(theirs, hz * 30 * of.strokes, of.steadyRpm, false);
  }
}

console.log(`${cases.length} steady engines of 4 s at 48 kHz`);
for (const [name, { errors, octaves, flagged, none, ms }] of tallies) {
  const middle = errors.sort((a, b) => a - b)[errors.length >> 1] ?? Number.NaN;
  const each = ms / (4 * cases.length);
  console.log(
    `  ${name.padEnd(9)} right ${String(errors.length).padStart(2)}  wrong multiple ${String(octaves).padStart(2)}  said to be ambiguous and wrong ${flagged}  none ${none}  median error ${(100 * middle).toFixed(3)} %  ${each.toFixed(1)} ms a second of sound, ${(1000 / each).toFixed(0)} × real time`,
  );
}

const trials = 20;
const tone = { hz: 25, orders: 8, seconds: 2, sampleRate: 8000, ratio: 0.5 };
let square = 0;
for (let seed = 0; seed < trials; seed += 1) {
  const { meanRpm } = engineSpeed(noisyHarmonics({ ...tone, seed }).sound, { strokes: 4, cylinders: 1 });
  square += ((meanRpm ?? Number.NaN) / 120 - tone.hz) ** 2;
}
const { boundHz } = noisyHarmonics({ ...tone, seed: 0 });
const error = Math.sqrt(square / trials);
console.log(
  `a steady tone of ${tone.orders} harmonics: error ${error.toExponential(2)} Hz, Cramér–Rao bound ${boundHz.toExponential(2)} Hz, ratio ${(error / boundHz).toFixed(2)}`,
);

for (const minutes of [10, 60]) {
  const { cpuS, peakMb } = listenedTo(minutes);
  console.log(
    `wristpin listen over ${minutes} minutes: ${cpuS.toFixed(1)} s of processor time, ${((60 * minutes) / cpuS).toFixed(0)} × real time, ${peakMb.toFixed(0)} MB at most`,
  );
}

for (const half of ['guides', 'measured'] as const) overMadeEngines(half, 300);

const sounds = process.env.LISTEN_SOUNDS;
if (sounds) await overCollection(collection, sounds);
