import { setImmediate as breath } from 'node:timers/promises';
import type { Selectable } from 'kysely';
import type { Db, EntryRow } from './tables.js';

const entriesAPage = 500;

/**
 * The whole log by pages, in the order of its seq numbers. It takes a breath after each page, for SQLite answers
 * without ever waiting and a server has others to serve.
 */
export async function* entryPages(db: Db): AsyncGenerator<Selectable<EntryRow>[]> {
  for (let last = 0; ; ) {
    const query = db
      .selectFrom('entries')
      .selectAll()
      .where('seq', '>', last)
      .orderBy('seq')
      .limit(entriesAPage);
    const rows = await query.execute();
    yield rows;
    if (rows.length < entriesAPage) return;
    last = rows.at(-1)!.seq;
    await breath();
  }
}
