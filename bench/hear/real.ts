import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readWav } from '../../src/listen/index.js';
import { type Draw, joined, saidIn, seeded, silence } from './sounds.js';

/** One phrase as it was said, and the eight among which it is looked for. */
export interface Case {
  readonly speaker: string;
  readonly phrase: string;
  readonly phrases: readonly string[];
  readonly said: Float32Array;
}

/** So many words of one speaker make different phrases enough. */
const fewestWords = 9;
const questionsEach = 2;

/**
 * Real people's phrases of two words, put together of single words that the same person said: clips as the Speech Commands
 * data set names them (WORD/SPEAKER_nohash_N.wav, 16,000 a second). A speaker of an odd number only judges.
 */
export function realCases(folder: string): { readonly guides: Case[]; readonly judges: Case[] } {
  const draw = seeded(7);
  const cases = [...bySpeaker(folder)].flatMap(([speaker, words]) =>
    words.size < fewestWords
      ? []
      : Array.from({ length: questionsEach }, () => question(speaker, words, draw)).flat(),
  );
  const isJudge = ({ speaker }: Case) => Number.parseInt(speaker, 16) % 2 === 1;
  return { guides: cases.filter((each) => !isJudge(each)), judges: cases.filter(isJudge) };
}

/** Every word of everybody. */
export const realWords = (folder: string): Float32Array[] =>
  [...bySpeaker(folder).values()].flatMap((words) => [...words.values()]);

export function bySpeaker(folder: string): Map<string, Map<string, Float32Array>> {
  const speakers = new Map<string, Map<string, Float32Array>>();
  const words = readdirSync(folder, { withFileTypes: true }).filter((each) => each.isDirectory());
  for (const { name: word } of words.sort((a, b) => (a.name < b.name ? -1 : 1)))
    for (const file of readdirSync(join(folder, word)).sort()) {
      const [speaker = ''] = file.split('_');
      const own = speakers.get(speaker) ?? new Map<string, Float32Array>();
      speakers.set(speaker, own);
      own.set(word, saidIn(readWav(new Uint8Array(readFileSync(join(folder, word, file)))).samples));
    }
  return speakers;
}

function question(speaker: string, words: ReadonlyMap<string, Float32Array>, draw: Draw): Case[] {
  const names = [...words.keys()].sort();
  const any = () => names[Math.floor(draw() * names.length)]!;
  const phrases = new Set<string>();
  while (phrases.size < 8) {
    const [a, b] = [any(), any()];
    if (a !== b) phrases.add(`${a} ${b}`);
  }
  return [...phrases].map((phrase) => {
    const [a = '', b = ''] = phrase.split(' ');
    const said = joined(silence(0.25), words.get(a)!, silence(0.03), words.get(b)!, silence(0.25));
    return { speaker, phrase, phrases: [...phrases], said };
  });
}
