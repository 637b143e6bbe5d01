import type { When } from './catalog.js';

/** What is known of one machine; what is left out or "unknown" is not known. The log's intake has these fields. */
export interface Facts {
  readonly architecture?: string | undefined;
  readonly ignition?: string | undefined;
  readonly fuelSystem?: string | undefined;
  readonly shaft?: string | undefined;
  readonly governor?: string | undefined;
  readonly starter?: string | undefined;
  readonly use?: string | undefined;
  /** what else it drives: one machine may carry several */
  readonly alsoUses?: readonly string[] | undefined;
  readonly storedMonths?: number | undefined;
  readonly struck?: string | undefined;
  readonly tipped?: string | undefined;
  readonly wrongFuel?: string | undefined;
  /** variant id → seen to hold or not */
  readonly variants?: Readonly<Record<string, boolean>> | undefined;
  /** component id → fitted or not; left out while it is not known */
  readonly pieces?: Readonly<Record<string, boolean>> | undefined;
}

export type Applies = 'yes' | 'no' | 'unknown';

/** Whether a condition holds for a machine. "no" as soon as one part fails; "unknown" while a part is not known. */
export function applies(condition: When | undefined, facts: Facts): Applies {
  if (!condition) return 'yes';
  const answers = Object.entries(condition).map(([part, wanted]) => answer(part, wanted, facts));
  if (answers.includes('no')) return 'no';
  return answers.includes('unknown') ? 'unknown' : 'yes';
}

function answer(part: string, wanted: unknown, facts: Facts): Applies {
  if (part === 'variants') return variantsHold(wanted as readonly string[], facts, true);
  if (part === 'notVariants') return variantsHold(wanted as readonly string[], facts, false);
  if (part === 'pieces') return allFitted(wanted as readonly string[], facts);
  if (part === 'anyPiece') return anyFitted(wanted as readonly string[], facts);
  if (part === 'storedMonthsAtLeast') {
    return facts.storedMonths === undefined ? 'unknown' : yesNo(facts.storedMonths >= (wanted as number));
  }
  if (part === 'use') return drives(wanted as readonly string[], facts);
  const known = facts[part as keyof Facts] as string | undefined;
  if (known === undefined || known === 'unknown') return 'unknown';
  return yesNo(Array.isArray(wanted) ? wanted.includes(known) : wanted === known);
}

/** What else it drives makes nothing of it untrue; while the chief use is not known others may be told. */
function drives(wanted: readonly string[], { use, alsoUses = [] }: Facts): Applies {
  if (alsoUses.some((each) => wanted.includes(each))) return 'yes';
  return use === undefined || use === 'unknown' ? 'unknown' : yesNo(wanted.includes(use));
}

function variantsHold(ids: readonly string[], facts: Facts, wanted: boolean): Applies {
  const seen = ids.map((variant) => facts.variants?.[variant]);
  if (seen.some((value) => value === !wanted)) return 'no';
  return seen.includes(undefined) ? 'unknown' : 'yes';
}

function allFitted(ids: readonly string[], facts: Facts): Applies {
  const fitted = ids.map((id) => facts.pieces?.[id]);
  if (fitted.includes(false)) return 'no';
  return fitted.includes(undefined) ? 'unknown' : 'yes';
}

function anyFitted(ids: readonly string[], facts: Facts): Applies {
  const fitted = ids.map((id) => facts.pieces?.[id]);
  if (fitted.includes(true)) return 'yes';
  return fitted.includes(undefined) ? 'unknown' : 'no';
}

const yesNo = (value: boolean): Applies => (value ? 'yes' : 'no');
