import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import type { PictureInfo } from '../api.js';
import { DeviceFull, type DeviceStorage, type KeptLine, type KeptPicture } from './kept.js';

interface Shape extends DBSchema {
  /** `n` is missing where an older version wrote it */
  entries: { key: string; value: Omit<KeptLine, 'n'> & { n?: number } };
  /** the bytes; a Blob where an older version wrote it */
  pictures: { key: string; value: Uint8Array<ArrayBuffer> | Blob };
  facts: { key: string; value: KeptPicture };
}

type Stores = ('entries' | 'pictures' | 'facts')[];

/**
 * The browser's own database. Bytes lie in it as bytes: a Blob there can lose its file. A transaction is waited for to its
 * end and asked to reach the disk, not only the system's memory (`durability`).
 */
export function deviceStorage(name: string, gone: () => void = () => {}): DeviceStorage {
  let db: Promise<IDBPDatabase<Shape>> | undefined;
  const open = () => {
    db ??= openOutbox(name, () => {
      db = undefined;
      gone();
    });
    db.catch(() => {
      db = undefined; // the next one asks anew
    });
    return db;
  };
  const inOne = async (stores: Stores, work: (tx: Writing) => Promise<unknown>[]) => {
    const tx = (await open()).transaction(stores, 'readwrite', { durability: 'strict' });
    try {
      await Promise.all([...work(tx), tx.done]);
    } catch (error) {
      tx.done.catch(() => {}); // it says the same again
      throw asDeviceError(error);
    }
  };
  return {
    read: async () => {
      const d = await open();
      await describeOldPictures(d);
      const [lines, pictures] = await Promise.all([d.getAll('entries'), d.getAll('facts')]);
      return { lines: lines.map((line) => ({ ...line, n: line.n ?? 0 })), pictures };
    },
    keep: (lines, pictures = []) =>
      inOne(['entries', 'pictures', 'facts'], (tx) => [
        ...lines.map((line) => tx.objectStore('entries').put(line, line.entry.id)),
        ...pictures.flatMap(({ picture, bytes }) => [
          tx.objectStore('facts').put(picture, picture.sha256),
          tx.objectStore('pictures').put(bytes, picture.sha256),
        ]),
      ]),
    mark: (lines, pictures) =>
      inOne(['entries', 'facts'], (tx) => [
        ...lines.map((line) => tx.objectStore('entries').put(line, line.entry.id)),
        ...pictures.map((picture) => tx.objectStore('facts').put(picture, picture.sha256)),
      ]),
    drop: (lines, pictures) =>
      inOne(['entries', 'pictures', 'facts'], (tx) => [
        ...lines.map((id) => tx.objectStore('entries').delete(id)),
        ...pictures.flatMap((id) => [
          tx.objectStore('facts').delete(id),
          tx.objectStore('pictures').delete(id),
        ]),
      ]),
    bytes: async (sha256) => {
      const kept = await (await open()).get('pictures', sha256);
      return kept instanceof Blob ? new Uint8Array(await kept.arrayBuffer()) : kept;
    },
  };
}

type Writing = IDBPTransaction<Shape, Stores, 'readwrite'>;

function openOutbox(name: string, gone: () => void): Promise<IDBPDatabase<Shape>> {
  let mine: IDBPDatabase<Shape> | undefined;
  return openDB<Shape>(name, 2, {
    upgrade(d, from) {
      if (from < 1) {
        d.createObjectStore('entries');
        d.createObjectStore('pictures');
      }
      d.createObjectStore('facts');
    },
    // another page brings a newer version: it must not wait for this one
    blocking: () => {
      mine?.close();
      gone();
    },
    terminated: gone,
  }).then((opened) => {
    mine = opened;
    return opened;
  });
}

/** Pictures that an older version kept have no facts beside them. They are sent; their lines know the rest. */
async function describeOldPictures(d: IDBPDatabase<Shape>): Promise<void> {
  const [kept, described] = await Promise.all([d.getAllKeys('pictures'), d.getAllKeys('facts')]);
  for (const sha256 of kept.filter((key) => !described.includes(key))) {
    const picture = await d.get('pictures', sha256);
    if (!(picture instanceof Blob)) continue;
    const mime = picture.type as PictureInfo['mime'];
    await d.put('facts', { sha256, mime, bytes: picture.size, width: 0, height: 0 }, sha256);
  }
}

function asDeviceError(error: unknown): unknown {
  const isFull = error instanceof Error && error.name === 'QuotaExceededError';
  return isFull ? new DeviceFull('This device’s storage is full.') : error;
}
