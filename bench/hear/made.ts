import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { atRate, spokenForms, type Takes, takeOf } from '../../src/hear/index.js';
import { readWav } from '../../src/listen/index.js';
import { phrases } from '../../src/web/talk/answers/phrases.js';
import type { Case } from './real.js';
import { joined, rate, saidIn, silence } from './sounds.js';

const { clicked, turns, takeBack, whatNext, tight, again, next, back, isSo, allSo, notSo, missing } = phrases;
const spark = spokenForms({
  about: 'Spark across open tester gap',
  answers: ['strong', 'intermittent', 'weak', 'none'],
}) as string[];

/** Three questions of what is said in step mode and at Findings, eight phrases each. */
const questions: readonly (readonly string[])[] = [
  [clicked, turns, takeBack, tight, again, whatNext, back, next],
  [next, missing, back, again, tight, isSo, allSo, notSo],
  [...spark, 'cannot tell', 'could not be done', again, phrases.number],
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

export function hasProgram(name: 'espeak-ng' | 'flite'): boolean {
  try {
    execFileSync(name, ['--version'], { stdio: 'ignore' });
    return true;
  } catch (error) {
    // flite answers that with another number than 0
    return (error as NodeJS.ErrnoException).code !== 'ENOENT';
  }
}
export const hasVoices = (): boolean => hasProgram('espeak-ng');

/** A voice of espeak-ng by its name there, one of flite as "flite NAME". */
export function spoken(
  voice: string,
  phrase: string,
  [speed, pitch]: readonly [number, number],
): Float32Array {
  const wav = voice.startsWith('flite ')
    ? byFlite(voice.slice('flite '.length), phrase, speed)
    : execFileSync('espeak-ng', ['-v', voice, '-s', `${speed}`, '-p', `${pitch}`, '--stdout', phrase], most);
  const said = saidIn(atRate(readWav(new Uint8Array(wav)), rate).samples);
  return joined(silence(0.3), said, silence(0.3));
}
const most = { maxBuffer: 1e8 };

/** It counts by how much a sound is stretched; its own speed is about 170 words a minute. Its pitch is the recorded person's. */
function byFlite(voice: string, phrase: string, speed: number): Buffer {
  const folder = mkdtempSync(join(tmpdir(), 'hear-'));
  const file = join(folder, 'said.wav');
  try {
    execFileSync('flite', ['-voice', voice, '--setf', `duration_stretch=${170 / speed}`, '-t', phrase, file]);
    return readFileSync(file);
  } finally {
    rmSync(folder, { recursive: true });
  }
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
