import { setImmediate as breath } from 'node:timers/promises';
import { sql } from 'kysely';
import { entriesAStatement } from './append.js';
import { entryPages } from './entry-pages.js';
import { rebuild } from './job-notes.js';
import { headDigest, setHead } from './state.js';
import type { Db, Dialect } from './tables.js';

/** All rows of one database into the empty tables of another, with the same seq numbers; gives the head. */
export async function copyRows(from: Db, to: Db, toDialect: Dialect): Promise<number> {
  const head = await copyEntries(from, to);
  for (const row of await from.selectFrom('removed_lines').selectAll().execute())
    await to.insertInto('removed_lines').values(row).execute();
  await setHead(to, await headDigest(from));
  await rebuild(to);
  for (const { sha256 } of await from.selectFrom('pictures').select('sha256').execute()) {
    await copyPicture(from, to, sha256);
    await breath();
  }
  if (toDialect === 'postgres' && head > 0) await continueAfter(to, head);
  return head;
}

async function copyEntries(from: Db, to: Db): Promise<number> {
  let last = 0;
  for await (const rows of entryPages(from)) {
    for (let i = 0; i < rows.length; i += entriesAStatement) {
      await to
        .insertInto('entries')
        .values(rows.slice(i, i + entriesAStatement))
        .execute();
    }
    last = rows.at(-1)?.seq ?? last;
  }
  return last;
}

async function copyPicture(from: Db, to: Db, sha256: string): Promise<void> {
  const row = await from
    .selectFrom('pictures')
    .selectAll()
    .where('sha256', '=', sha256)
    .executeTakeFirstOrThrow();
  await to.insertInto('pictures').values(row).execute();
  const pieces = await from
    .selectFrom('picture_chunks')
    .select('n')
    .where('sha256', '=', sha256)
    .orderBy('n')
    .execute();
  for (const { n } of pieces) {
    const piece = from
      .selectFrom('picture_chunks')
      .selectAll()
      .where('sha256', '=', sha256)
      .where('n', '=', n);
    await to
      .insertInto('picture_chunks')
      .values(await piece.executeTakeFirstOrThrow())
      .execute();
  }
}

/** SQLite goes on after the greatest seq it was given; PostgreSQL has to be told. */
async function continueAfter(to: Db, head: number): Promise<void> {
  await sql`select setval(pg_get_serial_sequence('entries', 'seq'), ${head})`.execute(to);
}
