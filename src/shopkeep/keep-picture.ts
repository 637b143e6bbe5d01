import { createHash } from 'node:crypto';
import type { Store } from '../store/index.js';
import { inspectPicture, type PictureFacts } from './picture.js';

export function sha256Of(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** Looks into the bytes and keeps them under their hash. @throws ShopkeepError when they are no picture */
export async function keepPicture(
  store: Store,
  bytes: Uint8Array,
): Promise<PictureFacts & { readonly sha256: string }> {
  const sha256 = sha256Of(bytes);
  const facts = await inspectPicture(bytes);
  await store.putPicture({ sha256, ...facts }, bytes);
  return { sha256, ...facts };
}
