import { createHash } from 'node:crypto';
import { Hono } from 'hono';
import type { Parts } from '../parts.js';

/** Which catalog this server computes with; a page compares it with its own copy. */
export function catalogRoutes({ catalog, version }: Parts): Hono {
  const hash = createHash('sha256').update(JSON.stringify(catalog)).digest('hex');
  const app = new Hono();
  app.get('/', (c) => c.json({ version, hash }));
  return app;
}
