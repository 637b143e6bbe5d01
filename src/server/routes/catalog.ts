import { createHash } from 'node:crypto';
import { Hono } from 'hono';
import type { Catalog } from '../../catalog/index.js';
import { shopNow } from '../../shopkeep/index.js';
import type { Parts } from '../parts.js';

/** Which catalog this shop computes with; a page compares it with its own copy. */
export function catalogRoutes({ store, version }: Parts): Hono {
  const app = new Hono();
  let told: { readonly catalog: Catalog; readonly hash: string } | undefined;
  app.get('/', async (c) => {
    const { catalog } = await shopNow(store);
    if (told?.catalog !== catalog) told = { catalog, hash: hashOf(catalog) };
    return c.json({ version, hash: told.hash });
  });
  return app;
}

const hashOf = (catalog: Catalog): string =>
  createHash('sha256').update(JSON.stringify(catalog)).digest('hex');
