import type { RawEntry } from './entry.js';
import { withOffset } from './local-time.js';

type Placed = Pick<RawEntry, 'at' | 'rank'>;

/** The greatest instant that a date can hold, in milliseconds (ECMA-262, "Time Values and Time Range"). */
export const latestPlace = 8.64e15;

/**
 * Where a line stands in its log, in milliseconds since 1970: its rank where it carries one, else the instant at which it
 * was written.
 *
 * The rule: whoever writes a line gives it `rankAfter(at, greatest place of the lines of this log that the device knows)`.
 * So its place is greater than that of every line its device had seen, whatever any clock says, and by induction a line
 * stands after all that led to it. Lines of which neither device had seen the other's stand by their instants, which are
 * corrected by the bench's clock, then by id. Each line's place is in the line itself: the order is the same in whatever
 * order lines arrive, in an export and in another store.
 */
export function placeOf({ at, rank }: Placed): number {
  const place = rank ?? Date.parse(at);
  return Number.isNaN(place) ? Number.NEGATIVE_INFINITY : place;
}

/** The rank that a line must carry to stand after `seen`; none where its own time says so already. */
export function rankAfter(at: string, seen: number): number | undefined {
  return placeOf({ at }) > seen ? undefined : Math.min(seen + 1, latestPlace);
}

/** Order within a log: by place, then by id, so that every device folds the same log. */
export function inOrder<E extends Placed & Pick<RawEntry, 'id'>>(entries: readonly E[]): E[] {
  const place = new Map(entries.map((e) => [e, placeOf(e)]));
  return [...entries].sort((a, b) => {
    const apart = place.get(a)! - place.get(b)!;
    return apart || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
  });
}

/** When a line counts as written: what two lines are compared by says the same as their order. */
export function whenOf({ at, rank }: Placed): string {
  if (rank === undefined || rank === Date.parse(at)) return at;
  return withOffset(new Date(rank), offsetMinutes(at));
}

function offsetMinutes(at: string): number {
  const [, sign, hours, minutes] = /([+-])(\d\d):(\d\d)$/.exec(at) ?? [];
  return sign ? (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) : 0;
}
