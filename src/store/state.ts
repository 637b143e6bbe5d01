import { randomUUID } from 'node:crypto';
import { StoreError } from './error.js';
import type { LastBackup } from './store.js';
import type { Db, StateRow } from './tables.js';

/** A store that begins, or that takes up digests; `head` is the digest of its last line. */
export async function beginState(tx: Db, head: string): Promise<void> {
  await tx
    .insertInto('store_state')
    .values({ store: randomUUID(), head, backup_at: '', backup_file: '' })
    .execute();
}

/** @throws StoreError when the row is gone: then this is no store any more that could be gone on with */
export async function stateOf(db: Db): Promise<StateRow> {
  const [state, ...more] = await db.selectFrom('store_state').selectAll().execute();
  if (state !== undefined && more.length === 0) return state;
  throw new StoreError(
    'corrupt',
    `The log has ${state === undefined ? 'lost the row that says which store it is' : 'two rows that say which store it is'}.`,
    'Nothing in it has been changed.',
    'Keep it as it is, and restore the last backup into a new one.',
  );
}

export const headDigest = async (db: Db): Promise<string> => (await stateOf(db)).head;

export async function setHead(tx: Db, head: string): Promise<void> {
  await tx.updateTable('store_state').set({ head }).execute();
}

export async function setBackup(tx: Db, at: string, file: string): Promise<void> {
  await tx.updateTable('store_state').set({ backup_at: at, backup_file: file }).execute();
}

export async function lastBackup(db: Db): Promise<LastBackup | undefined> {
  const { backup_at: at, backup_file: file } = await stateOf(db);
  return at === '' ? undefined : { at, file };
}
