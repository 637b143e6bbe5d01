import { describe, expect, test } from 'vitest';
import { lowBandOf } from '../../src/listen/bands.js';
import { engineSpeed } from '../../src/listen/engine-speed.js';
import { loadSteps } from '../../src/listen/load-steps.js';
import { listenToRun } from '../../src/listen/run.js';
import { runDown } from '../../src/listen/run-down.js';
import { steadySegments } from '../../src/listen/segments.js';
import { orderLines, spectrogram } from '../../src/listen/spectrogram.js';
import { startAttempts } from '../../src/listen/starts.js';
import { campaign } from '../support/campaign.js';
import { type EngineSound, engineSound, normal, random } from './engine-sound.js';

const engine = { strokes: 4, cylinders: 1 } as const;
const report = (of: Omit<EngineSound, 'strokes'>) =>
  listenToRun(engineSound({ strokes: 4, snrDb: 15, ...of }), engine);

describe('hunting of ±60 rpm is recovered within a tenth', () => {
  test.each([0.3, 0.7, 1.2, 2])('%s times a second', (hz) => {
    const { segments } = report({
      rpm: (t) => 3000 + 60 * Math.sin(2 * Math.PI * hz * t),
      seconds: 12,
      seed: 8,
    });
    const longest = [...segments].sort((a, b) => b.to - b.from - (a.to - a.from))[0]!;
    expect(Math.abs(longest.hunting!.swingRpm / 60 - 1)).toBeLessThan(0.1);
    expect(Math.abs(longest.hunting!.hz / hz - 1)).toBeLessThan(0.1);
  });

  test('a steady engine does not hunt', () => {
    for (const { hunting } of report({ rpm: () => 3000, seconds: 8, seed: 9 }).segments)
      expect(hunting).toBeNull();
  });
});

/** Pulls of 0.6 s, two seconds apart, then a run from the last of them on. */
function startingSound(pulls: number) {
  const begins = (n: number) => 1 + 2 * n;
  const last = begins(pulls - 1);
  const pulling = (t: number) =>
    Array.from({ length: pulls }, (_, n) => t - begins(n)).some((s) => s >= 0 && s < 0.6);
  const sound = engineSound({
    strokes: 4,
    rpm: (t) => (t > last + 0.4 ? 2800 : 500),
    fires: (t) => t > last || pulling(t),
    seconds: last + 7,
    seed: pulls,
    snrDb: 25,
  });
  return { sound, last };
}

test('start attempts are counted exactly', () => {
  for (const pulls of [1, 2, 3, 5]) {
    const { sound, last } = startingSound(pulls);
    const { track } = engineSpeed(sound, engine);
    const starts = startAttempts(lowBandOf(sound), track);
    expect(starts.attempts).toHaveLength(pulls);
    expect(starts.untilCaught).toBe(pulls);
    expect(starts.secondsToRun!).toBeGreaterThan(last - 1.2);
    expect(starts.secondsToRun!).toBeLessThan(last + 1.5);
  }
});

test('an engine that never catches is counted, and has no time to a run', () => {
  const sound = engineSound({
    strokes: 4,
    rpm: () => 500,
    fires: (t) => t % 2 > 1 && t % 2 < 1.6,
    seconds: 8,
    seed: 4,
    snrDb: 25,
  });
  const starts = startAttempts(lowBandOf(sound), []);
  expect(starts.attempts).toHaveLength(4);
  expect(starts.untilCaught).toBeNull();
  expect(starts.secondsToRun).toBeNull();
});

describe('a start is told by the sound that follows, or not told', () => {
  const pulls = (t: number) => (t > 1 && t < 1.6) || (t > 3 && t < 3.6);
  const of = { strokes: 4, seconds: 12, seed: 6 } as const;
  test('with room noise 20 dB below, two pulls and the third that catches are three', () => {
    const { starts } = report({
      ...of,
      rpm: (t) => (t > 5.4 ? 2800 : 500),
      fires: (t) => t > 5 || pulls(t),
      snrDb: 20,
    });
    expect(starts).toMatchObject({ untilCaught: 3, told: true });
  });

  test('two pulls with quiet after them: none caught, and that is told', () => {
    const { starts } = report({ ...of, rpm: () => 500, fires: pulls, snrDb: 25 });
    expect(starts).toMatchObject({ untilCaught: null, told: true });
    expect(starts.attempts).toHaveLength(2);
  });

  test('sound that goes on after the last pull without a speed: not told', () => {
    const { samples, sampleRate } = engineSound({
      strokes: 4,
      rpm: () => 500,
      fires: pulls,
      seconds: 10,
      seed: 6,
    });
    const uniform = random(5);
    const roars = samples.map((x, i) => (i > 5 * sampleRate ? x + 0.2 * normal(uniform) : x));
    const { starts, events } = listenToRun({ samples: roars, sampleRate }, engine);
    expect(starts).toMatchObject({ untilCaught: null, told: false });
    expect(events.some(({ kind }) => kind === 'caught')).toBe(false);
  });
});

test('droop and recovery are read from a sound, and the stop at its end is no part of the last step', () => {
  const sound = engineSound({
    strokes: 4,
    rpm: (t) => (t < 6 ? 3600 : t < 14 ? 3400 : Math.max(1, 3400 * (1 - (t - 14) / 3))),
    fires: (t) => t < 16.8,
    seconds: 18,
    seed: 9,
    snrDb: 20,
  });
  const { track } = engineSpeed(sound, engine);
  const [step] = loadSteps(track, [{ t: 6, kind: 'load on' }]);
  // (3600 − 3400) / 3600, as the sound was made
  expect(Math.abs(step!.droopPercent - 5.56)).toBeLessThan(0.2);
});

const points = (seconds: number, rpm: (t: number) => number) =>
  Array.from({ length: seconds * 20 }, (_, i) => ({ t: i / 20, rpm: rpm(i / 20), u: 2, confidence: 1 }));

test('droop and recovery are read off the track at the mark', () => {
  const track = points(20, (t) => (t < 10 ? 3600 : 3400 - 400 * Math.exp(-(t - 10) / 0.5)));
  const [step] = loadSteps(track, [{ t: 10, kind: 'load on' }]);
  expect(step!.droopPercent).toBeCloseTo(100 * (200 / 3600), 1);
  expect(step!.extremeRpm).toBeCloseTo(3000, 0);
  // 400 exp(−t/0.5) falls to 1.5 % of 3400 after 1.03 s
  expect(step!.recoveryS!).toBeCloseTo(1.03, 1);
  expect(loadSteps(track, [{ t: 19.5, kind: 'load on' }])).toEqual([]);
});

test('run-down is the time from the last governed moment to the last that is heard', () => {
  const track = points(10, (t) => (t < 6 ? 3000 : 3000 - 700 * (t - 6)));
  const down = runDown(track)!;
  expect(down.fromRpm).toBeCloseTo(3000, -2);
  expect(down.seconds).toBeCloseTo(3.85, 0);
  expect(runDown(points(5, () => 3000))).toBeNull();
  expect(runDown([])).toBeNull();
});

describe('a run-down is found in the sound itself', () => {
  /** Fires on, more and more slowly, until it all but stands, as an engine whose fuel is shut off pumps on. */
  const stopped = (strokes: 2 | 4, rpm: number, fallS: number) =>
    listenToRun(
      engineSound({
        strokes,
        rpm: (t) => (t < 6 ? rpm : Math.max(1, rpm * (1 - (t - 6) / fallS))),
        seconds: 7.5 + fallS,
        seed: rpm + 10 * fallS,
        snrDb: 20,
        fires: (t) => t < 6 + 0.93 * fallS,
      }),
      { strokes, cylinders: 1 },
    );

  const falls = [3, 1.5, 5] as const;
  test.each([
    [4, 1800, 0],
    [4, 3000, 1],
    [2, 3000, 2],
    [2, 5000, 0],
  ] as const)('%s strokes at %s rpm', (strokes, rpm, first) => {
    for (let n = 0; n < campaign(1, falls.length); n += 1) {
      const fallS = falls[(first + n) % falls.length]!;
      const { runDown: down, meanRpm, events, track } = stopped(strokes, rpm, fallS);
      expect(down, `${fallS} s`).not.toBeNull();
      expect(Math.abs(down!.fromRpm / rpm - 1)).toBeLessThan(0.01);
      expect(Math.abs(meanRpm! / rpm - 1)).toBeLessThan(0.005);
      // the speed leaves its 3 % after so long; it is followed to less than two thirds of what it was
      expect(down!.from).toBeGreaterThan(5.8);
      expect(down!.from).toBeLessThan(6.2 + 0.03 * fallS);
      expect(down!.toRpm).toBeLessThan(0.75 * rpm);
      expect(down!.seconds).toBeLessThan(fallS);
      const errors = track
        .filter(({ t }) => t > down!.from)
        .map(({ t, rpm: heard }) => Math.abs(heard / (rpm * (1 - (t - 6) / fallS)) - 1))
        .toSorted((x, y) => x - y);
      expect(errors[errors.length >> 1], `${fallS} s`).toBeLessThan(0.02);
      expect(events.at(-1)!.kind).toBe('run-down');
    }
  });

  test('none where the sound breaks off or the engine runs on', () => {
    const of = { strokes: 4, rpm: () => 3000, seconds: 9, seed: 3, snrDb: 25 } as const;
    expect(listenToRun(engineSound(of), engine).runDown).toBeNull();
    expect(listenToRun(engineSound({ ...of, fires: (t) => t < 7 }), engine).runDown).toBeNull();
  });
});

describe('one speed is said of one stretch only', () => {
  test('a run that idles, is opened up and idles again has no mean between the two', () => {
    const { meanRpm, segments, says } = report({
      rpm: (t) => (t < 5 || t > 10 ? 2800 : 5400),
      seconds: 15,
      seed: 3,
    });
    expect(segments.map((each) => Math.round(each.meanRpm / 100))).toEqual([28, 54, 28]);
    expect([2800, 5400].some((rpm) => Math.abs(meanRpm! / rpm - 1) < 0.01)).toBe(true);
    expect(says).toMatch(
      /^The engine turns at 28\d\d rpm from 0 to 5 s, 5\d\d\d rpm from 5 to 10 s, 2\d\d\d rpm from/,
    );
  });

  test('two runs in one recording are both heard, the first as one that caught', () => {
    const { segments, starts, events } = report({
      rpm: (t) => (t < 9 ? 2400 : 3200),
      fires: (t) => (t > 1 && t < 8) || (t > 11 && t < 19),
      seconds: 20,
      seed: 5,
      snrDb: 25,
    });
    expect(segments.map((each) => Math.round(each.meanRpm / 10))).toEqual([240, 320]);
    expect(starts.untilCaught).toBe(1);
    expect(events.map(({ kind }) => kind)).toEqual(['start attempt', 'caught']);
  });

  test('hunting for eight seconds in the middle of twenty-four is told', () => {
    const { segments } = report({
      rpm: (t) => (t < 8 || t > 16 ? 3000 : 3000 + 120 * Math.sin(2 * Math.PI * 0.6 * t)),
      seconds: 24,
      seed: 4,
    });
    expect(segments).toHaveLength(1);
    expect(Math.abs(segments[0]!.hunting!.hz / 0.6 - 1)).toBeLessThan(0.1);
    expect(Math.abs(segments[0]!.hunting!.swingRpm / 120 - 1)).toBeLessThan(0.15);
  });
});

test('the last load step ends where the engine is stopped', () => {
  const track = points(24, (t) => (t < 10 ? 3600 : t < 20 ? 3400 : 3400 - 800 * (t - 20)));
  const [step] = loadSteps(track, [{ t: 10, kind: 'load on' }]);
  expect(Math.abs(step!.droopPercent - 100 * (200 / 3600))).toBeLessThan(0.1);
});

test('missed beats are counted, and none where none is missing', () => {
  const of = { rpm: () => 1500, seconds: 8, seed: 12, snrDb: 25, strengthSpread: 0.05 };
  const whole = report(of).segments[0]!.beats!;
  expect(whole.missedShare).toBe(0);
  const sound = engineSound({ strokes: 4, ...of, fires: (t) => t % 1 > 0.06 });
  const track = points(8, () => 1500);
  const [segment] = steadySegments(lowBandOf(sound), track, engine);
  // one firing of 12.5 a second falls into the gap
  expect(segment!.beats!.missedShare).toBeGreaterThan(0.03);
  expect(segment!.beats!.missedShare).toBeLessThan(0.15);
});

test.each([0.03, 0.08])('of %f of the firings missing, so many are found missing', (share) => {
  const every = Math.round(1 / share);
  const rpm = 2750;
  const fires = (t: number) => Math.floor((t * rpm) / 120) % every !== 3;
  const of = { rpm: () => rpm, seconds: 10, seed: 21, snrDb: 20, strengthSpread: 0.1, fires };
  const { beats } = report(of).segments[0]!;
  expect(beats!.missedShare).toBeGreaterThan(0.6 * share);
  expect(beats!.missedShare).toBeLessThan(1.4 * share);
});

test('the first order line lies on the loudest place of a spectrogram of a single tone', () => {
  const hz = 125;
  const samples = Float32Array.from({ length: 16_000 }, (_, i) => Math.sin((2 * Math.PI * hz * i) / 8000));
  const { columnsDb, stepHz, times } = spectrogram(
    { samples, sampleRate: 8000 },
    { topHz: 400, columns: 10 },
  );
  expect(times).toHaveLength(10);
  for (const column of columnsDb)
    expect(Math.abs(column.indexOf(Math.max(...column)) * stepHz - hz)).toBeLessThan(stepHz);
  const [line] = orderLines([{ t: 1, rpm: hz * 120, u: 1, confidence: 1 }], engine);
  expect(line!.points[0]!.hz).toBe(hz);
});
