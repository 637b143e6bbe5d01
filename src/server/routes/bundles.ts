import { createWriteStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { type Context, Hono } from 'hono';
import { openImport, readBundleApart } from '../../shopkeep/index.js';
import { megabyte } from '../body.js';
import { ApiError } from '../error.js';
import type { Parts } from '../parts.js';

const largest = 256 * megabyte;
/** Each lies on the disk while it is read. */
const mostAtOnce = 2;

/**
 * Taking in a bundle. `?look` stores nothing and says what it would do; the call without it takes the jobs that are not
 * here yet, and of the others only what is named: `?into=JOB` for each job that may be added to, `?shop=yes` for the lines
 * of the shop itself.
 */
export function bundleRoutes(parts: Pick<Parts, 'store' | 'reader'>): Hono {
  const app = new Hono();
  let underWay = 0;
  app.post('/', async (c) => {
    if (underWay >= mostAtOnce) throw busy();
    underWay += 1;
    const folder = await mkdtemp(join(tmpdir(), 'wristpin-bundle-'));
    try {
      const file = join(folder, 'bundle.zip');
      await toDisk(c, file);
      return await answerFor(c, parts, file);
    } finally {
      underWay -= 1;
      await rm(folder, { recursive: true, force: true });
    }
  });
  return app;
}

async function answerFor(
  c: Context,
  { store, reader }: Pick<Parts, 'store' | 'reader'>,
  file: string,
): Promise<Response> {
  const bundle = await readBundleApart(await reader(), file);
  try {
    const { plan, take } = await openImport(store, bundle);
    if (c.req.query('look') !== undefined) return c.json(plan);
    const choices = { into: c.req.queries('into') ?? [], shop: c.req.query('shop') === 'yes' };
    const imported = await take(choices);
    return c.json({ ...imported, head: await store.head() });
  } finally {
    await bundle.end();
  }
}

async function toDisk(c: Context, file: string): Promise<void> {
  if (Number(c.req.header('content-length') ?? 0) > largest) throw tooLarge();
  let come = 0;
  const body = c.req.raw.body;
  await pipeline(
    body ? Readable.fromWeb(body as Parameters<typeof Readable.fromWeb>[0]) : Readable.from([]),
    async function* (pieces: AsyncIterable<Uint8Array>) {
      for await (const piece of pieces) {
        come += piece.length;
        if (come > largest) throw tooLarge();
        yield piece;
      }
    },
    createWriteStream(file),
  ).catch((error: NodeJS.ErrnoException) => {
    throw error.code === 'ENOSPC' ? noRoom() : error;
  });
}

function tooLarge(): ApiError {
  return new ApiError(
    413,
    'too-large',
    `A bundle may be at most ${largest / megabyte} MB; this is more. Nothing was stored.`,
  );
}

function noRoom(): ApiError {
  return new ApiError(
    507,
    'disk-full',
    'The bench computer’s disk has no room for this bundle. Nothing was stored. Make room, and send it again.',
  );
}

function busy(): ApiError {
  return new ApiError(
    429,
    'busy',
    `${mostAtOnce} bundles are being read already. Nothing was stored; send this one again in a moment.`,
  );
}
