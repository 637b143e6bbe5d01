import { execFileSync } from 'node:child_process';
import { atRate, type Takes, takeOf } from '../../src/hear/index.js';
import { readWav } from '../../src/listen/index.js';
import type { Case } from './real.js';
import { joined, rate, saidIn, silence } from './sounds.js';

/** Three questions as they stand in step mode, eight phrases each. */
export const questions: readonly (readonly string[])[] = [
  ['spark strong', 'spark weak', 'no spark', 'go back', 'next one', 'say again', 'how tight', 'skip this'],
  [
    'all there',
    'one is missing',
    'two are missing',
    'go back',
    'next one',
    'how tight',
    'say again',
    'it is broken',
  ],
  [
    'it clicked',
    'turns without rising',
    'take that back',
    'how tight',
    'which bolt',
    'say again',
    'stop here',
    'next one',
  ],
];

/** Voices of the program; the first half guided the settings, the other only judges. */
export const voices = {
  guides: ['en-us+m3', 'en-gb+f2', 'en-gb+m5'],
  judges: ['en-us+f4', 'en-gb-scotland+m1', 'en-gb-x-rp+f3'],
} as const;

/** Words a minute and pitch, 0 to 99. Nobody says a phrase twice alike. */
const takeManners = [
  [150, 50],
  [170, 45],
  [190, 55],
  [160, 60],
] as const;
const saidManners = [
  [140, 40],
  [180, 58],
  [205, 50],
] as const;

export function hasVoices(): boolean {
  try {
    execFileSync('espeak-ng', ['--version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

function spoken(voice: string, phrase: string, [speed, pitch]: readonly [number, number]): Float32Array {
  const wav = execFileSync(
    'espeak-ng',
    ['-v', voice, '-s', `${speed}`, '-p', `${pitch}`, '--stdout', phrase],
    {
      maxBuffer: 1e8,
    },
  );
  const said = saidIn(atRate(readWav(new Uint8Array(wav)), rate).samples);
  return joined(silence(0.3), said, silence(0.3));
}

/** A voice's own takes of each phrase. */
export function takesOf(voice: string, phrases: readonly string[]): Takes {
  return new Map(
    phrases.map((phrase) => {
      const own = takeManners.map((manner) =>
        takeOf({ samples: spoken(voice, phrase, manner), sampleRate: rate }),
      );
      return [phrase, own.filter((take) => take !== undefined)] as const;
    }),
  );
}

/** What is talked about at a bench, and answers nothing. */
const talked = [
  'that one was tight and the next one clicked late',
  'how tight did you say it was',
  'hand me the other wrench please',
  'the gasket has to come on Tuesday',
  'no spark yesterday and today it starts',
  'go back to the store and get one more',
  'I cannot tell you what it will cost',
  'it keeps turning over and does not fire',
  'all of it is dirty',
  'is something wrong with your truck',
  'the customer wants it by noon',
  'put the kettle on and say again when it boils',
  'cancel the order for the last one',
  'one is missing from the box',
  'what is next on the list',
  'rain on Sunday with wind from the west',
  'you never call me before five',
  'it could not be done in a day',
] as const;

/** What these voices talk about, each sentence a sound. */
export const talkOf = (of: readonly string[]): Float32Array[] =>
  of.flatMap((voice, v) => talked.map((words, n) => spoken(voice, words, saidManners[(n + v) % 3]!)));

/** What a made voice says, with takes of its own. */
export function madeCases(voice: string): { readonly cases: Case[]; readonly takes: Takes } {
  const takes = takesOf(voice, [...new Set(questions.flat())]);
  const cases = questions.flatMap((question) =>
    question.flatMap((phrase) =>
      saidManners.map(
        (manner): Case => ({
          speaker: voice,
          phrase,
          phrases: question,
          said: spoken(voice, phrase, manner),
        }),
      ),
    ),
  );
  return { cases, takes };
}
