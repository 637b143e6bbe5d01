import { randomUUID } from 'node:crypto';
import { chmod, link, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { Trust } from './trust.js';

/** Read and written by its owner alone. */
const ownersOnly = 0o600;

/**
 * The shop's own authority out of its file, made there once. It is written beside and put in place whole, and whoever comes
 * second takes the first one's: phones trust one authority, and a second one would shut them out.
 *
 * @throws Error that names the file when it holds something else: it is never written over
 */
export async function keptTrust(file: string, now: Date): Promise<Trust> {
  const { makeAuthority, trustOf } = await import('./trust.js'); // the library is slow to load, and seldom wanted
  if ((await textOf(file)) === undefined) await put(file, await makeAuthority(now));
  await chmod(file, ownersOnly);
  try {
    return await trustOf((await textOf(file)) ?? '');
  } catch (cause) {
    throw new Error(`${file} is not the shop’s authority, or is damaged: ${String(cause)}`, { cause });
  }
}

const textOf = (file: string): Promise<string | undefined> =>
  readFile(file, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return undefined;
    throw error;
  });

async function put(file: string, text: string): Promise<void> {
  await mkdir(dirname(file), { recursive: true });
  const beside = `${file}.${randomUUID()}.part`;
  try {
    await writeFile(beside, text, { mode: ownersOnly, flag: 'wx', flush: true });
    await link(beside, file).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error;
    });
  } finally {
    await rm(beside, { force: true });
  }
}
