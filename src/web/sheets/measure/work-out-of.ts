import type { Catalog } from '../../../catalog/index.js';
import type { EngineNow } from '../../../diagnose/index.js';

interface Question {
  readonly worksheet: string;
  readonly words: string;
}

/**
 * What can be worked out of the pieces that this machine has, or may have, each worksheet once. While nobody has said
 * what the engine drives it may have any: then only what was seen counts.
 */
export function workOutOf(
  { components }: Catalog,
  { pieces, facts }: Pick<EngineNow, 'pieces' | 'facts'>,
): Question[] {
  const mayHave = facts.use === undefined ? ['fitted'] : ['fitted', 'not known'];
  const all = components
    .filter(({ id }) => mayHave.includes(pieces.get(id)?.fitted ?? 'not known'))
    .flatMap(({ workOut = [] }) => workOut);
  return [...new Map(all.map((each) => [each.worksheet, each])).values()];
}
