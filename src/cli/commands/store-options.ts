import { existsSync, mkdirSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import type { Store } from '../../store/index.js';
import { type Call, Failed, type Option, type Surroundings, text, WronglyCalled } from '../command.js';
import { standardStoreFile } from '../data-folder.js';
import { reasonOf } from './out-file.js';

/** The options of every command that opens the shop's store. */
export const storeOptions: Readonly<Record<string, Option>> = {
  store: {
    type: 'string',
    value: 'FILE',
    help: 'the store’s file (else WRISTPIN_STORE, else your data folder)',
  },
  database: {
    type: 'string',
    value: 'URL',
    help: 'a PostgreSQL database instead: postgres://user@host/name',
  },
};

export interface OpenStore {
  readonly store: Store;
  readonly kind: 'sqlite' | 'postgres';
  /** the file, or the database without its password */
  readonly name: string;
}

/** `may-begin` makes a new store where none is; `must-exist` says that there is none. */
export type Beginning = 'may-begin' | 'must-exist';

type Place = { readonly file: string } | { readonly url: string; readonly name: string };

/** Where the store lies that a call names. */
export function placeOf(call: Call, around: Surroundings): Place {
  const url = text(call, 'database');
  if (url !== undefined && text(call, 'store') !== undefined) {
    throw new WronglyCalled('--store and --database each name a store; give one of them.');
  }
  if (url === undefined) return { file: storeFile(call, around) };
  return { url: requireUrl(url), name: withoutPassword(url) };
}

export async function openStore(call: Call, around: Surroundings, beginning: Beginning): Promise<OpenStore> {
  const place = placeOf(call, around);
  const { openPostgres, openSqlite } = await import('../open-store.js');
  const clock = { now: () => around.now().toISOString() };
  if ('url' in place)
    return { store: await openPostgres(place.url, clock), kind: 'postgres', name: place.name };
  const { file } = place;
  if (beginning === 'must-exist' && !existsSync(file)) throw noStore(file);
  makeFolder(dirname(file));
  return { store: await openSqlite(file, clock), kind: 'sqlite', name: file };
}

/** Opens the store, works with it, and closes it whatever happens. */
export async function withStore(
  call: Call,
  around: Surroundings,
  beginning: Beginning,
  work: (opened: OpenStore) => Promise<void>,
): Promise<void> {
  const opened = await openStore(call, around, beginning);
  try {
    await work(opened);
  } finally {
    await opened.store.close();
  }
}

export function storeFile(call: Call, around: Surroundings): string {
  const named = text(call, 'store');
  if (named === '') throw new WronglyCalled('--store wants the name of a file.');
  return resolve(named ?? (around.env.WRISTPIN_STORE || standardStoreFile(around)));
}

export function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw new Failed(`The store’s folder ${folder} cannot be made: ${reasonOf(error)}.`, { cause: error });
  }
}

function requireUrl(url: string): string {
  if (/^postgres(ql)?:\/\//.test(url) && URL.canParse(url)) return url;
  throw new WronglyCalled('--database wants an address such as postgres://user@host:5432/name.');
}

function withoutPassword(url: string): string {
  const shown = new URL(url);
  shown.password = '';
  return shown.href;
}

export function noStore(file: string): Failed {
  return new Failed(
    `There is no store at ${file} yet. “wristpin serve” begins one; --store names another file.`,
  );
}
