import { Hono } from 'hono';
import type { KeepingWatch } from '../keeping.js';
import type { Parts } from '../parts.js';

/** How the shop's store stands: whether it keeps what is written, and when it was last backed up. */
export function storeRoutes({ store, storeKind }: Parts, keeping: KeepingWatch): Hono {
  const app = new Hono();
  app.get('/', async (c) => {
    const now = await keeping.look();
    const backup = now.ok ? await store.lastBackup() : undefined;
    return c.json({ kind: storeKind, keeping: now, backup: backup ?? null });
  });
  return app;
}
