import { catalogOf, foldShop, type Shop, shopLog } from '../job/index.js';
import type { Store } from '../store/index.js';

/** The shop as its log stands, and the catalog that it computes with: the program's, with the shop's packs on top. */
export async function shopNow(store: Store): Promise<{ shop: Shop; catalog: ReturnType<typeof catalogOf> }> {
  const shop = foldShop(await store.entries(shopLog));
  return { shop, catalog: catalogOf(shop) };
}
