/**
 * What is heard of a phrase among eight, and of numbers near a nominal: by the general ear, by a person's own takes, and by both where they agree.
 *   HEAR_SPOKEN=folder npm run bench hear     real people's single words too, as the Speech Commands data set has them
 * Real people are parted by speaker and made voices by voice: one half guided the settings, the other only judges.
 */
import { openEar } from '../src/cli/commands/open-ear.js';
import { type GeneralEar, generalEar, heard, type Takes } from '../src/hear/index.js';
import { hasVoices, madeCases, voices } from './hear/made.js';
import { madeNumbers, otherVoices, realNumbers } from './hear/numbers.js';
import { type Case, realCases } from './hear/real.js';
import { inNoise, noises, seeded } from './hear/sounds.js';

interface Tally {
  all: number;
  right: number;
  wrong: number;
  agree: number;
  agreeWrong: number;
  ms: number;
}

function over(cases: readonly Case[], db: number | undefined, general: GeneralEar, takes?: Takes): Tally {
  const tally = { all: 0, right: 0, wrong: 0, agree: 0, agreeWrong: 0, ms: 0 };
  const draw = seeded(11);
  cases.forEach(({ phrase, phrases, said }, n) => {
    const others = [cases[(n + 9) % cases.length]!.said, cases[(n + 31) % cases.length]!.said];
    const { before, sound } = inNoise(said, db, noises[n % noises.length]!, draw, others);
    const start = process.cpuUsage().user;
    const told = heard({ sound, before, phrases, general, takes });
    tally.ms += (process.cpuUsage().user - start) / 1000;
    tally.all += 1;
    if (told.heard === phrase) tally.right += 1;
    else if (told.heard !== undefined) tally.wrong += 1;
    if (told.agree) tally.agree += 1;
    if (told.agree && told.heard !== phrase) tally.agreeWrong += 1;
  });
  return tally;
}

const share = (part: number, all: number) => `${((100 * part) / Math.max(1, all)).toFixed(1).padStart(5)} %`;

function say(name: string, db: number | undefined, tally: Tally, withTakes: boolean): void {
  const { all, right, wrong, agree, agreeWrong, ms } = tally;
  const both = withTakes ? `  agree ${share(agree, all)}, of those wrong ${share(agreeWrong, agree)}` : '';
  console.log(
    `${name.padEnd(28)} ${(db === undefined ? 'clean' : `${db} dB`).padEnd(6)} ${String(all).padStart(4)} phrases  right ${share(right, all)}  wrong ${share(wrong, all)}${both}  ${Math.round(ms / all)} ms each`,
  );
}

const { decoder } = await openEar();
const general = generalEar(decoder);
const levels = [undefined, 20, 10] as const;
const folder = process.env.HEAR_SPOKEN;
if (folder) {
  for (const [what, halves] of [
    ['real people', realCases(folder)],
    ['their numbers', realNumbers(folder)],
  ] as const)
    for (const [half, cases] of Object.entries(halves))
      for (const db of levels) say(`${what}, ${half}`, db, over(cases, db, general), false);
} else console.log('HEAR_SPOKEN names no folder: no real people are heard.');
const sumOf = (tallies: readonly Tally[]): Tally =>
  tallies.reduce((a, b) => ({
    ...{ all: a.all + b.all, right: a.right + b.right, wrong: a.wrong + b.wrong },
    ...{ agree: a.agree + b.agree, agreeWrong: a.agreeWrong + b.agreeWrong, ms: a.ms + b.ms },
  }));
if (hasVoices())
  for (const [half, own] of Object.entries({ ...voices, 'other program': otherVoices })) {
    if (own.length === 0) continue;
    const byVoice = own.map((voice) => ({ ...madeCases(voice), numbers: madeNumbers(voice) }));
    for (const db of levels) {
      const tallies = byVoice.map(({ cases, takes }) => over(cases, db, general, takes));
      say(`made voices, ${half}`, db, sumOf(tallies), true);
    }
    for (const db of levels) {
      const tallies = byVoice.map(({ numbers }) => over(numbers, db, general));
      say(`numbers, ${half}`, db, sumOf(tallies), false);
    }
  }
else console.log('espeak-ng is not on this computer: no made voices are heard.');
