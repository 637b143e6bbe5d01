import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { serveStatic } from '@hono/node-server/serve-static';
import { Hono } from 'hono';
import { secureHeaders } from 'hono/secure-headers';
import type { DoorEnv } from './door.js';
import { ApiError, notFound } from './error.js';

/** Names under this folder carry a hash of their content, so that a name never changes its meaning. */
const hashedAssets = '/assets/';

/**
 * The built pages, in the form that the build compressed beside each file where the browser takes it. Any path that is not a file opens the application, which reads the path itself. Only what this
 * server sends may run or be fetched; styles may stand inline because charts and drawings set them.
 */
export function pages(webRoot: string): Hono<DoorEnv> {
  const app = new Hono<DoorEnv>();
  app.use(contentSecurity());
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

function contentSecurity() {
  return secureHeaders({
    ...everywhere,
    contentSecurityPolicy: {
      defaultSrc: ["'self'"],
      // the solver of the cheapest basket is WebAssembly; no text is ever run
      scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
      imgSrc: ["'self'", 'blob:', 'data:'],
      styleSrc: ["'self'", "'unsafe-inline'"],
      connectSrc: ["'self'"],
      objectSrc: ["'none'"],
      baseUri: ["'self'"],
      formAction: ["'self'"],
      frameAncestors: ["'none'"],
    },
  });
}

/** For every answer. A page may frame a record of its own. No Strict-Transport-Security: loopback speaks plain HTTP and must go on doing so. */
export const everywhere = {
  referrerPolicy: 'no-referrer',
  strictTransportSecurity: false,
  xFrameOptions: 'SAMEORIGIN',
} as const;

function notBuilt(): ApiError {
  return new ApiError(
    503,
    'not-built',
    'The pages are not built yet. Run “npm run build” in Wristpin’s folder, then load this page again.',
  );
}
