import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Given } from './field.js';

/**
 * What is typed into forms and not written down yet, durable on this device from the first key on. It outlives leaving the
 * sheet and loading the page anew, and is dropped when it is written or given up.
 */
export interface Draft {
  /** what differs from the log, by field */
  readonly given: Given;
  /** what the form is called, for the list of what was begun */
  readonly title: string;
  readonly job: string;
}
export type Drafts = ReadonlyMap<string, Draft>;

interface Shape extends DBSchema {
  drafts: { key: string; value: Draft };
}

export interface DraftStore {
  /** reads what an earlier visit left; until then only what was typed meanwhile is known */
  load(): Promise<void>;
  all(): Drafts;
  keep(key: string, draft: Draft): Promise<void>;
  drop(key: string): Promise<void>;
  subscribe(tell: () => void): () => void;
}

/** One form of one thing: the same key finds the same draft again. */
export const draftKey = (job: string, form: string, handle: string): string => `${job} ${form} ${handle}`;

export function draftStore(name: string): DraftStore {
  const listeners = new Set<() => void>();
  /** changed since the page was opened, before what an earlier visit left was read: the newer word stands */
  const touched = new Set<string>();
  let drafts: Drafts = new Map();
  let db: Promise<IDBPDatabase<Shape>> | undefined;
  const open = () => {
    db ??= openDB<Shape>(name, 1, { upgrade: (d) => void d.createObjectStore('drafts') });
    return db;
  };
  const change = (next: Map<string, Draft>) => {
    drafts = next;
    for (const tell of listeners) tell();
  };
  /** A private window without storage keeps what is typed until the page is left. */
  const durably = async (work: (d: IDBPDatabase<Shape>) => Promise<unknown>) => {
    try {
      await work(await open());
    } catch {
      db = undefined;
    }
  };
  return {
    load: () =>
      durably(async (d) => {
        const [keys, values] = await Promise.all([d.getAllKeys('drafts'), d.getAll('drafts')]);
        const kept = keys.map((key, i) => [key, values[i]!] as const).filter(([key]) => !touched.has(key));
        change(new Map([...kept, ...drafts]));
      }),
    all: () => drafts,
    keep: (key, draft) => {
      touched.add(key);
      change(new Map(drafts).set(key, draft));
      return durably((d) => d.put('drafts', draft, key));
    },
    drop: (key) => {
      touched.add(key);
      if (drafts.has(key)) change(new Map([...drafts].filter(([other]) => other !== key)));
      return durably((d) => d.delete('drafts', key));
    },
    subscribe: (tell) => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
  };
}

/** This device's. */
export const drafts = draftStore('wristpin-drafts');
