import { mostNumbers, numberAloud, numbersNear, type Scale, steps } from '../../src/hear/index.js';
import { phrases } from '../../src/web/talk/answers/phrases.js';
import { hasProgram, spoken } from './made.js';
import { bySpeaker, type Case } from './real.js';
import { joined, seeded, silence } from './sounds.js';

/** What is asked at a bench, and near which numbers. */
const asked: readonly (readonly [scale: Scale, near: readonly number[]])[] = [
  [{ step: steps.psi!, low: 0, high: 300 }, [50, 75, 100, 125, 150]],
  [{ step: steps.rpm!, low: 0, high: 20_000 }, [1500, 1750, 3000, 3250, 3600]],
  [{ step: steps['%']!, low: 0, high: 100 }, [15, 40]],
  [{ step: steps.in!, low: 0, high: 0.1 }, [0.01, 0.016, 0.028]],
  [{ step: steps.mm!, low: 0, high: 3 }, [0.15, 0.3, 0.7]],
];
const turning = [phrases.higher, phrases.lower, phrases.outcomes];

/** Five numbers of a scale and what turns to others, as they stand in step mode. */
const questions = asked.flatMap(([scale, near]) =>
  near.map((nominal) => numbersNear(scale, nominal).map(numberAloud)),
);

/** Fewer digits of a person make no number. */
const fewestDigits = 4;

/**
 * Numbers put together of the digits that one real person said singly; nobody said a point. Half of the people judge alone,
 * drawn by seed.
 */
export function realNumbers(folder: string): { readonly guides: Case[]; readonly judges: Case[] } {
  const digits = [...'0123456789'].map((digit) => numberAloud(digit).split(' ')[1]!);
  const draw = seeded(41);
  const people = [...bySpeaker(folder)]
    .filter(([, words]) => digits.filter((digit) => words.has(digit)).length >= fewestDigits)
    .map((person) => ({ person, at: draw() }))
    .sort((a, b) => a.at - b.at);
  const half = Math.floor(people.length / 2);
  const casesOf = (of: typeof people) =>
    of.flatMap(({ person: [speaker, words] }) =>
      questions.flatMap((numbers) =>
        numbers.flatMap((phrase): Case[] => {
          const parts = phrase.split(' ').map((word) => words.get(word));
          const known = parts.filter((part) => part !== undefined);
          if (known.length < parts.length || numbers.length < mostNumbers) return [];
          const apart = known.flatMap((part) => [silence(0.03 + 0.12 * draw()), part]);
          const said = joined(silence(0.25), ...apart, silence(0.25));
          return [{ speaker, phrase, phrases: [...numbers, ...turning], said }];
        }),
      ),
    );
  return { guides: casesOf(people.slice(0, half)), judges: casesOf(people.slice(half)) };
}

/** The same by a made voice, and what turns to other numbers. */
export const madeNumbers = (voice: string): Case[] =>
  questions.flatMap((numbers) =>
    [...numbers, ...turning].map((phrase) => ({
      ...{ speaker: voice, phrase, phrases: [...numbers, ...turning] },
      said: spoken(voice, phrase, [160, 50]),
    })),
  );

/** Voices of another program, which nothing was set by. */
export const otherVoices = hasProgram('flite') ? ['flite rms', 'flite slt', 'flite awb'] : [];
