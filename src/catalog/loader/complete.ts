import type { Catalog } from '../catalog.js';
import { type SectionName, sectionNames, sections } from '../schema/sections.js';
import type { CatalogProblem } from './error.js';

/**
 * What the program needs and no pack gives. Where the schema itself lists the ids of a section (the parts that entries
 * play, the figures of judgement), code asks for each of them by its word, so that each must stand.
 */
export function lackingIn(catalog: Catalog): CatalogProblem[] {
  return sectionNames.flatMap((section) => {
    const given = new Set(catalog[section].map(({ id }) => id));
    return (wordsOf(section) ?? [])
      .filter((word) => !given.has(word))
      .map((word) => ({
        file: 'all packs together',
        line: 0,
        path: section,
        reason: `the program needs "${word}" in ${section}, and no pack gives it`,
      }));
  });
}

/** The words from which a section's ids are taken; undefined where packs are free to choose them. */
export function wordsOf(section: SectionName): readonly string[] | undefined {
  const { def } = sections[section].shape.id._zod;
  if (def.type === 'enum') return Object.values(def.entries).map(String);
  return def.type === 'literal' ? def.values.map(String) : undefined;
}
