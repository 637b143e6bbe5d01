import { builtInCatalog, type Catalog, type WithPacks } from '../catalog/index.js';
import { catalogOf, type PackText, type Shop, shopLog } from '../job/index.js';
import type { Store } from '../store/index.js';
import { TooMuch } from './reading/reading.js';
import { shopFolded } from './shop-folded.js';

interface ShopNow {
  readonly shop: Shop;
  /** the program's, with the shop's packs on top */
  readonly catalog: Catalog;
}

type PackReader = (packs: readonly PackText[]) => Promise<WithPacks>;

const kept = new WeakMap<Store, { readonly last: number; readonly now: Promise<ShopNow> }>();
const readers = new WeakMap<Store, PackReader>();

/** From now on the packs of this store are read so; else where they are asked for, on the thread that asks. */
export function readPacksBy(store: Store, read: PackReader): void {
  readers.set(store, remembering(read));
}

export const packReader = (store: Store): PackReader | undefined => readers.get(store);

/** The shop as its log stands, and the catalog that it computes with; folded again only after it was written to. */
export async function shopNow(store: Store): Promise<ShopNow> {
  const last = (await store.span(shopLog))?.last ?? 0;
  const known = kept.get(store);
  if (known?.last === last) return known.now;
  const now = readShop(store);
  kept.set(store, { last, now });
  now.catch(() => {
    if (kept.get(store)?.now === now) kept.delete(store);
  });
  return now;
}

async function readShop(store: Store): Promise<ShopNow> {
  const shop = await shopFolded(store);
  const read = readers.get(store);
  if (read && shop.packs.length > 0) return { shop, catalog: await readOr(read, shop) };
  return {
    shop,
    get catalog() {
      return catalogOf(shop); // made when it is first asked for: that takes a fifth of a second
    },
  };
}

/** Packs that an earlier program or another server let in, and that nobody can read in good time, are left out. */
async function readOr(read: PackReader, shop: Shop): Promise<Catalog> {
  try {
    return (await read(shop.packs)).catalog;
  } catch (error) {
    if (error instanceof TooMuch) return builtInCatalog();
    throw error;
  }
}

/** The same texts are not read twice: what was read before they were kept stands after it. */
function remembering(read: PackReader): PackReader {
  let last: { readonly texts: string; readonly made: Promise<WithPacks> } | undefined;
  return (packs) => {
    const texts = JSON.stringify(packs.map(({ pack, text }) => [pack, text]));
    if (last?.texts !== texts) last = { texts, made: read(packs) };
    return last.made;
  };
}
