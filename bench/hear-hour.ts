/**
 * An hour of talk and noise under a held pedal: what would be written without a tap (nothing), what is shown and waits for
 * one, and what both ears would write by themselves where the person has switched that on. And how long an answer takes.
 *   HEAR_SPOKEN=folder npm run bench hear-hour    real people's words in it too, as the Speech Commands data set has them
 *   HEAR_MINUTES=10                               so many of the sixty
 */
import { openEar } from '../src/cli/commands/open-ear.js';
import {
  type Answering,
  answering,
  atRest,
  generalEar,
  heard,
  longestAnswerMs,
  type Sayable,
  spokenForms,
} from '../src/hear/index.js';
import { phrases } from '../src/web/talk/answers/phrases.js';
import { hasVoices, takesOf, talkOf, voices } from './hear/made.js';
import { realWords } from './hear/real.js';
import { joined, noiseOf, noises, rate, seeded, silence } from './hear/sounds.js';

const writing = (...said: readonly string[]): Sayable[] => said.map((phrase) => ({ phrase, writes: true }));
const telling = (...said: readonly string[]): Sayable[] => said.map((phrase) => ({ phrase, writes: false }));
const spark = spokenForms({
  about: 'Spark across open tester gap',
  answers: ['strong', 'intermittent', 'weak', 'none'],
}) as string[];

/** As they stand in step mode and at Findings. */
const questions: readonly (readonly Sayable[])[] = [
  [
    ...writing(phrases.clicked, phrases.turns, phrases.takeBack),
    ...telling(phrases.tight, phrases.again, phrases.whatNext),
  ],
  [...writing(phrases.next, phrases.missing), ...telling(phrases.back, phrases.again, phrases.tight)],
  [...writing(phrases.allSo, phrases.notSo), ...telling(phrases.again)],
  [...writing(...spark, 'cannot tell', 'could not be done'), ...telling(phrases.again)],
];

if (!hasVoices()) throw new Error('espeak-ng is not on this computer: nobody talks.');
const minutes = Number(process.env.HEAR_MINUTES ?? 60);
const holdS = longestAnswerMs / 1000;
const beforeS = 1;
const draw = seeded(23);
const { decoder } = await openEar();
const general = generalEar(decoder);
const takes = takesOf(voices.guides[0], [...new Set(questions.flat().map(({ phrase }) => phrase))]);
const talk = [
  ...talkOf(voices.judges),
  ...(process.env.HEAR_SPOKEN ? realWords(process.env.HEAR_SPOKEN) : []),
];

/** Talk with pauses, a noise under it at 0 to 20 dB below, or the noise alone. */
function held(): Float32Array {
  const length = Math.round((beforeS + holdS) * rate);
  const noise = noiseOf(noises[Math.floor(draw() * noises.length)]!, length, draw, talk);
  const gain = 10 ** -draw();
  const parts: Float32Array[] = [];
  if (draw() < 0.75)
    for (let have = 0; have < length; have += parts.at(-1)!.length)
      parts.push(silence(0.05 + draw()), talk[Math.floor(draw() * talk.length)]!);
  const said = joined(...parts, silence(beforeS + holdS)).subarray(0, length);
  return noise.map((each, n) => gain * each + said[n]!);
}

const tally = { holds: 0, written: 0, shown: 0, told: 0, nothing: 0 };
const times: number[] = [];
const acts: string[] = [];
for (let n = 0; n < (minutes * 60) / holdS; n += 1) {
  const samples = held();
  const question = questions[n % questions.length]!;
  const part = (from: number, to?: number) => ({
    samples: samples.slice(from * rate, to && to * rate),
    sampleRate: rate,
  });
  const from = process.cpuUsage();
  const told = heard({
    ...{ sound: part(beforeS), before: part(0, beforeS), general, takes },
    phrases: question.map(({ phrase }) => phrase),
  });
  const { user, system } = process.cpuUsage(from);
  times.push((user + system) / 1000);
  tally.holds += 1;
  for (const byItself of [false, true]) {
    let state: Answering = atRest;
    const press = { on: 'press', question: `${n}`, press: n, phrases: question } as const;
    let act: ReturnType<typeof answering>['act'];
    for (const event of [press, { on: 'let go' }, { on: 'heard', press: n, heard: told }] as const)
      ({ state, act } = answering(state, event, n * longestAnswerMs, byItself));
    const done = act?.do === 'act' ? act.phrase : undefined;
    const writes = question.some((each) => each.writes && each.phrase === done);
    if (byItself) {
      if (writes) acts.push(done!);
    } else if (writes) tally.written += 1;
    else if (state.at === 'shown') tally.shown += 1;
    else if (act) tally.told += 1;
    else tally.nothing += 1;
  }
}
times.sort((a, b) => a - b);
const at = (share: number) => Math.round(times[Math.floor(share * (times.length - 1))]!);
console.log(`${minutes} minutes of talk and noise in ${tally.holds} holds of ${holdS} s each`);
console.log(`  written without a tap                 ${tally.written}`);
console.log(`  shown, and dropped where nobody taps  ${tally.shown}`);
console.log(`  only told (how tight, say again)      ${tally.told}`);
console.log(`  nothing heard                         ${tally.nothing}`);
console.log(`  written by both ears, switched on     ${acts.length} ${acts.join(', ')}`);
console.log(
  `  processor time of an answer, ms: half under ${at(0.5)}, 95 % under ${at(0.95)}, longest ${at(1)}`,
);
