import { byId, type Catalog, type Check } from '../../catalog/index.js';
import type { EngineNow } from './bars.js';

/** Something that is not known of this engine and whose answer would change what a check says. */
export interface OpenQuestion {
  /** variant: answered yes or no. piece: there or not. */
  readonly kind: 'variant' | 'piece';
  readonly id: string;
  /** "Is there an automatic compression release?", "Fuel tap: is there one on this engine?" */
  readonly asks: string;
}

/** What to ask at the moment a check is made, and not before. */
export function questionsAt(
  catalog: Catalog,
  { facts, pieces }: Pick<EngineNow, 'facts' | 'pieces'>,
  check: Pick<Check, 'outcomes' | 'when'>,
): OpenQuestion[] {
  const variants = byId(catalog.variants);
  const named = new Set(check.outcomes.flatMap((o) => o.usualWith ?? []));
  const asked = [...named].flatMap((id): OpenQuestion[] => {
    const variant = variants.get(id);
    const here = variant?.architectures.some((a) => a === facts.architecture) ?? false;
    return variant && here && facts.variants?.[id] === undefined
      ? [{ kind: 'variant', id, asks: variant.asks }]
      : [];
  });
  const doubted = (check.when?.pieces ?? []).flatMap((id): OpenQuestion[] => {
    const piece = pieces.get(id);
    return facts.architecture !== undefined && piece?.fitted === 'not known'
      ? [{ kind: 'piece', id, asks: `${piece.name}: is there one on this engine?` }]
      : [];
  });
  return [...asked, ...doubted];
}
