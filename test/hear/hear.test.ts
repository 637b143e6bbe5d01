import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { atRate, heard, PhraseError, readPhrases, type Takes, takeOf } from '../../src/hear/index.js';
import { apart } from '../../src/hear/sounds-like.js';
import { inRoom, type Manner, noise, saying, sounding } from './syllables.js';

const phrases = { 'go back': 'oa', 'next one': 'eia', 'spark strong': 'aoi', 'no spark': 'iue' } as const;
const names = Object.keys(phrases) as (keyof typeof phrases)[];
const manners: readonly Manner[] = [
  { vowelS: 0.14, pitchHz: 110 },
  { vowelS: 0.18, pitchHz: 125 },
  { vowelS: 0.2, pitchHz: 140 },
];
const takes: Takes = new Map(
  names.map((name) => [
    name,
    manners.map((manner, n) => takeOf(inRoom(saying(phrases[name], manner), 2e-4, n + 1))!),
  ]),
);
const other: Manner = { vowelS: 0.16, pitchHz: 132, loud: 0.05 };

describe('a person’s own takes', () => {
  test.each(names)('tell “%s” said at another speed, pitch and loudness', (name) => {
    const told = heard({ sound: inRoom(saying(phrases[name], other)), phrases: names, takes });
    expect(told).toMatchObject({ heard: name, agree: false });
    expect(told.doubt).toBeLessThan(0.9);
  });

  test.each(names)('tell “%s” in noise, once what was heard before the press is taken out', (name) => {
    const sound = inRoom(saying(phrases[name], other), 0.001, 9);
    const before = sounding(noise(0.5, 0.001, 10));
    expect(heard({ sound, before, phrases: names, takes }).heard).toBe(name);
  });

  test('hear only what is asked: the nearest of the phrases that are offered', () => {
    const sound = inRoom(saying(phrases['go back'], other));
    const without = names.filter((name) => name !== 'go back');
    expect(without).toContain(heard({ sound, phrases: without, takes }).heard);
  });
});

describe('nothing is heard', () => {
  test('where nobody speaks, and that is said', () => {
    const none = { heard: undefined, agree: false, doubt: 1, why: 'nothing said' };
    for (const loud of [0, 1e-4, 0.05]) {
      const sound = sounding(noise(2, loud, 4));
      const before = sounding(noise(0.5, loud, 5));
      expect(heard({ sound, before, phrases: names, takes })).toEqual(none);
    }
  });

  test('where the place drowns the voice: “too loud”, or that nobody spoke, and never a guess', () => {
    for (const seed of [1, 2, 3, 4]) {
      const sound = inRoom(saying('oa', other), 0.4, seed);
      const told = heard({ sound, before: sounding(noise(0.5, 0.4, seed + 10)), phrases: names, takes });
      expect(told.heard).toBeUndefined();
      expect(['too loud', 'nothing said']).toContain(told.why);
    }
  });
});

describe('two ears', () => {
  const sound = inRoom(saying(phrases['next one'], other));
  const says =
    (phrase: string | undefined, doubt = 0.1) =>
    () =>
      phrase && { phrase, doubt };
  const ask = (phrase: string | undefined, own: Takes | undefined, doubt?: number) =>
    heard({ sound, phrases: names, takes: own, general: says(phrase, doubt) as never });

  test('agree where both hear the same, and doubt less than either', () => {
    const both = ask('next one', takes);
    expect(both).toMatchObject({ heard: 'next one', agree: true });
    expect(both.doubt).toBeLessThan(0.1);
  });

  test('hear nothing where the general ear takes it for no word, or doubts it too much', () => {
    const none = { heard: undefined, agree: false, doubt: 1, why: 'not told' };
    expect(ask(undefined, takes)).toEqual(none);
    expect(ask('next one', takes, 0.8)).toEqual(none);
  });

  test('do not agree on what lies as far from the person’s own takes as any talk does', () => {
    const talk = inRoom(saying('uauo', other));
    const told = heard({ sound: talk, phrases: ['next one'], takes, general: says('next one') as never });
    expect(told).toMatchObject({ heard: 'next one', agree: false });
    expect(heard({ sound, phrases: ['next one'], takes, general: says('next one') as never }).agree).toBe(
      true,
    );
  });

  test('do not agree where they hear two things, and where there is one', () => {
    expect(ask('go back', takes)).toMatchObject({ heard: 'go back', agree: false });
    expect(ask('next one', undefined)).toMatchObject({ heard: 'next one', agree: false });
  });
});

describe('how far apart two sounds are', () => {
  const of = (text: string, manner?: Manner) => takeOf(inRoom(saying(text, manner)))!;

  test('is nothing for the same sound, the same both ways, and infinite where one is more than twice as long', () => {
    const [a, b] = [of('oai'), of('eua')];
    expect(apart(a, a)).toBe(0);
    expect(apart(a, b)).toBeCloseTo(apart(b, a), 6);
    expect(apart(a, b)).toBeGreaterThan(0.1);
    expect(apart(of('oa'), of('oaieuaoe'))).toBe(Number.POSITIVE_INFINITY);
  });

  test('is less for one phrase at two speeds than for two phrases at one', () => {
    for (const [one, two] of [
      ['oai', 'oia'],
      ['eua', 'aue'],
    ] as const)
      expect(apart(of(one), of(one, { vowelS: 0.22 }))).toBeLessThan(apart(of(one), of(two)));
  });
});

test('a tone keeps its pitch and its loudness at another rate, and what that rate cannot hold is left out', () => {
  const tone = (hz: number, rate: number) => ({
    samples: Float32Array.from({ length: rate }, (_, n) => Math.sin((2 * Math.PI * hz * n) / rate)),
    sampleRate: rate,
  });
  for (const rate of [8000, 22_050, 44_100, 48_000]) {
    const got = atRate(tone(1000, rate), 16_000).samples.subarray(2000, 14_000);
    const wanted = (n: number) => Math.sin((2 * Math.PI * 1000 * (n + 2000)) / 16_000);
    expect(Math.max(...got.map((each, n) => Math.abs(each - wanted(n))))).toBeLessThan(0.01);
  }
  const gone = atRate(tone(11_000, 48_000), 16_000).samples.subarray(2000, 14_000);
  expect(Math.max(...gone.map(Math.abs))).toBeLessThan(0.01);
});

describe('a list of phrases', () => {
  test('is one a line, in small letters; empty lines and remarks are left out', () => {
    expect(readPhrases('Spark  strong\r\n\n# a remark\ngo back # to the step before\n')).toEqual([
      'spark strong',
      'go back',
    ]);
  });

  test.each([
    ['', 'There is no phrase in it'],
    ['# only a remark', 'There is no phrase in it'],
    ['go back\ngo back', 'Line 2: “go back” stands there twice'],
    ['go back\n12 bolts', 'Line 2, “12 bolts”: a phrase is words in letters'],
    ['go back;<s>', 'a phrase is words in letters'],
    [Array.from({ length: 41 }, (_, n) => 'a'.repeat(n + 1)).join('\n'), 'at most 40'],
  ])('%j is refused: %s', (text, why) => {
    expect(() => readPhrases(text)).toThrow(why);
  });

  test('never holds a sign that would be a grammar’s own', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        try {
          for (const phrase of readPhrases(text)) expect(phrase).toMatch(/^[a-z' ]+$/);
        } catch (error) {
          expect(error).toBeInstanceOf(PhraseError);
        }
      }),
    );
  });
});
