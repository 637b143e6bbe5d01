import { Hono } from 'hono';
import { keepPicture, narrowed, sha256Of } from '../../shopkeep/index.js';
import { type Store, StoreError } from '../../store/index.js';
import { atMost, megabyte } from '../body.js';
import { ApiError, notFound } from '../error.js';
import { Uploads } from '../uploads.js';

const largest = 25 * megabyte;
const hash = ':sha256{[0-9a-f]{64}}';
/** The name is the hash of the content: what a name stands for never changes. */
const forEver = 'private, max-age=31536000, immutable';

export function pictureRoutes(store: Store, clock: () => Date): Hono {
  const app = new Hono();
  app.route('/', partRoutes(store, new Uploads(clock)));
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
    if (width !== undefined && picture.width === 0)
      throw new ApiError(422, 'bad-request', 'This is the sound of a spoken note: it has no width.', 'width');
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

const largestPart = megabyte;

/**
 * A picture in parts, so that a weak network loses a part and not the whole of it. `whole` is the store's word: said only
 * after the picture is on its disk. Until then `have` says from where on it is wanted.
 */
function partRoutes(store: Store, uploads: Uploads): Hono {
  const app = new Hono();
  app.get(`/${hash}/parts`, async (c) => {
    const sha256 = c.req.param('sha256');
    const whole = await store.hasPicture(sha256);
    return c.json({ whole, have: whole ? 0 : uploads.have(sha256) });
  });
  const keepWhole = async (sha256: string, bytes: Uint8Array) => {
    try {
      if (sha256Of(bytes) !== sha256) throw damagedOnTheWay();
      await keepPicture(store, bytes);
      uploads.done(sha256);
    } catch (error) {
      const canWait =
        error instanceof StoreError && error.code !== 'bad-picture' && error.code !== 'conflict';
      if (!canWait) uploads.done(sha256);
      throw error;
    }
  };
  app.put(`/${hash}/parts`, atMost(largestPart, 'A part of a picture'), async (c) => {
    const sha256 = c.req.param('sha256');
    const part = new Uint8Array(await c.req.arrayBuffer()); // read before anything is refused: the line is then free again
    const of = readBytes(c.req.query('of'), 'of', 1);
    const at = readBytes(c.req.query('at'), 'at', 0);
    if (of > largest) throw tooLarge();
    const taken = uploads.take(sha256, at, of, part);
    if (taken === undefined) throw noRoom();
    if (taken.whole === undefined) return c.json({ whole: false, have: taken.have });
    await keepWhole(sha256, taken.whole);
    return c.json({ whole: true, have: of });
  });
  return app;
}

function readBytes(text: string | undefined, field: string, least: number): number {
  const count = text !== undefined && /^\d{1,9}$/.test(text) ? Number(text) : Number.NaN;
  if (count >= least) return count;
  throw new ApiError(
    422,
    'bad-request',
    `${field}: “${text}” is not a whole number from ${least} on.`,
    field,
  );
}

function tooLarge(): ApiError {
  const most = `${largest / megabyte} MB`;
  return new ApiError(
    413,
    'too-large',
    `A picture may be at most ${most}; this is more. Nothing was stored.`,
  );
}

function damagedOnTheWay(): ApiError {
  const message =
    'The picture did not arrive as it was sent (its SHA-256 differs). It is wanted from its beginning.';
  return new ApiError(409, 'damaged-on-the-way', message);
}

function noRoom(): ApiError {
  return new ApiError(503, 'busy', 'Too many pictures are on their way at once. This one is taken later.');
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
