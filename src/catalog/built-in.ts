import { builtInData } from './built-in.gen.js';
import type { Catalog } from './catalog.js';
import { assemble } from './loader/assemble.js';
import { type ReadPack, sortPack } from './loader/pack.js';

let built: Catalog | undefined;

/**
 * The catalog that comes with the program, made once and then kept. It starts from the packs as scripts/catalog.mjs
 * has read them: reading so much YAML would hold up a page for most of a second.
 */
export function builtInCatalog(): Catalog {
  built ??= assemble(builtInRead()).catalog;
  return built;
}

/** The program's own packs, sorted into entries; their lines are not kept. */
export function builtInRead(): ReadPack[] {
  return contents().map(({ file, content }) => sortPack(file, content, () => 1));
}

function contents(): { file: string; content: unknown }[] {
  return JSON.parse(builtInData);
}
