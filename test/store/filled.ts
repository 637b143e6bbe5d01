import type { Store } from '../../src/store/index.js';
import { chunkBytes } from '../../src/store/pictures.js';
import { entry, factsOf, opening, photograph, pictureBytes } from './samples.js';

export const largePicture = pictureBytes(3 * chunkBytes - 5, 3);
const smallPicture = pictureBytes(2000, 4);

/** 607 entries of two jobs and the shop, two pictures: more than one page of every loop in the store. */
export async function fill(store: Store): Promise<void> {
  const [large, small] = [factsOf(largePicture), factsOf(smallPicture)];
  await store.putPicture(large, largePicture);
  await store.putPicture({ ...small, mime: 'image/png', width: 40, height: 30 }, smallPicture);
  await store.append([opening('j1'), ...Array.from({ length: 600 }, (_, i) => entry(`n${i}`, 'j1'))]);
  await store.append([
    opening('j2'),
    photograph('p-large', 'j2', large.sha256),
    photograph('p-small', 'j2', small.sha256),
  ]);
  await store.append([entry('s1', 'shop', 'setting', { key: 'shop-name', value: 'Werkstatt Süd ⚙' })]);
  await store.append([
    entry('odd', 'j2', 'kind-of-tomorrow', { 'any thing': [1, null, true, { deep: 'Ω' }] }),
  ]);
  await store.append([entry('last', 'shop')]);
}

/** Everything that can be asked of a log. */
export async function contents(store: Store): Promise<unknown> {
  const pictures = await Promise.all([largePicture, smallPicture].map((bytes) => pictureIn(store, bytes)));
  return { log: await store.since(0), jobs: await store.jobs(), head: await store.head(), pictures };
}

/** Its bytes by their hash: a comparison one by one of a million takes seconds. */
async function pictureIn(store: Store, bytes: Uint8Array): Promise<unknown> {
  const kept = await store.picture(factsOf(bytes).sha256);
  return kept && { ...kept, bytes: factsOf(kept.bytes).sha256 };
}
