/**
 * Learns by which signs an engine is told from what repeats but is none, on the half of the collection that guides and on
 * made engines with even seeds, and writes `src/listen/doubt-weights.ts`.
 *   LISTEN_SOUNDS=folder [LISTEN_HEARD=file] npm run bench listen-learn
 * What was heard of each sound is kept in that file, so that a run which was broken off goes on.
 */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { engineSpeed } from '../src/listen/engine-speed.js';
import { type EngineKind, ListenError, type Sound } from '../src/listen/index.js';
import { engineSound } from '../test/listen/engine-sound.js';
import { soundsOf } from './listen/collection.js';
import collection from './listen/collection.tsv?raw';
import { type Example, learned } from './listen/learn.js';
import { madeEngine } from './listen/made.js';

const firstS = 6;
const madeEngines = 200;
/** A real engine counts as two made ones. */
const realCounts = 2;

async function learn(sounds: string, kept: string | undefined): Promise<void> {
  const examples = [...(await heardOf(sounds, kept)), ...made()];
  const { weights, bias } = learned(examples);
  const rounded = weights.map((weight) => weight.toFixed(3)).join(', ');
  writeFileSync(
    'src/listen/doubt-weights.ts',
    `/** Written by \`npm run bench listen-learn\`; not by hand. */
export const learned: { readonly weights: readonly number[]; readonly bias: number } = {
  weights: [${rounded}],
  bias: ${bias.toFixed(3)},
};
`,
  );
  for (const engine of [true, false]) {
    const of = examples.filter((each) => each.engine === engine);
    const below = of.filter(
      ({ signs }) => signs.reduce((sum, sign, n) => sum + weights[n]! * sign, bias) < 0,
    );
    console.log(`  ${engine ? 'engines' : 'others'} ${of.length}: ${below.length} doubted`);
  }
}

/** Accepted sounds of the half that guides; engines as four-strokes of one and of four cylinders, the rest as singles. */
async function heardOf(sounds: string, kept: string | undefined): Promise<readonly Example[]> {
  const known = new Map(
    (kept && existsSync(kept) ? readFileSync(kept, 'utf8').trim().split('\n') : []).map(
      (line): [string, Example['signs'] | null] => {
        const { hash, strokes, cylinders, signs } = JSON.parse(line);
        return [`${hash} ${strokes} ${cylinders}`, signs];
      },
    ),
  );
  const examples: Example[] = [];
  for await (const { hash, what, sound } of soundsOf(collection, sounds, 'guides', firstS)) {
    if (what === 'machine') continue;
    const engine = what === 'engine';
    for (const { strokes, cylinders } of engine ? asEngines : asOthers) {
      const name = `${hash} ${strokes} ${cylinders}`;
      const signs = known.has(name) ? known.get(name)! : signsIn(await sound(), { strokes, cylinders });
      if (kept && !known.has(name))
        appendFileSync(kept, `${JSON.stringify({ hash, strokes, cylinders, signs })}\n`);
      if (signs !== null) examples.push({ signs, engine, counts: engine ? realCounts : 1 });
    }
  }
  return examples;
}

const asEngines: readonly EngineKind[] = [
  { strokes: 4, cylinders: 1 },
  { strokes: 4, cylinders: 4 },
];
const asOthers: readonly EngineKind[] = [
  { strokes: 4, cylinders: 1 },
  { strokes: 2, cylinders: 1 },
];

function signsIn(sound: Sound, kind: EngineKind): Example['signs'] | null {
  try {
    return engineSpeed(sound, kind).signs ?? null;
  } catch (error) {
    if (error instanceof ListenError) return null;
    throw error;
  }
}

const made = (): readonly Example[] =>
  Array.from({ length: madeEngines }, (_, n) => madeEngine(2 * n)).flatMap((of) => {
    const { meanRpm, signs } = engineSpeed(engineSound(of), of);
    const right = meanRpm !== null && Math.abs(meanRpm / of.steadyRpm - 1) < 0.03;
    return right && signs ? [{ signs, engine: true, counts: 1 }] : [];
  });

const folder = process.env.LISTEN_SOUNDS;
if (folder) await learn(folder, process.env.LISTEN_HEARD);
else console.log('  LISTEN_SOUNDS is not set: nothing to learn from');
