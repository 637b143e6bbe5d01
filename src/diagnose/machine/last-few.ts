import type { Catalog } from '../../catalog/index.js';

/**
 * Gives again what was made of the last few questions, told apart by their text. The one asked longest ago goes first.
 *
 * @param most how many are kept, by catalog
 */
export function lastFew<T>(most: number): (catalog: Catalog, text: string, make: () => T) => T {
  const kept = new WeakMap<Catalog, Map<string, T>>();
  return (catalog, text, make) => {
    const few = kept.get(catalog) ?? new Map<string, T>();
    kept.set(catalog, few);
    const answer = few.get(text) ?? make();
    few.delete(text);
    few.set(text, answer);
    const [oldest] = few.keys();
    if (few.size > most) few.delete(oldest!);
    return answer;
  };
}
