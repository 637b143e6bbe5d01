import { byId, type Catalog } from '../../../catalog/index.js';

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

/** "could-not-be-done" → "could not be done": how an outcome of any check is written and shown. */
export const plainId = (id: string): string => id.replaceAll('-', ' ');
