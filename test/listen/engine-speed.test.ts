import { describe, expect, test } from 'vitest';
import { engineSpeed } from '../../src/listen/engine-speed.js';
import { campaign } from '../support/campaign.js';
import { type EngineSound, engineSound, normal, random } from './engine-sound.js';

const heard = (of: EngineSound) =>
  engineSpeed(engineSound(of), { strokes: of.strokes, cylinders: of.cylinders ?? 1 });

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

function errors(of: EngineSound): number[] {
  const { track } = heard(of);
  return track.map(({ t, rpm }) => Math.abs(rpm / of.rpm(t) - 1));
}

const steady = (strokes: 2 | 4, rpm: number, seed: number, more: Partial<EngineSound> = {}): EngineSound => ({
  strokes,
  rpm: () => rpm,
  seconds: 2,
  seed,
  ...more,
});

const conditions: readonly (readonly [string, Partial<EngineSound>])[] = [
  ['as loud as its noise', { snrDb: 0 }],
  ['through a phone that cuts below 100 Hz', { snrDb: 10, highPassHz: 100 }],
  ['with a fan as loud as the engine', { snrDb: 10, fan: { blades: 9, level: 1 } }],
  ['with a spark at each turn', { snrDb: 10, sparkEachTurn: 0.2 }],
];

describe('a four-stroke is heard at its speed', () => {
  test.each(conditions)('%s', (_name, more) => {
    const found = [800, 1200, 1800, 2400, 3000, 3600, 4500].map((rpm, i) =>
      errors(steady(4, rpm, 10 + i, more)),
    );
    for (const [i, one] of found.entries()) expect(median(one), `case ${i}`).toBeLessThan(0.05);
    expect(median(found.flat())).toBeLessThan(0.003);
  });

  test('clipped', () => {
    for (const rpm of [1800, 3000, 4500])
      expect(median(errors(steady(4, rpm, rpm, { snrDb: 10, clipAt: 1.3 })))).toBeLessThan(0.003);
  });
});

describe('a two-stroke is heard at its speed', () => {
  test.each(conditions)('%s', (_name, more) => {
    const found = [1800, 4000, 6500, 9500, 14_000].map((rpm, i) => errors(steady(2, rpm, 40 + i, more)));
    for (const [i, one] of found.entries()) expect(median(one), `case ${i}`).toBeLessThan(0.05);
    expect(median(found.flat())).toBeLessThan(0.003);
  });

  test('one that fires weakly every other time is not taken for half its speed unflagged', () => {
    for (const rpm of [2700, 4000, 6500]) {
      const { meanRpm, ambiguous, rivals } = heard(steady(2, rpm, rpm, { snrDb: 10, alternate: 0.5 }));
      const right = Math.abs(meanRpm! / rpm - 1) < 0.02;
      const named = ambiguous && rivals.some((rival) => Math.abs(rival.rpm / rpm - 1) < 0.02);
      expect(right || named, `${rpm}: ${meanRpm}`).toBe(true);
    }
  });
});

test('a loop shorter than a second of an engine with unlike cylinders is heard at its speed', () => {
  for (const [cylinders, rpm] of [
    [4, 4500],
    [6, 3600],
    [8, 2800],
  ] as const) {
    const { meanRpm } = heard({
      strokes: 4,
      cylinders,
      rpm: () => rpm,
      seconds: 0.6,
      seed: cylinders,
      cylinderGains: Array.from({ length: cylinders }, (_, i) => 1 + 0.2 * Math.sin(2.3 * i + 1)),
      jitter: 0.0005,
    });
    expect(meanRpm! / rpm, `${cylinders} cylinders`).toBeCloseTo(1, 2);
  }
});

test('of loops of many cylinders none is heard at a wrong multiple without its being said', () => {
  let right = 0;
  const loops = campaign(12, 24);
  for (let seed = 0; seed < loops; seed += 1) {
    const uniform = random(seed);
    const cylinders = [3, 4, 6, 8][seed % 4]!;
    const rpm = 1200 + 4500 * uniform();
    const { meanRpm, ambiguous } = heard({
      strokes: 4,
      cylinders,
      rpm: () => rpm,
      seconds: 0.5 + 0.5 * uniform(),
      seed,
      cylinderGains: Array.from({ length: cylinders }, () => 0.75 + 0.5 * uniform()),
      jitter: 0.001,
      snrDb: 15,
    });
    const fits = meanRpm !== null && Math.abs(meanRpm / rpm - 1) < 0.02;
    if (fits) right += 1;
    expect(fits || ambiguous || meanRpm === null, `${cylinders} at ${rpm}: ${meanRpm}`).toBe(true);
  }
  expect(right).toBeGreaterThanOrEqual((20 / 24) * loops);
});

describe('a speed that sweeps is followed', () => {
  test.each([
    ['four-stroke', 4, 1000, 4500],
    ['two-stroke', 2, 2500, 13_000],
  ] as const)('%s', (_name, strokes, low, high) => {
    const found = errors({
      strokes,
      rpm: (t) => low * (high / low) ** (t / 10),
      seconds: 10,
      seed: 3,
      snrDb: 10,
    });
    expect(median(found)).toBeLessThan(0.003);
    expect(found.filter((error) => error > 0.1).length / found.length).toBeLessThan(0.2);
  });
});

describe('the true speed lies in the 95 % interval in 90 to 99 % of all moments', () => {
  const shapes: readonly ((base: number) => (t: number) => number)[] = [
    (base) => () => base,
    (base) => (t) => base * (1 + 0.02 * t),
    (base) => (t) => base * (1 + 0.02 * Math.sin(2 * Math.PI * 0.7 * t)),
  ];
  test.each([
    ['four-stroke', 4, [1800, 2600, 3400], { snrDb: 10, jitter: 0.006 }],
    ['four-stroke in loud noise', 4, [1200, 2600, 3600], { snrDb: 0, jitter: 0.01 }],
    ['two-stroke', 2, [2600, 6500, 11_000], { snrDb: 10, jitter: 0.006 }],
    ['two-stroke through a phone', 2, [2600, 6500, 11_000], { snrDb: 5, highPassHz: 100 }],
  ] as const)('%s', (_name, strokes, speeds, more) => {
    let inside = 0;
    let all = 0;
    for (const [i, base] of speeds.entries())
      for (const [j, shape] of shapes.entries()) {
        const rpm = shape(base);
        const { track } = heard({ strokes, rpm, seconds: 4, seed: 100 * i + j, ...more });
        inside += track.filter((p) => Math.abs(p.rpm - rpm(p.t)) < 1.96 * p.u).length;
        all += track.length;
      }
    expect(all).toBeGreaterThan(600);
    expect(inside / all).toBeGreaterThan(0.9);
    expect(inside / all).toBeLessThanOrEqual(0.99);
  });
});

describe('what is no engine gets no speed, in words', () => {
  const rate = 16_000;
  const noise = random(5);
  const made = (seconds: number, of: (t: number) => number) => ({
    sampleRate: rate,
    samples: Float32Array.from({ length: seconds * rate }, (_, i) => of(i / rate)),
  });
  let brown = 0;
  /** Syllables: a voice with formants that glides and stops three times a second. */
  const voice = (t: number) => {
    const phase =
      2 * Math.PI * (140 * t + 9 * Math.sin(2 * Math.PI * 0.9 * t) + 3 * Math.sin(2 * Math.PI * 2.3 * t));
    let sum = 0;
    for (let k = 1; k < 20; k += 1)
      sum += Math.sin(k * phase) / (1 + ((k * 140 - 600 * (1.3 + Math.sin(7 * t))) / 200) ** 2);
    return 0.2 * sum * Math.max(0, Math.sin(2 * Math.PI * 1.6 * t)) ** 1.5;
  };
  test.each([
    ['silence', made(2, () => 0)],
    ['white noise', made(3, () => 0.2 * normal(noise))],
    [
      'wind',
      made(4, (t) => {
        brown = 0.999 * brown + 0.01 * normal(noise);
        return brown * (1 + 0.5 * Math.sin(2 * t));
      }),
    ],
    ['a voice', made(5, voice)],
  ])('%s', (_name, sound) => {
    for (const strokes of [2, 4] as const) {
      const { meanRpm, uncertaintyRpm, track, says } = engineSpeed(sound, { strokes, cylinders: 1 });
      expect(meanRpm, says).toBeNull();
      expect(uncertaintyRpm).toBeNull();
      expect(track).toEqual([]);
      expect(says).toMatch(/\.$/);
    }
  });
});

describe('what hums on the mains is no engine', () => {
  const hum = (hz: number, harmonics: readonly number[]) => {
    const noise = random(hz);
    const sampleRate = 16_000;
    const level = (t: number) =>
      harmonics.reduce((sum, h, n) => sum + Math.sin(2 * Math.PI * hz * h * t + 2 * n) / (1 + n), 0);
    return {
      sampleRate,
      samples: Float32Array.from(
        { length: 5 * sampleRate },
        (_, i) => 0.1 * level(i / sampleRate) + 0.02 * normal(noise),
      ),
    };
  };
  test.each([
    ['a lamp at 50 Hz', hum(50.02, [2, 4, 6, 8, 10])],
    ['a transformer at 60 Hz', hum(59.97, [1, 2, 3, 5])],
    ['a motor at 60 Hz', hum(60.03, [1, 3, 5, 7, 9])],
  ])('%s', (_name, sound) => {
    for (const strokes of [2, 4] as const) {
      const { meanRpm, says } = engineSpeed(sound, { strokes, cylinders: 1 });
      expect(meanRpm, says).toBeNull();
      expect(says).toContain('mains');
    }
  });

  test('an engine that runs at 3,000 or 3,600 is one', () => {
    for (const strokes of [2, 4] as const)
      for (const rpm of [3000, 3600])
        expect(
          median(errors(steady(strokes, rpm, rpm + strokes, { seconds: 5, snrDb: 15 }))),
          `${strokes}-stroke, ${rpm}`,
        ).toBeLessThan(0.003);
  });
});

/** Seeded singles of all kinds: fans, phones, noise, jitter, a beat that is weak every other time. */
function anySingle(seed: number): EngineSound & { readonly steadyRpm: number } {
  const uniform = random(7 * seed + 1);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(uniform() * list.length)]!;
  const strokes = pick([4, 4, 2] as const);
  const rpm = strokes === 4 ? 800 + 3600 * uniform() : 1900 + 10_000 * uniform();
  return {
    strokes,
    steadyRpm: rpm,
    rpm: () => rpm,
    seconds: pick([1.2, 3, 5]),
    seed,
    snrDb: pick([0, 5, 10, 20, 30]),
    jitter: pick([0.002, 0.004, 0.01]),
    strengthSpread: pick([0.05, 0.15, 0.3]),
    alternate: pick([1, 1, 1, 0.85]),
    ...pick([{}, {}, { highPassHz: 100 }, { highPassHz: 150 }]),
    ...pick([{}, { fan: { blades: 7, level: 0.5 } }, { fan: { blades: 12, level: 1 } }]),
    resonancesHz: pick([
      [90, 240, 610, 1300],
      [70, 180, 420, 900],
      [130, 310, 800, 1700],
    ]),
  };
}

describe('of singles of all kinds none is heard at a wrong multiple without its being said', () => {
  const many = campaign(14, 400);
  test('nothing being known of the engine', () => {
    let right = 0;
    for (let seed = 0; seed < many; seed += 1) {
      const of = anySingle(seed);
      const { meanRpm, ambiguous } = heard(of);
      const fits = meanRpm !== null && Math.abs(meanRpm / of.steadyRpm - 1) < 0.03;
      if (fits && !ambiguous) right += 1;
      expect(fits || ambiguous || meanRpm === null, `${seed}: ${of.steadyRpm} heard as ${meanRpm}`).toBe(
        true,
      );
    }
    expect(right).toBeGreaterThanOrEqual(0.65 * many);
  });

  test('with the speeds that it can have, nearly all are right', () => {
    let right = 0;
    for (let seed = 0; seed < many; seed += 1) {
      const of = anySingle(seed);
      const range = { lowRpm: 0.6 * of.steadyRpm, highRpm: 1.45 * of.steadyRpm };
      const { meanRpm, ambiguous } = engineSpeed(engineSound(of), {
        strokes: of.strokes,
        cylinders: 1,
        range,
      });
      if (!ambiguous && meanRpm !== null && Math.abs(meanRpm / of.steadyRpm - 1) < 0.03) right += 1;
    }
    expect(right).toBeGreaterThanOrEqual(0.88 * many);
  });
});

describe('twins that fire unevenly', () => {
  test.each([
    ['a V of 90°', [0, 0.375]],
    ['a V of 45°', [0, 0.4375]],
    ['both pistons 180° apart', [0, 0.25]],
  ] as const)(
    '%s: right or said to be unsettled, and right where the speeds it can have are known',
    (_name, offsets) => {
      for (const [i, rpm] of [900, 1740, 3420].entries()) {
        const of = {
          strokes: 4,
          cylinders: 2,
          offsets,
          rpm: () => rpm,
          seconds: 3,
          seed: i,
          snrDb: 20,
        } as const;
        const sound = engineSound({ ...of, cylinderGains: [1, 0.85] });
        const { meanRpm, ambiguous } = engineSpeed(sound, of);
        expect(ambiguous || Math.abs(meanRpm! / rpm - 1) < 0.03, `${rpm}: ${meanRpm}`).toBe(true);
        const range = { lowRpm: 0.6 * rpm, highRpm: 1.45 * rpm };
        const known = engineSpeed(sound, { ...of, range });
        expect(known.ambiguous).toBe(false);
        expect(Math.abs(known.meanRpm! / rpm - 1)).toBeLessThan(0.03);
      }
    },
  );
});

describe('a sound or an engine that cannot be listened to is refused by its field', () => {
  const sound = engineSound(steady(4, 3000, 1, { seconds: 1 }));
  test.each([
    ['strokes', sound, { strokes: 3 as 4, cylinders: 1 }],
    ['cylinders', sound, { strokes: 4, cylinders: 0 }],
    ['cylinders', sound, { strokes: 4, cylinders: 1.5 }],
    ['range', sound, { strokes: 4, cylinders: 1, range: { lowRpm: 3100, highRpm: 3000 } }],
    ['sampleRate', { ...sound, sampleRate: 100 }, { strokes: 4, cylinders: 1 }],
    ['samples', { ...sound, samples: sound.samples.slice(0, 1000) }, { strokes: 4, cylinders: 1 }],
    [
      'samples',
      { ...sound, samples: sound.samples.map((x, i) => (i === 7 ? Number.NaN : x)) },
      { strokes: 4, cylinders: 1 },
    ],
  ] as const)('%s', (field, bad, engine) => {
    expect(() => engineSpeed(bad, engine)).toThrow(expect.objectContaining({ name: 'ListenError', field }));
  });
});
