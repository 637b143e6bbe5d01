import type { Backend } from './backend.js';
import type { Device, DeviceTokens } from './store.js';
import type { Db } from './tables.js';

/**
 * A device that is paired anew takes the place of what it was before: it keeps no second way in. Its name is made another
 * one where a device of that name is there already: a line must say which of them wrote it.
 */
export async function pairDevice(
  backend: Backend,
  device: Pick<Device, 'id' | 'name'>,
  tokens: DeviceTokens,
  replaces?: string,
): Promise<Device> {
  return backend.write(async ({ tx }) => {
    if (replaces !== undefined) await tx.deleteFrom('devices').where('id', '=', replaces).execute();
    const taken = await tx.selectFrom('devices').select('name').execute();
    const name = unlike(
      device.name,
      taken.map((other) => other.name),
    );
    const known = { id: device.id, name, paired: backend.now() };
    await tx
      .insertInto('devices')
      .values({ ...known, ...columnsOf(tokens) })
      .execute();
    return known;
  });
}

const columnsOf = ({ token, carry }: DeviceTokens) => ({ token_sha256: token, carry_sha256: carry });

function unlike(wanted: string, taken: readonly string[]): string {
  const there = new Set(taken.map((name) => name.toLowerCase()));
  for (let n = 1; ; n++) {
    const name = n === 1 ? wanted : `${wanted} ${n}`;
    if (!there.has(name.toLowerCase())) return name;
  }
}

const shown = (db: Db) => db.selectFrom('devices').select(['id', 'name', 'paired', 'seen']);

const asDevice = ({ seen, ...row }: Device & { readonly seen: string }): Device => ({
  ...row,
  ...(seen !== '' && { seen }),
});

export async function devices(db: Db): Promise<Device[]> {
  return (await shown(db).orderBy('paired').orderBy('id').execute()).map(asDevice);
}

export async function deviceOf(db: Db, tokenSha256: string): Promise<Device | undefined> {
  const row = await shown(db).where('token_sha256', '=', tokenSha256).executeTakeFirst();
  return row && asDevice(row);
}

export async function carrierOf(db: Db, carrySha256: string): Promise<Device | undefined> {
  const row = await shown(db)
    .where('carry_sha256', '=', carrySha256)
    .where('carry_sha256', '!=', '')
    .executeTakeFirst();
  return row && asDevice(row);
}

/** Gives a device other tokens: it goes on as the one it was, and those before let nobody in any more. */
export async function renewDevice(backend: Backend, id: string, tokens: DeviceTokens): Promise<boolean> {
  return backend.write(async ({ tx }) => {
    const changed = await tx
      .updateTable('devices')
      .set(columnsOf(tokens))
      .where('id', '=', id)
      .executeTakeFirst();
    return Number(changed.numUpdatedRows) > 0;
  });
}

export async function sawDevice(backend: Backend, id: string, at: string): Promise<void> {
  await backend.write(({ tx }) => tx.updateTable('devices').set({ seen: at }).where('id', '=', id).execute());
}

export async function unpairDevice(backend: Backend, id: string): Promise<boolean> {
  return backend.write(async ({ tx }) => {
    const gone = await tx.deleteFrom('devices').where('id', '=', id).executeTakeFirst();
    return Number(gone.numDeletedRows) > 0;
  });
}
