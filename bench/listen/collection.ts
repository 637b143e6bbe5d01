/**
 * Real sounds of Debian packages, held against what is no engine and what is one. The sounds stay where they are: only
 * the list is kept (`collection.tsv`): package, first half of the SHA-256 of the file, what it is, and its half. The halves
 * were drawn by the hash before anything was heard; one guides, the other is only measured.
 *   LISTEN_SOUNDS=folder npm run bench listen     a folder in which the packages were unpacked
 * other: must be refused. engine: is one (its speed is not known). machine: turns or drives something, counted apart.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { decodeSound } from '../../src/cli/commands/decode-sound.js';
import { engineSpeed } from '../../src/listen/engine-speed.js';
import { ListenError, type Sound } from '../../src/listen/index.js';

const longestS = 20;
const forms = /\.(wav|ogg|oga|mp3|flac|opus)$/i;

interface Listed {
  readonly hash: string;
  readonly what: 'other' | 'engine' | 'machine';
  readonly half: 'guides' | 'measured';
}

/** Each sound of one half of the list that is found in a folder, with its first seconds. */
export async function* soundsOf(list: string, folder: string, half: Listed['half'], firstS = longestS) {
  const listed = new Map(
    list
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.split('\t') as [string, string, Listed['what'], Listed['half']])
      .filter((row) => row[3] === half)
      .map(([, hash, what]): [string, Listed] => [hash, { hash, what, half }]),
  );
  for (const file of filesIn(folder).filter((name) => forms.test(name))) {
    const bytes = new Uint8Array(readFileSync(file));
    const hash = createHash('sha256').update(bytes).digest('hex').slice(0, 16);
    const found = listed.get(hash);
    if (found === undefined) continue;
    // a second copy of the same file is not heard again
    listed.delete(hash);
    const sound = async (): Promise<Sound> => {
      const { samples, sampleRate } = await decodeSound(bytes, file);
      return { samples: samples.subarray(0, firstS * sampleRate), sampleRate };
    };
    yield { ...found, sound };
  }
  console.log(`${listed.size} sounds of the list (${half}) were not found`);
}

interface Tally {
  heard: number;
  accepted: number;
  unflagged: number;
}

export async function overCollection(list: string, folder: string): Promise<void> {
  const tallies = new Map<string, Tally>();
  for (const half of ['guides', 'measured'] as const)
    for await (const { what, sound } of soundsOf(list, folder, half)) {
      const heard = await sound();
      for (const strokes of [4, 2] as const) {
        const name = `${what}, ${half}, as a ${strokes === 4 ? 'four' : 'two'}-stroke`;
        const tally = tallies.get(name) ?? { heard: 0, accepted: 0, unflagged: 0 };
        tallies.set(name, tally);
        const said = spoken(heard, strokes);
        tally.heard += 1;
        if (said !== null) tally.accepted += 1;
        if (said === 'surely') tally.unflagged += 1;
      }
    }
  for (const [name, { heard, accepted, unflagged }] of [...tallies].sort())
    console.log(`  ${name.padEnd(36)} ${heard} sounds: ${accepted} accepted, ${unflagged} of them unflagged`);
}

function spoken(sound: Sound, strokes: 2 | 4): 'surely' | 'flagged' | null {
  try {
    const { meanRpm, ambiguous } = engineSpeed(sound, { strokes, cylinders: 1 });
    return meanRpm === null ? null : ambiguous ? 'flagged' : 'surely';
  } catch (error) {
    if (error instanceof ListenError) return null;
    throw error;
  }
}

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesIn(path) : entry.isFile() ? [path] : [];
  });
