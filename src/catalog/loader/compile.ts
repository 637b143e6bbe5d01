import { sectionNames } from '../schema/sections.js';
import type { Fields } from './assemble.js';
import { loadAll } from './load.js';
import type { ReadPack } from './pack.js';
import type { Pack } from './pack-text.js';

/** The program's own packs as they were found sound: entries complete, each origin that has a name by its name. */
export interface Compiled {
  readonly sections: readonly string[];
  readonly packs: readonly {
    readonly file: string;
    readonly head: { readonly id: string; readonly title: string };
    readonly origins: ReadPack['origins'];
    /** section → entries */
    readonly entries: Readonly<Record<string, readonly Fields[]>>;
  }[];
}

/**
 * The program's own packs, checked and made ready so that a page only takes them up. They may not change one another.
 * @throws CatalogError where `loadCatalog` does
 */
export function compile(texts: readonly Pack[]): Compiled {
  const { read, entries, replaced } = loadAll(texts);
  for (const { file, section, key, how } of replaced)
    throw new TypeError(
      `${file}: "${key}" in ${section} is ${how}; the program's own packs do not change one another`,
    );
  const origins = read.flatMap((pack) => pack.origins);
  const nameOf = new Map(origins.map(({ id, ...origin }) => [JSON.stringify(origin), id]));
  const packs = read.map((pack) => {
    const mine = [...entries].map(([section, list]) => {
      const own = [...list.values()].filter((entry) => entry.pack === pack);
      return [section, own.map(({ value }) => named(value, nameOf) as Fields)] as const;
    });
    const given = mine.filter(([, list]) => list.length > 0);
    return { file: pack.file, head: pack.head!, origins: pack.origins, entries: Object.fromEntries(given) };
  });
  return { sections: sectionNames, packs };
}

function named(value: unknown, nameOf: ReadonlyMap<string, string>): unknown {
  if (Array.isArray(value)) return value.map((item) => named(item, nameOf));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([field, item]) => [
      field,
      field === 'origin' ? (nameOf.get(JSON.stringify(item)) ?? item) : named(item, nameOf),
    ]),
  );
}
