import type { SectionName } from '../schema/sections.js';
import type { Valid } from './check-references.js';

/** Knowledge that is shown only where the pieces it belongs to are fitted: each entry must name one at least. */
const hang: readonly SectionName[] = [
  'faults',
  'checks',
  'gates',
  'runUp',
  'acceptance',
  'nextDue',
  'cleanings',
  'consumables',
  'measurements',
  'specs',
];

/** Where an entry may name the pieces that it hangs on. */
interface Named {
  readonly when?: { readonly pieces?: readonly string[]; readonly anyPiece?: readonly string[] };
  readonly component?: string;
  readonly components?: readonly string[];
  readonly after?: readonly string[];
  readonly agents?: readonly string[];
}

/** Entries that hang on nothing: they would be shown on every engine, whatever it has. */
export function hangingOnNothing(
  entries: Valid,
): { readonly section: SectionName; readonly key: string; readonly reason: string }[] {
  return hang.flatMap((section) =>
    [...(entries.get(section) ?? [])]
      .filter(([, entry]) => !hangs(entry as Named))
      .map(([key]) => ({
        section,
        key,
        reason:
          'it hangs on no piece: say in "when" which "pieces" (or "anyPiece") an engine must have for it',
      })),
  );
}

const hangs = ({ when, component, components, after, agents }: Named): boolean =>
  [when?.pieces, when?.anyPiece, components, after, component === undefined ? [] : [component], agents].some(
    (list) => list !== undefined && list.length > 0,
  );
