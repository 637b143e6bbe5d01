import type { MiddlewareHandler } from 'hono';
import { secureHeaders } from 'hono/secure-headers';

/** For every answer. A page may frame a record of its own. No Strict-Transport-Security: loopback speaks plain HTTP and must go on doing so. */
export const everywhere = secureHeaders({
  referrerPolicy: 'no-referrer',
  strictTransportSecurity: false,
  xFrameOptions: 'SAMEORIGIN',
});

/** Content Security Policy Level 3: an answer that is no page may load, run and send nothing, whatever a browser takes it for. */
export const nothingRuns = "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/** The browser's own viewer of a printed record is an object with styles of its own. */
const printed =
  "default-src 'none'; object-src 'self'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'self'";

/** A small page of our own with its style in it, a picture or two and one form. */
export const smallPage =
  "default-src 'none'; style-src 'unsafe-inline'; img-src 'self' data:; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

/**
 * The application: only what this server sends may run or be fetched; styles may stand inline because charts and drawings
 * set them; the solver of the cheapest basket is WebAssembly; no text is ever run. `reach` are other addresses of this
 * bench, where a page sends what it wrote when its own address is gone.
 */
export const applicationPolicy = (reach: readonly string[]): string =>
  [
    "default-src 'self'",
    "script-src 'self' 'wasm-unsafe-eval'",
    "img-src 'self' blob: data:",
    "media-src 'self' blob:",
    "style-src 'self' 'unsafe-inline'",
    ["connect-src 'self'", ...reach].join(' '),
    "object-src 'none'",
    "base-uri 'self'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');

const policyName = 'Content-Security-Policy';

/** No answer goes out without a policy: what names none of its own may do nothing. */
export const guarded: MiddlewareHandler = async (c, next) => {
  await next();
  const { headers } = c.res;
  if (headers.has(policyName)) return;
  headers.set(policyName, headers.get('Content-Type') === 'application/pdf' ? printed : nothingRuns);
};

export const withPolicy =
  (policy: string): MiddlewareHandler =>
  async (c, next) => {
    await next();
    c.res.headers.set(policyName, policy);
  };
