import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import {
  atRate,
  decoderRate,
  generalEar,
  type Heard,
  heard,
  PhraseError,
  readPhrases,
  type Takes,
  takeOf,
} from '../../hear/index.js';
import type { Sound } from '../../listen/index.js';
import { listed } from '../../phrase/index.js';
import { type Call, type Command, Failed, flag, text, WronglyCalled } from '../command.js';
import { decodeSound } from './decode-sound.js';
import { readInParts, readWhole } from './in-file.js';
import { openEar } from './open-ear.js';
import { reasonOf } from './out-file.js';

export const hear: Command = {
  usage: 'wristpin hear FILE --phrases FILE [--takes FOLDER] [--before SECONDS] [--json]',
  options: {
    phrases: {
      type: 'string',
      value: 'FILE',
      help: 'what may have been said, one phrase a line; best two words or more',
    },
    takes: {
      type: 'string',
      value: 'FOLDER',
      help: 'this person’s own takes, three to five of each phrase: spark-strong-1.wav, spark-strong-2.wav …',
    },
    before: {
      type: 'string',
      value: 'SECONDS',
      help: 'so much of the sound was heard before anybody spoke: its noise is taken out',
    },
    json: {
      type: 'boolean',
      help: 'print {heard, agree, doubt, why} as JSON; heard is null where nothing was told',
    },
  },
  examples: [
    'wristpin hear answer.wav --phrases answers.txt',
    'wristpin hear answer.wav --phrases answers.txt --takes my-voice --before 0.5 --json',
  ],
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const [file] = call.positionals;
    const phrases = await phrasesOf(call);
    const beforeS = secondsBefore(call);
    const sound = await soundOf(file!);
    const takes = await takesOf(call, phrases);
    const { decoder, knows } = await openEar();
    requireKnown(phrases, knows);
    const at = Math.round(beforeS * decoderRate);
    if (at >= sound.samples.length) throw new Failed(`${file} ends before the ${beforeS} s are over.`);
    const said = heard({
      sound: { ...sound, samples: sound.samples.subarray(at) },
      before: { ...sound, samples: sound.samples.subarray(0, at) },
      phrases,
      general: generalEar(decoder),
      takes,
    });
    around.out(flag(call, 'json') ? JSON.stringify({ ...said, heard: said.heard ?? null }) : asText(said));
  },
};

function asText({ heard, agree, doubt, why }: Heard): string {
  if (heard === undefined)
    return {
      'nothing said': 'Nobody speaks in it.',
      'too loud': 'It is too loud there for the voice to be told.',
      'not told': 'None of the phrases was told.',
    }[why!];
  return `“${heard}”, ${agree ? 'by both ears' : 'by one ear'}, doubt ${doubt.toFixed(2)} of 1.`;
}

async function phrasesOf(call: Call): Promise<string[]> {
  const file = text(call, 'phrases');
  if (file === undefined)
    throw new WronglyCalled('--phrases FILE says what may have been said, one phrase a line.');
  try {
    return readPhrases(new TextDecoder().decode(await readWhole(file)));
  } catch (error) {
    if (error instanceof PhraseError) throw new Failed(`${file}: ${error.message}`, { cause: error });
    throw error;
  }
}

function secondsBefore(call: Call): number {
  const given = text(call, 'before') ?? '0';
  const seconds = Number(given);
  if (given.trim() !== '' && seconds >= 0 && Number.isFinite(seconds)) return seconds;
  throw new WronglyCalled(`--before: “${given}” is no number of seconds.`);
}

async function soundOf(file: string): Promise<Sound> {
  return atRate(await readInParts(file, (bytes) => decodeSound(bytes, file)), decoderRate);
}

function requireKnown(phrases: readonly string[], knows: (word: string) => boolean): void {
  const words = new Set(phrases.flatMap((phrase) => phrase.split(' ')));
  const unknown = [...words].filter((word) => !knows(word)).map((word) => `“${word}”`);
  if (unknown.length > 0)
    throw new Failed(`How ${listed(unknown)} sounds is not known. Say it in other words.`);
}

/** The takes of the phrases in the folder, by the beginnings of their names. */
async function takesOf(call: Call, phrases: readonly string[]): Promise<Takes | undefined> {
  const folder = text(call, 'takes');
  if (folder === undefined) return undefined;
  const names = filesIn(resolve(folder));
  const takes = new Map<string, NonNullable<ReturnType<typeof takeOf>>[]>();
  for (const phrase of phrases) {
    const own = names.filter((name) => name.replace(/[-_ ]?\d*\.\w+$/, '') === phrase.replaceAll(' ', '-'));
    const made = await Promise.all(own.map(async (name) => takeOf(await soundOf(join(folder, name)))));
    takes.set(
      phrase,
      made.filter((take) => take !== undefined),
    );
  }
  if (![...takes.values()].some(({ length }) => length > 0))
    throw new Failed(
      `${folder} holds no take of any of the phrases, such as ${phrases[0]!.replaceAll(' ', '-')}-1.wav.`,
    );
  return takes;
}

function filesIn(folder: string): string[] {
  try {
    return readdirSync(folder).sort();
  } catch (error) {
    throw new Failed(`${folder} cannot be read: ${reasonOf(error)}.`, { cause: error });
  }
}
