import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { serveStatic } from '@hono/node-server/serve-static';
import { Hono } from 'hono';
import type { DoorEnv } from './door.js';
import { ApiError, notFound } from './error.js';
import { applicationPolicy, withPolicy } from './headers.js';

/** Names under this folder carry a hash of their content, so that a name never changes its meaning. */
const hashedAssets = '/assets/';

/**
 * The built pages, in the form that the build compressed beside each file where the browser takes it. Any path that is not a file opens the application, which reads the path itself.
 */
export function pages(webRoot: string): Hono<DoorEnv> {
  const app = new Hono<DoorEnv>();
  app.use((c, next) => {
    const port = c.env.incoming.socket.localPort;
    const reach = c.get('visitor').place === 'this computer' ? [] : [`http://*:${port}`, `https://*:${port}`];
    return withPolicy(applicationPolicy(reach))(c, next);
  });
  app.use(async (c, next) => {
    await next();
    const hashed = c.req.path.startsWith(hashedAssets) && c.res.ok;
    c.res.headers.set('Cache-Control', hashed ? 'public, max-age=31536000, immutable' : 'no-cache');
  });
  if (!existsSync(join(webRoot, 'index.html'))) {
    return app.get('*', () => {
      throw notBuilt();
    });
  }
  app.get('*', serveStatic({ root: webRoot, precompressed: true }));
  app.get('*', async (c, next) => {
    if (/\.[a-z0-9]+$/i.test(c.req.path)) throw notFound(`There is no file ${c.req.path} here.`);
    return (
      (await serveStatic({ root: webRoot, path: 'index.html', precompressed: true })(c, next)) ?? c.notFound()
    );
  });
  return app;
}

function notBuilt(): ApiError {
  return new ApiError(
    503,
    'not-built',
    'The pages are not built yet. Run “npm run build” in Wristpin’s folder, then load this page again.',
  );
}
