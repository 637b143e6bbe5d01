import { builtInData } from './built-in.gen.js';
import type { Catalog } from './catalog.js';
import type { Compiled } from './loader/compile.js';
import type { ReadPack } from './loader/pack.js';
import { inPhases } from './schema/run-up.js';
import type { SectionName } from './schema/sections.js';

let built: { readonly catalog: Catalog; readonly compiled: Compiled } | undefined;

/**
 * The catalog that comes with the program, taken up once and then kept. Its packs were checked and completed when the
 * program was built (scripts/catalog.mjs), so that nothing is left to do here but to put lists and origins in their place.
 */
export const builtInCatalog = (): Catalog => taken().catalog;

/** The program's own packs as the loader has them, for a shop's packs to be laid over; their lines are not kept. */
export function builtInRead(): ReadPack[] {
  return taken().compiled.packs.map(({ file, head, origins, entries: lists }) => {
    const entries: ReadPack['entries'][number][] = [];
    const pack: ReadPack = {
      ...{ file, head, origins, entries },
      ...{ defaults: {}, problems: [], lineOf: () => 1, checked: true },
    };
    for (const [section, list] of Object.entries(lists))
      for (const [index, value] of list.entries())
        entries.push({ section: section as SectionName, value, pack, path: [section, index] });
    return pack;
  });
}

function taken(): NonNullable<typeof built> {
  if (built) return built;
  const compiled = JSON.parse(builtInData) as Compiled;
  const origins = new Map(
    compiled.packs.flatMap((pack) => pack.origins).map(({ id, ...origin }) => [id, origin] as const),
  );
  const lists: Record<string, unknown[]> = Object.fromEntries(compiled.sections.map((name) => [name, []]));
  for (const { entries } of compiled.packs) {
    name(entries, origins);
    for (const [section, list] of Object.entries(entries)) lists[section]!.push(...list);
  }
  const catalog = lists as unknown as Catalog;
  built = { catalog: { ...catalog, runUp: inPhases(catalog.runUp) }, compiled };
  return built;
}

/** Puts each origin in the place of its name. In place: nobody else has this data yet. */
function name(value: object, origins: ReadonlyMap<string, object>): void {
  const fields = value as Record<string, unknown>;
  for (const field of Object.keys(fields)) {
    const item = fields[field];
    if (typeof item === 'object' && item !== null) name(item, origins);
    else if (field === 'origin') fields[field] = origins.get(item as string);
  }
}
