import type { Backend } from './backend.js';
import type { Device } from './store.js';
import type { Db } from './tables.js';

export async function pairDevice(
  backend: Backend,
  { id, name }: Pick<Device, 'id' | 'name'>,
  tokenSha256: string,
): Promise<void> {
  await backend.write(async ({ tx }) => {
    const row = { id, name, token_sha256: tokenSha256, paired: backend.now() };
    await tx.insertInto('devices').values(row).execute();
  });
}

export async function devices(db: Db): Promise<Device[]> {
  return db.selectFrom('devices').select(['id', 'name', 'paired']).orderBy('paired').orderBy('id').execute();
}

export async function deviceOf(db: Db, tokenSha256: string): Promise<Device | undefined> {
  return db
    .selectFrom('devices')
    .select(['id', 'name', 'paired'])
    .where('token_sha256', '=', tokenSha256)
    .executeTakeFirst();
}

export async function unpairDevice(backend: Backend, id: string): Promise<boolean> {
  return backend.write(async ({ tx }) => {
    const gone = await tx.deleteFrom('devices').where('id', '=', id).executeTakeFirst();
    return Number(gone.numDeletedRows) > 0;
  });
}
