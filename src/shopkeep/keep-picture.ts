import { createHash } from 'node:crypto';
import type { Store } from '../store/index.js';
import { inspectPicture, type PictureFacts } from './picture.js';
import { inspectSound, isSound, type SoundFacts } from './sound.js';

export function sha256Of(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** What lies beside the log: a picture, or the sound of a spoken note. */
export type KeptFacts = PictureFacts | SoundFacts;

/** Looks into the bytes, whatever the file is called. @throws ShopkeepError when they are neither a picture nor a spoken note */
export async function inspectKept(bytes: Uint8Array): Promise<KeptFacts> {
  return isSound(bytes) ? inspectSound(bytes) : inspectPicture(bytes);
}

/** Looks into the bytes and keeps them under their hash. @throws ShopkeepError when they are none that is kept */
export async function keepPicture(
  store: Store,
  bytes: Uint8Array,
): Promise<KeptFacts & { readonly sha256: string }> {
  const sha256 = sha256Of(bytes);
  const facts = await inspectKept(bytes);
  await store.putPicture({ sha256, ...facts }, bytes);
  return { sha256, ...facts };
}
