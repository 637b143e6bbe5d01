import { Worker } from 'node:worker_threads';
import type { WithPacks } from '../../catalog/index.js';
import type { PackText, RawEntry } from '../../job/index.js';
import type { ReadBundle } from '../../record/index.js';
import type { OpenedBundle } from '../import.js';
import { type Asked, asError, type Told } from './messages.js';

/** What one reading may take; past this it is given up, and nobody else has noticed. */
export interface ReadingLimits {
  readonly ms: number;
  readonly megabytes: number;
}

/** Many times what a large bundle of a job of years takes. */
export const bundleLimits: ReadingLimits = { ms: 60_000, megabytes: 512 };
export const packLimits: ReadingLimits = { ms: 20_000, megabytes: 512 };

/** It was ended: it took more than it was given. */
export class TooMuch extends Error {
  override readonly name = 'TooMuch';
}

/** One thread that reads, and answers one question after the other. `program` is the built `reader.worker`. */
export class Reading {
  readonly #worker: Worker;
  readonly #limits: ReadingLimits;

  constructor(program: string, limits: ReadingLimits) {
    const { megabytes } = limits;
    const resourceLimits = { maxOldGenerationSizeMb: megabytes, maxYoungGenerationSizeMb: 32 };
    this.#worker = new Worker(program, { resourceLimits });
    this.#worker.on('error', () => {}); // told to whoever asks; one that fails while nobody asks costs nobody anything
    this.#limits = limits;
  }

  /** @throws TooMuch; RecordError, ShopkeepError as the reading itself throws them */
  ask(asked: Asked, part: (entries: readonly RawEntry[]) => void = () => {}): Promise<unknown> {
    const worker = this.#worker;
    return new Promise((resolve, reject) => {
      const tooLate = () => {
        const seconds = this.#limits.ms / 1000;
        fail(new TooMuch(`could not be read within ${seconds} seconds`));
        void worker.terminate();
      };
      const late = setTimeout(tooLate, this.#limits.ms);
      const hear = (told: Told) => {
        if (told.is === 'part') return part(told.part);
        if (told.is === 'failed') return fail(asError(told.failure));
        settle();
        resolve(told.answer);
      };
      const broke = (error: NodeJS.ErrnoException) =>
        fail(error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? this.#outOfMemory() : error);
      const ended = () => fail(new Error('The thread that was reading has ended.'));
      const settle = () => {
        clearTimeout(late);
        worker.off('message', hear).off('error', broke).off('exit', ended);
      };
      const fail = (error: Error) => {
        settle();
        reject(error);
      };
      worker.on('message', hear).on('error', broke).on('exit', ended);
      worker.postMessage(asked);
    });
  }

  #outOfMemory(): TooMuch {
    return new TooMuch(`could not be read in ${this.#limits.megabytes} MB of memory`);
  }

  async end(): Promise<void> {
    await this.#worker.terminate();
  }
}

/** A bundle in a file, read on a thread of its own, which lives until `end`. */
export async function readBundleApart(
  program: string,
  file: string,
  limits = bundleLimits,
): Promise<OpenedBundle & { readonly end: () => Promise<void> }> {
  const reading = new Reading(program, limits);
  try {
    const entries: RawEntry[] = [];
    const answer = await reading.ask({ what: 'bundle', file }, (part) => void entries.push(...part));
    const { pictures, digest } = answer as Pick<ReadBundle, 'pictures' | 'digest'>;
    const picture = async (sha256: string) => (await reading.ask({ what: 'picture', sha256 })) as Uint8Array;
    return { entries, pictures, digest, picture, end: () => reading.end() };
  } catch (error) {
    await reading.end();
    throw error;
  }
}

/** The catalog with a shop's packs, made on a thread of its own. @throws TooMuch */
export async function readPacksApart(
  program: string,
  packs: readonly PackText[],
  limits = packLimits,
): Promise<WithPacks> {
  const reading = new Reading(program, limits);
  try {
    return (await reading.ask({ what: 'packs', packs })) as WithPacks;
  } finally {
    await reading.end();
  }
}
