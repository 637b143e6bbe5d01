import type { Catalog, Price } from '../../../catalog/index.js';

/** The catalog's kind of a part by one of the words that name it: "inlet needle" and "needle" are one kind. */
export function kindOfWord(catalog: Catalog, word: string): Price | undefined {
  return catalog.prices.find(({ names }) => names.includes(word));
}

/** The kind whose longest name stands in a part's handle: anywhere for several words, at the end for one. */
export function kindOfPart(catalog: Catalog, { part }: { readonly part: string }): string | undefined {
  const handle = `-${part}-`;
  const found = catalog.prices.flatMap(({ id, names }) =>
    names.map((name) => ({ id, slug: `-${name.toLowerCase().replace(/[^a-z0-9]+/g, '-')}-` })),
  );
  const fits = found.filter(({ slug }) =>
    slug.slice(1, -1).includes('-') ? handle.includes(slug) : handle.endsWith(slug),
  );
  return fits.sort((a, b) => b.slug.length - a.slug.length)[0]?.id;
}
