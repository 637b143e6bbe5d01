import { foldShop, type RawEntry, type Shop } from '../../job/index.js';
import { see } from './stands-after.js';

/** A line that has been here before stays the same object, so that it is understood once in its life. */
const known = new Map<string, RawEntry>();

export const sameLines = (lines: readonly RawEntry[]): RawEntry[] =>
  lines.map((line) => {
    const here = known.get(line.id) ?? line;
    known.set(line.id, here);
    return here;
  });

/** Lists of lines by their log: one that holds the same lines again is the same list. */
const lists = new Map<string, readonly RawEntry[]>();

/** The store's lines of a log and this device's unsent ones, each once. */
export function linesOf(
  log: string,
  stored: readonly RawEntry[] | undefined,
  waiting: readonly RawEntry[],
): readonly RawEntry[] {
  const all = [...new Set([...(stored ?? []), ...sameLines(waiting.filter((e) => e.job === log))])];
  const before = lists.get(log);
  if (before?.length === all.length && before.every((line, i) => line === all[i])) return before;
  lists.set(log, all);
  see(log, all);
  return all;
}

let shop: { readonly lines: readonly RawEntry[]; readonly shop: Shop } | undefined;

/** The shop as this page saw it last; nothing before its log was read. */
export const shopSeen = (): Shop | undefined => shop?.shop;

export function shopOf(lines: readonly RawEntry[]): Shop {
  if (shop?.lines !== lines) shop = { lines, shop: foldShop(lines) };
  return shop.shop;
}
