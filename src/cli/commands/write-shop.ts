import { uuidv7 } from 'uuidv7';
import { type Body, type EntryKind, entryVersion, localTime, readEntry, shopLog } from '../../job/index.js';
import type { Store } from '../../store/index.js';
import type { Surroundings } from '../command.js';

/** Writes a line into the shop's log; resolves when it is on the disk. @throws EntryError */
export async function writeShop<K extends EntryKind>(
  store: Store,
  around: Surroundings,
  kind: K,
  body: Body<K>,
): Promise<void> {
  const at = localTime(around.now());
  const line = { id: uuidv7(), job: shopLog, at, by: 'command line', kind, v: entryVersion, body };
  await store.append([readEntry(line)]);
}
