import { createHash } from 'node:crypto';
import type { Selectable } from 'kysely';
import type { Backend } from './backend.js';
import { pictureDigest } from './digest.js';
import { nothingStored, StoreError } from './error.js';
import type { Picture, PictureFacts } from './store.js';
import type { ChunkRow, Db, PictureRow } from './tables.js';

/** Small enough that a chunk is never a burden on either database's page or wire buffer. */
export const chunkBytes = 256 * 1024;

export async function putPicture(
  backend: Backend,
  facts: PictureFacts,
  bytes: Uint8Array,
): Promise<{ stored: boolean }> {
  const checked = { ...checkPicture(facts, bytes), received: backend.now() };
  const row = { ...checked, digest: pictureDigest(checked) };
  return backend.write(async ({ tx }) => {
    const kept = await pictureRow(tx, row.sha256);
    if (kept === undefined) {
      // the picture before its chunks: the chunks refer to it
      await tx.insertInto('pictures').values(row).execute();
      for (const chunk of chunksOf(row.sha256, bytes))
        await tx.insertInto('picture_chunks').values(chunk).execute();
    } else refuseOtherFacts(kept, row);
    return { stored: kept === undefined };
  });
}

export async function picture(db: Db, sha256: string): Promise<Picture | undefined> {
  const row = await pictureRow(db, sha256);
  if (row === undefined) return undefined;
  const bytes = joined(await chunkRows(db, sha256));
  if (bytes.length !== row.bytes || hashOf(bytes) !== sha256) throw damaged(sha256);
  return { mime: row.mime, width: row.width, height: row.height, bytes };
}

export async function hasPicture(db: Db, sha256: string): Promise<boolean> {
  return (await pictureRow(db, sha256)) !== undefined;
}

export async function chunkRows(db: Db, sha256: string): Promise<ChunkRow[]> {
  return db.selectFrom('picture_chunks').selectAll().where('sha256', '=', sha256).orderBy('n').execute();
}

export function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** A plain Uint8Array of its own: a Buffer would share memory with the driver's pool. */
export function joined(chunks: readonly ChunkRow[]): Uint8Array {
  const whole = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.data.length, 0));
  let at = 0;
  for (const { data } of chunks) {
    whole.set(data, at);
    at += data.length;
  }
  return whole;
}

async function pictureRow(db: Db, sha256: string): Promise<Selectable<PictureRow> | undefined> {
  return db.selectFrom('pictures').selectAll().where('sha256', '=', sha256).executeTakeFirst();
}

function* chunksOf(sha256: string, bytes: Uint8Array): Generator<ChunkRow> {
  const whole = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let n = 0; n * chunkBytes < whole.length; n++) {
    yield { sha256, n, data: whole.subarray(n * chunkBytes, (n + 1) * chunkBytes) };
  }
}

/** The sound of a spoken note lies with the pictures and goes every way that they go; it has no width and no height. */
export const soundMime = 'audio/wav';
const mimes = ['image/jpeg', 'image/png', 'image/webp', soundMime];
const greatest = 2 ** 31 - 1;

function checkPicture(facts: PictureFacts, bytes: Uint8Array): Omit<PictureRow, 'received' | 'digest'> {
  const { sha256, mime, width, height } = facts;
  if (!mimes.includes(mime)) throw bad(sha256, `its type "${mime}" is none of ${mimes.join(', ')}`);
  for (const [name, value] of Object.entries({ width, height, bytes: bytes.length })) {
    const least = mime === soundMime && name !== 'bytes' ? 0 : 1;
    const most = least === 0 ? 0 : greatest;
    if (!Number.isInteger(value) || value < least || value > most) {
      throw bad(sha256, `its ${name} is ${value}; a whole number from ${least} to ${most} is possible`);
    }
  }
  const hash = hashOf(bytes);
  if (hash !== sha256) throw bad(sha256, `the ${bytes.length} bytes that arrived hash to ${hash}`);
  return { sha256, mime, width, height, bytes: bytes.length };
}

function refuseOtherFacts(kept: PictureFacts, sent: PictureFacts): void {
  for (const fact of ['mime', 'width', 'height'] as const) {
    if (kept[fact] === sent[fact]) continue;
    throw new StoreError(
      'conflict',
      `Picture ${sent.sha256} is already kept with ${fact} ${kept[fact]}, and now comes with ${sent[fact]}.`,
      nothingStored,
      'Refer to the picture as it is kept.',
    );
  }
}

function bad(sha256: string, why: string): StoreError {
  return new StoreError(
    'bad-picture',
    `Picture ${sha256}: ${why}.`,
    nothingStored,
    'Send the picture again from the device.',
  );
}

function damaged(sha256: string): StoreError {
  return new StoreError(
    'corrupt',
    `Picture ${sha256} is damaged: what is kept does not hash to its name.`,
    'The entries and the other pictures are not touched by this.',
    'Run the verification, keep this log as it is, and restore the last backup into a new one.',
  );
}
