import type { Hearing } from '../../../../job/index.js';
import type { EngineKind, Spectrogram } from '../../../../listen/index.js';
import type { Sound } from './decode.js';

/** What the ear is asked, and what it answers; `id` ties them together. */
export interface Question {
  readonly id: number;
  readonly sound: Sound;
  readonly engine: EngineKind;
  /** whether the picture of the sound itself is wanted */
  readonly look: boolean;
}
export interface Heard {
  readonly hearing: Hearing;
  readonly look?: Spectrogram;
}
export type Answer = ({ readonly id: number } & Heard) | { readonly id: number; readonly wrong: string };

let worker: Worker | undefined;
let asked = 0;
const waiting = new Map<number, { resolve: (heard: Heard) => void; reject: (e: Error) => void }>();

/** Listens beside the page, so that a long recording does not hold up the screen. */
export function hear(sound: Sound, engine: EngineKind, look = false): Promise<Heard> {
  worker ??= startWorker();
  const id = ++asked;
  const question: Question = { id, sound, engine, look };
  return new Promise((resolve, reject) => {
    waiting.set(id, { resolve, reject });
    worker!.postMessage(question, [sound.samples.buffer]);
  });
}

function startWorker(): Worker {
  const started = new Worker(new URL('./ear.worker.ts', import.meta.url), { type: 'module' });
  started.onmessage = ({ data }: MessageEvent<Answer>) => {
    const asker = waiting.get(data.id);
    waiting.delete(data.id);
    if ('hearing' in data) asker?.resolve(data);
    else asker?.reject(new Error(data.wrong));
  };
  started.onerror = (event) => {
    for (const { reject } of waiting.values()) reject(new Error(event.message));
    waiting.clear();
    worker = undefined;
  };
  return started;
}
