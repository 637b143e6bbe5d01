import { assemble, type Entries, type Loaded } from './assemble.js';
import { lackingIn } from './complete.js';
import { CatalogError } from './error.js';
import type { ReadPack } from './pack.js';
import { type Pack, readPack } from './pack-text.js';

/**
 * One catalog out of packs, in their order: a later pack may add, replace or extend what an earlier one says.
 * Throws CatalogError with every problem found: text that is not YAML, an entry that its schema refuses, an id given
 * twice, a reference to nothing, parts that wait for each other, something that the program needs and no pack gives.
 */
export function loadCatalog(packs: readonly Pack[]): Loaded {
  const { catalog, replaced } = loadAll(packs);
  return { catalog, replaced };
}

/** The same with the packs as read and each entry with the place where it was written. */
export function loadAll(
  packs: readonly Pack[],
): Loaded & { readonly entries: Entries; readonly read: readonly ReadPack[] } {
  const read = packs.map(readPack);
  const loaded = assemble(read);
  const lacking = lackingIn(loaded.catalog);
  if (lacking.length > 0) throw new CatalogError(lacking);
  return { ...loaded, read };
}
