import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { fold, type RawEntry } from '../job/index.js';
import { type Store, StoreError } from '../store/index.js';
import { ShopkeepError } from './error.js';
import { keepPicture } from './keep-picture.js';
import { readLines } from './read-lines.js';
import { shownPictures } from './shown-pictures.js';

const jobFile = z.object({ entries: z.array(z.unknown()).min(1) });

export interface Loaded {
  readonly jobs: readonly string[];
  readonly stored: readonly string[];
  readonly already: readonly string[];
}

/**
 * Puts the invented jobs of the folder into the store, their pictures first. Loading twice changes nothing.
 *
 * @throws ShopkeepError when the folder holds none, when a picture is missing, or when a job does not say that it is
 * invented: such a job could never be told from the shop's own, nor removed again
 */
export async function loadDemo(store: Store, folder: string): Promise<Loaded> {
  const entries = await demoEntries(store, folder);
  for (const file of await filesOf(join(folder, 'pictures'), /\.(jpe?g|png|webp)$/i)) {
    await keepPicture(store, new Uint8Array(await readFile(file)));
  }
  const jobs = [...new Set(entries.map(({ job }) => job))];
  for (const job of jobs) await requirePictures(store, job, entries);
  const { stored, already } = await store.append(entries);
  return { jobs, stored, already };
}

async function requirePictures(store: Store, job: string, entries: readonly RawEntry[]): Promise<void> {
  const own = entries.filter((entry) => entry.job === job);
  for (const sha256 of shownPictures(job, own)) {
    if (!(await store.hasPicture(sha256))) throw pictureMissing(job, sha256);
  }
}

export interface RemovedDemo {
  readonly jobs: readonly string[];
  readonly entries: number;
  readonly pictures: number;
}

/** Takes every invented job out of the store, with all that was written to it since. */
export async function removeDemo(store: Store): Promise<RemovedDemo> {
  const gone = { jobs: [] as string[], entries: 0, pictures: 0 };
  for (const id of await store.opened({ invented: true })) {
    if (!fold(id, await store.entries(id)).invented) continue;
    const removed = await removeUnlessReal(store, id);
    if (!removed) continue;
    gone.jobs.push(id);
    gone.entries += removed.entries;
    gone.pictures += removed.pictures;
  }
  return gone;
}

/** A job that was also opened as a real one is a record, whatever its last opening says: it stays. */
async function removeUnlessReal(store: Store, job: string) {
  try {
    return await store.removeInvented(job);
  } catch (error) {
    if (error instanceof StoreError && error.code === 'not-invented') return undefined;
    throw error;
  }
}

async function demoEntries(store: Store, folder: string): Promise<RawEntry[]> {
  const files = await filesOf(join(folder, 'jobs'), /\.json$/);
  if (files.length === 0) throw noDemo(folder);
  const entries: RawEntry[] = [];
  for (const file of files) {
    const { entries: raw } = jobFile.parse(JSON.parse(await readFile(file, 'utf8')));
    entries.push(...(await readLines(store, raw)));
  }
  for (const entry of entries) if (entry.kind === 'open') requireInvented(entry);
  return entries;
}

async function filesOf(folder: string, named: RegExp): Promise<string[]> {
  if (!existsSync(folder)) return [];
  const names = (await readdir(folder)).filter((name) => named.test(name)).sort();
  return names.map((name) => join(folder, name));
}

function requireInvented(open: RawEntry): void {
  if ((open.body as { invented?: boolean }).invented === true) return;
  const message = `The demonstration job ${open.job} does not say that it is invented. Nothing was loaded.`;
  throw new ShopkeepError('bad-demo', message);
}

function pictureMissing(job: string, sha256: string): ShopkeepError {
  const message = `The demonstration job ${job} shows picture ${sha256}, which is not with it. It was not loaded.`;
  return new ShopkeepError('bad-demo', message);
}

function noDemo(folder: string): ShopkeepError {
  return new ShopkeepError('no-demo', `There is no invented job in ${folder}. Nothing was loaded.`);
}
