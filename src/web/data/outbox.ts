import { sha256 as sha256Of } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { useSyncExternalStore } from 'react';
import { uuidv7 } from 'uuidv7';
import {
  type Body,
  type EntryKind,
  entryVersion,
  localTime,
  type RawEntry,
  readEntry,
} from '../../job/index.js';
import { api, NotPaired, type PictureInfo, ServerError } from './api.js';
import { thisDevice } from './device.js';
import { contextOf } from './known-jobs.js';

/**
 * What this device has written and the shop's store has not yet acknowledged. A line is first made durable on the
 * device, then sent; it leaves the outbox only after the store said that it is durable there. "Saved" means that.
 */
export interface Outbox {
  readonly waiting: readonly RawEntry[];
  /** lines that the store will not take, with its reason: they stay until the person takes them back */
  readonly refused: readonly { readonly entry: RawEntry; readonly reason: string }[];
  readonly state: 'saved' | 'sending' | 'offline' | 'not paired';
}

interface Shape extends DBSchema {
  entries: { key: string; value: { entry: RawEntry; refused?: string } };
  pictures: { key: string; value: Blob };
}

let db: Promise<IDBPDatabase<Shape>> | undefined;
let outbox: Outbox = { waiting: [], refused: [], state: 'saved' };
let sending: Promise<void> | undefined;
const listeners = new Set<() => void>();
const savedListeners = new Set<(entries: readonly RawEntry[]) => void>();

function open(): Promise<IDBPDatabase<Shape>> {
  db ??= openDB<Shape>('wristpin-outbox', 1, {
    upgrade(d) {
      d.createObjectStore('entries');
      d.createObjectStore('pictures');
    },
  });
  return db;
}

function change(next: Partial<Outbox>): void {
  outbox = { ...outbox, ...next };
  for (const tell of listeners) tell();
}

/** Reads what an earlier visit left unsent, and tries again now and whenever the network comes back. */
export async function startOutbox(): Promise<void> {
  const kept = await (await open()).getAll('entries');
  change({
    waiting: kept.filter((k) => k.refused === undefined).map((k) => k.entry),
    refused: kept.flatMap((k) => (k.refused === undefined ? [] : [{ entry: k.entry, reason: k.refused }])),
  });
  window.addEventListener('online', () => void send());
  setInterval(() => outbox.waiting.length > 0 && void send(), 5_000);
  await send();
}

/**
 * Writes a line into a job's log. Resolves once the line is durable on this device; the store's word follows.
 * @throws EntryError when the body is not one the log takes
 */
export async function write<K extends EntryKind>(job: string, kind: K, body: Body<K>): Promise<RawEntry> {
  const [entry] = await writeAll(job, [{ kind, body }]);
  return entry!;
}

/** Several lines at once, in order; they reach the store together or not at all. */
export async function writeAll(
  job: string,
  lines: readonly { kind: EntryKind; body: unknown }[],
): Promise<RawEntry[]> {
  const at = localTime(new Date());
  const by = thisDevice().by;
  const made = lines.map(({ kind, body }) =>
    readEntry({ id: uuidv7(), job, at, by, kind, v: entryVersion, body: clean(body) }, contextOf(job)),
  );
  const d = await open();
  const tx = d.transaction('entries', 'readwrite');
  await Promise.all([...made.map((entry) => tx.store.put({ entry }, entry.id)), tx.done]);
  change({ waiting: [...outbox.waiting, ...made] });
  void send();
  return made;
}

/** Drops fields left undefined, which JSON would drop anyway. */
function clean(body: unknown): unknown {
  return JSON.parse(JSON.stringify(body));
}

/** Keeps a picture on the device until the store has it; resolves with what the store says it is. */
export async function keepPicture(file: Blob): Promise<PictureInfo> {
  const bytes = await file.arrayBuffer();
  // not the browser's own: it is kept from pages that a phone opens over the shop's network
  const digest = bytesToHex(sha256Of(new Uint8Array(bytes)));
  try {
    return await api.putPicture(digest, file);
  } catch (error) {
    if (error instanceof ServerError) throw error;
    const local = await describeLocally(file, digest, bytes.byteLength);
    await (await open()).put('pictures', file, digest);
    return local;
  }
}

async function describeLocally(file: Blob, sha256: string, bytes: number): Promise<PictureInfo> {
  if (!['image/jpeg', 'image/png', 'image/webp'].includes(file.type))
    throw new Error('That is not a JPEG, PNG or WebP picture.');
  const bitmap = await createImageBitmap(file);
  return {
    sha256,
    bytes,
    mime: file.type as PictureInfo['mime'],
    width: bitmap.width,
    height: bitmap.height,
  };
}

/** A picture that has not reached the store yet, if this device holds it. */
export async function localPicture(sha256: string): Promise<Blob | undefined> {
  return (await open()).get('pictures', sha256);
}

/** Takes back a line that the store refused. */
export async function discardRefused(id: string): Promise<void> {
  await (await open()).delete('entries', id);
  change({ refused: outbox.refused.filter((r) => r.entry.id !== id) });
}

/** One sending at a time; a call during one waits for it and then looks again. */
async function send(): Promise<void> {
  while (sending) await sending;
  if (outbox.waiting.length === 0) return;
  sending = sendOnce().finally(() => {
    sending = undefined;
  });
  await sending;
}

async function sendOnce(): Promise<void> {
  change({ state: 'sending' });
  try {
    await sendPictures();
    while (outbox.waiting.length > 0) await sendJob(outbox.waiting[0]!.job);
    change({ state: 'saved' });
  } catch (error) {
    change({ state: error instanceof NotPaired ? 'not paired' : 'offline' });
  }
}

async function sendPictures(): Promise<void> {
  const d = await open();
  for (const sha256 of await d.getAllKeys('pictures')) {
    const blob = await d.get('pictures', sha256);
    try {
      if (blob) await api.putPicture(sha256, blob);
    } catch (error) {
      if (!(error instanceof ServerError)) throw error; // the line that shows it will say what is wrong
    }
    await d.delete('pictures', sha256);
  }
}

async function sendJob(job: string): Promise<void> {
  const batch = outbox.waiting.filter((e) => e.job === job).slice(0, 200);
  try {
    await api.append(batch);
    await settle(batch);
  } catch (error) {
    if (!(error instanceof ServerError) || error.status >= 500) throw error;
    if (batch.length > 1) await sendSingly(batch);
    else await refuse(batch[0]!, error.message);
  }
}

/** A refused batch is sent line by line, so that only the bad line stays behind. */
async function sendSingly(batch: readonly RawEntry[]): Promise<void> {
  for (const entry of batch) {
    try {
      await api.append([entry]);
      await settle([entry]);
    } catch (error) {
      if (!(error instanceof ServerError) || error.status >= 500) throw error;
      await refuse(entry, error.message);
    }
  }
}

/** The readers are told before the outbox lets go, so that no line is missing in between; the fold drops doubles. */
async function settle(entries: readonly RawEntry[]): Promise<void> {
  for (const tell of savedListeners) tell(entries);
  const ids = new Set(entries.map((e) => e.id));
  const d = await open();
  const tx = d.transaction('entries', 'readwrite');
  await Promise.all([...entries.map((e) => tx.store.delete(e.id)), tx.done]);
  change({ waiting: outbox.waiting.filter((e) => !ids.has(e.id)) });
}

async function refuse(entry: RawEntry, reason: string): Promise<void> {
  await (await open()).put('entries', { entry, refused: reason }, entry.id);
  change({
    waiting: outbox.waiting.filter((e) => e.id !== entry.id),
    refused: [...outbox.refused, { entry, reason }],
  });
}

export const outboxNow = (): Outbox => outbox;

export function useOutbox(): Outbox {
  return useSyncExternalStore((tell) => {
    listeners.add(tell);
    return () => listeners.delete(tell);
  }, outboxNow);
}

/** Calls back with lines that the store has just acknowledged. */
export function whenSaved(tell: (entries: readonly RawEntry[]) => void): void {
  savedListeners.add(tell);
}
