import { Hono } from 'hono';
import { keepPicture, narrowed, sha256Of } from '../../shopkeep/index.js';
import type { Store } from '../../store/index.js';
import { atMost, megabyte } from '../body.js';
import { ApiError, notFound } from '../error.js';

const largest = 25 * megabyte;
const hash = ':sha256{[0-9a-f]{64}}';
/** The name is the hash of the content: what a name stands for never changes. */
const forEver = 'private, max-age=31536000, immutable';

export function pictureRoutes(store: Store): Hono {
  const app = new Hono();
  app.put(`/${hash}`, atMost(largest, 'A picture'), async (c) => {
    const sha256 = c.req.param('sha256');
    const bytes = new Uint8Array(await c.req.arrayBuffer());
    requireHash(sha256, bytes);
    return c.json(await keepPicture(store, bytes));
  });
  app.get(`/${hash}`, async (c) => {
    const width = readWidth(c.req.query('width'));
    const picture = await store.picture(c.req.param('sha256'));
    if (!picture) throw notFound('This picture is not in the shop’s store.');
    const narrow = width !== undefined;
    const bytes = narrow ? await narrowed(picture.bytes, width) : new Uint8Array(picture.bytes);
    const mime = narrow ? 'image/webp' : picture.mime;
    return c.body(bytes, 200, { 'Content-Type': mime, 'Cache-Control': forEver });
  });
  app.all('/*', () => {
    throw notFound('A picture’s address ends in its SHA-256: 64 characters out of 0-9 and a-f.');
  });
  return app;
}

function requireHash(sha256: string, bytes: Uint8Array): void {
  if (sha256Of(bytes) === sha256) return;
  throw new ApiError(
    422,
    'bad-picture',
    'The picture did not arrive as it was sent (its SHA-256 differs). Send it again; nothing was stored.',
    'sha256',
  );
}

const widths = { least: 16, most: 4096 };

function readWidth(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const width = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  if (width >= widths.least && width <= widths.most) return width;
  const range = `a whole number from ${widths.least} to ${widths.most}`;
  throw new ApiError(422, 'bad-request', `width: “${text}” is not ${range}.`, 'width');
}
