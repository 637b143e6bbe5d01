import { catalogOf, foldShop, type Shop, shopLog } from '../job/index.js';
import type { Store } from '../store/index.js';

interface ShopNow {
  readonly shop: Shop;
  /** the program's, with the shop's packs on top */
  readonly catalog: ReturnType<typeof catalogOf>;
}

const kept = new WeakMap<Store, { readonly last: number; readonly now: ShopNow }>();

/** The shop as its log stands, and the catalog that it computes with; folded again only after it was written to. */
export async function shopNow(store: Store): Promise<ShopNow> {
  const last = (await store.span(shopLog))?.last ?? 0;
  const known = kept.get(store);
  if (known?.last === last) return known.now;
  const shop = foldShop(await store.entries(shopLog));
  const now = {
    shop,
    get catalog() {
      return catalogOf(shop); // made when it is first asked for: that takes a fifth of a second
    },
  };
  kept.set(store, { last, now });
  return now;
}
