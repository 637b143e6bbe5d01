import { sql } from 'kysely';
import { lineDigest, noLine, noteDigest, pictureDigest } from './digest.js';
import { entryPages } from './entry-pages.js';
import { beginState } from './state.js';
import type { Db } from './tables.js';

/** For a log that was written without digests: what it holds by now is taken for what was written. */
export async function digestAll(tx: Db): Promise<void> {
  let digest = noLine;
  for await (const rows of entryPages(tx)) {
    const made = rows.map((row) => {
      digest = digestOrSame(digest, row);
      return sql`(cast(${row.seq} as bigint), cast(${digest} as text))`;
    });
    // one statement a page: a log of many years has millions of lines
    if (made.length > 0)
      await sql`update entries set digest = made.column2 from (values ${sql.join(made)}) as made
        where entries.seq = made.column1`.execute(tx);
  }
  for (const row of await tx.selectFrom('pictures').selectAll().execute())
    await tx
      .updateTable('pictures')
      .set({ digest: pictureDigest(row) })
      .where('sha256', '=', row.sha256)
      .execute();
  for (const row of await tx.selectFrom('job_notes').selectAll().where('made', '>', 0).execute())
    await tx
      .updateTable('job_notes')
      .set({ digest: noteDigest(row) })
      .where('job', '=', row.job)
      .execute();
  await beginState(tx, digest);
}

/** A line whose body cannot be read gets none, and verification goes on naming it. */
function digestOrSame(before: string, row: Parameters<typeof lineDigest>[1]): string {
  try {
    return lineDigest(before, row);
  } catch {
    return before;
  }
}
