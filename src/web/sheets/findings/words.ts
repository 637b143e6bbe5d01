import { byId, type Catalog } from '../../../catalog/index.js';

/** Never 0 or 100 for what is not certain. */
export const percent = (p: number): string =>
  p > 0.995 ? '> 99 %' : p < 0.005 ? '< 1 %' : `${Math.round(100 * p)} %`;

export const lowerFirst = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);
export const upperFirst = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** "a, b and c" */
export const listed = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

/**
 * "Bowl sample (before any draining): varnish" → "Bowl sample: varnish": a check's title without how it is made, where
 * there is no room for it.
 */
export function shortEvidence(
  { checks }: Catalog,
  e: { readonly what: string; readonly check?: string },
): string {
  const title = byId(checks).get(e.check ?? '')?.title;
  if (title === undefined || !e.what.startsWith(title)) return e.what;
  return `${title.split(/[:(,]/)[0]!.trim()}${e.what.slice(title.length)}`;
}
