import { foldShop, type Shop, shopLog } from '../job/index.js';
import type { Store } from '../store/index.js';

const kept = new WeakMap<Store, { readonly last: number; readonly shop: Shop }>();

/** The shop as its log stands; folded again only after it was written to. */
export async function shopFolded(store: Store): Promise<Shop> {
  const last = (await store.span(shopLog))?.last ?? 0;
  const known = kept.get(store);
  if (known?.last === last) return known.shop;
  const shop = foldShop(await store.entries(shopLog));
  kept.set(store, { last, shop });
  return shop;
}
