import { open } from 'node:fs/promises';
import type { BundleSource } from '../record/index.js';
import { ShopkeepError } from './error.js';

/** A bundle that lies on the disk and is read from there piece by piece; `close` lets go of it. */
export async function fileSource(
  file: string,
): Promise<BundleSource & { readonly close: () => Promise<void> }> {
  const handle = await open(file, 'r');
  try {
    const found = await handle.stat();
    if (!found.isFile()) throw new ShopkeepError('bad-file', `${file} is not a file, and a bundle is one.`);
    return {
      size: found.size,
      slice: async (from, to) => {
        const bytes = new Uint8Array(Math.max(0, Math.min(to, found.size) - from));
        const { bytesRead } = await handle.read(bytes, 0, bytes.length, from);
        return bytes.subarray(0, bytesRead);
      },
      close: () => handle.close(),
    };
  } catch (error) {
    await handle.close();
    throw error;
  }
}
