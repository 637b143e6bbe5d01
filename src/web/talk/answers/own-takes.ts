import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { useSyncExternalStore } from 'react';
import type { Likeness, Takes } from '../../../hear/index.js';

interface Shape extends DBSchema {
  /** by phrase; what each take sounds like, never the sound itself */
  takes: { key: string; value: readonly Likeness[] };
}

/** A person's own takes of phrases: they lie on this device and go nowhere. */
const listeners = new Set<() => void>();
let takes: Takes = new Map();
let db: Promise<IDBPDatabase<Shape>> | undefined;
let read: Promise<void> | undefined;

const open = () => {
  db ??= openDB<Shape>('wristpin-voice', 1, { upgrade: (d) => void d.createObjectStore('takes') });
  return db;
};

/** A private window without storage keeps them until the page is left. */
async function durably(work: (d: IDBPDatabase<Shape>) => Promise<unknown>): Promise<void> {
  try {
    await work(await open());
  } catch {
    db = undefined;
  }
}

function change(next: Takes): void {
  takes = next;
  for (const tell of listeners) tell();
}

/** What an earlier visit left. */
function readTakes(): Promise<void> {
  read ??= durably(async (d) => {
    const [phrases, kept] = await Promise.all([d.getAllKeys('takes'), d.getAll('takes')]);
    change(new Map([...phrases.map((phrase, i) => [phrase, kept[i]!] as const), ...takes]));
  });
  return read;
}

export async function ownTakes(): Promise<Takes> {
  await readTakes();
  return takes;
}

export function keepTakes(phrase: string, of: readonly Likeness[]): Promise<void> {
  change(new Map(takes).set(phrase, of));
  return durably((d) => d.put('takes', of, phrase));
}

/** All of them. */
export function forgetTakes(): Promise<void> {
  change(new Map());
  return durably((d) => d.clear('takes'));
}

export function useOwnTakes(): Takes {
  return useSyncExternalStore(
    (tell) => {
      void readTakes();
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    () => takes,
  );
}
