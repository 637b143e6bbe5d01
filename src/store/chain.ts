import type { Selectable } from 'kysely';
import { lineDigest, noLine } from './digest.js';
import { stateOf } from './state.js';
import type { Db, EntryRow } from './tables.js';

/** Holds the lines of a log, one after the other, against their digests. */
export interface Chain {
  next(row: Selectable<EntryRow>, problems: string[]): void;
  /** after the last line */
  end(problems: string[]): void;
}

export async function chainOf(db: Db): Promise<Chain> {
  const { head } = await stateOf(db);
  const removed = await db.selectFrom('removed_lines').selectAll().orderBy('seq').execute();
  let before = noLine;
  let passed = 0;
  /** a line that was taken out with its invented job is followed all the same */
  const passRemoved = (seq: number) => {
    while (passed < removed.length && removed[passed]!.seq < seq) before = removed[passed++]!.digest;
  };
  return {
    next(row, problems) {
      passRemoved(row.seq);
      if (!holds(before, row))
        problems.push(
          `entry ${row.id} of job ${row.job}: it is not what was written, or a line before it is gone (line ${row.seq})`,
        );
      before = row.digest; // so that only the line that was changed is named
    },
    end(problems) {
      passRemoved(Number.POSITIVE_INFINITY);
      if (before !== head) problems.push('the log does not end with the line that was written last');
    },
  };
}

function holds(before: string, row: Selectable<EntryRow>): boolean {
  try {
    return lineDigest(before, row) === row.digest && JSON.stringify(JSON.parse(row.body)) === row.body;
  } catch {
    return true; // its body is no JSON, which is said by itself
  }
}
