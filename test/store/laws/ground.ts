import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, expect } from 'vitest';
import type { Backend } from '../../../src/store/backend.js';
import type { Store, StoreErrorCode } from '../../../src/store/index.js';

/** A place for one log, empty at first. */
export interface Place {
  open(): Promise<Store>;
  /** the database under the store, to look at and to damage */
  under(): Promise<Backend>;
}

/** What the laws stand on: places of one kind of database, closed again after each test. */
export interface Ground {
  /** "SQLite", "PostgreSQL" */
  readonly database: string;
  freshPlace(): Promise<Place>;
  openAt(place: Place): Promise<Store>;
  underOf(place: Place): Promise<Backend>;
  fresh(): Promise<Store>;
  /** a name for a backup */
  newFile(): string;
}

export function ground(database: string, freshPlace: () => Promise<Place>): Ground {
  const folder = mkdtempSync(join(tmpdir(), 'wristpin-acceptance-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const closing: (() => Promise<void>)[] = [];
  afterEach(async () => {
    for (const close of closing.splice(0).reverse()) await close();
  });
  const kept = async <T extends { close(): Promise<void> }>(opened: Promise<T>) => {
    const it = await opened;
    closing.push(() => it.close());
    return it;
  };
  let files = 0;
  const openAt = (place: Place) => kept(place.open());
  return {
    database,
    freshPlace,
    openAt,
    underOf: (place) => kept(place.under()),
    fresh: async () => openAt(await freshPlace()),
    newFile: () => join(folder, `${++files}.wristpin`),
  };
}

export async function refusal(work: Promise<unknown>, code: StoreErrorCode, says: RegExp): Promise<void> {
  await expect(work).rejects.toMatchObject({
    name: 'StoreError',
    code,
    message: expect.stringMatching(says),
  });
}
