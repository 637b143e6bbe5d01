import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

interface Shape extends DBSchema {
  answers: { key: string; value: { answer: unknown; at: number }; indexes: { at: number } };
}

/** so many logs and lists; those not seen for longest go first */
const most = 400;

/**
 * What the store answered when it was last asked, kept on this device so that the bench and its jobs open without it. A copy
 * beside the truth: a browser without a storage goes on without it, and it gives way when room is short.
 */
function seenStore(name: string) {
  let db: Promise<IDBPDatabase<Shape>> | undefined;
  const open = () => {
    db ??= openDB<Shape>(name, 1, {
      upgrade: (d) => void d.createObjectStore('answers').createIndex('at', 'at'),
      blocking: () => {
        void db?.then((d) => d.close());
        db = undefined;
      },
    });
    return db;
  };
  const orNothing = async <T>(work: (d: IDBPDatabase<Shape>) => Promise<T>): Promise<T | undefined> => {
    try {
      return await work(await open());
    } catch {
      db = undefined;
      return undefined;
    }
  };
  return {
    get: <T>(path: string) => orNothing(async (d) => (await d.get('answers', path))?.answer as T | undefined),
    keep: (path: string, answer: unknown) =>
      orNothing(async (d) => {
        await d.put('answers', { answer, at: Date.now() }, path);
        const over = (await d.count('answers')) - most;
        if (over > 0)
          for (const key of await d.getAllKeysFromIndex('answers', 'at', null, over))
            await d.delete('answers', key);
      }),
    change: <T>(path: string, to: (answer: T) => T) =>
      orNothing(async (d) => {
        const tx = d.transaction('answers', 'readwrite');
        const kept = await tx.store.get(path);
        if (kept) await tx.store.put({ ...kept, answer: to(kept.answer as T) }, path);
        await tx.done;
      }),
    forgetAll: () => orNothing((d) => d.clear('answers')),
  };
}

/** This device's. */
export const seen = seenStore('wristpin-seen');
