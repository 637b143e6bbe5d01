import { z } from 'zod';
import { byId, type Catalog } from '../../catalog/index.js';
import { saidOfAnyCheck } from '../../diagnose/index.js';

/** A case told in a file: a machine and what was seen of it, in the catalog's ids. */
const yesNo = z.enum(['yes', 'no', 'unknown']);
const facts = z.strictObject({
  architecture: z.enum(['side-valve', 'overhead-valve', 'two-stroke', 'unknown']).optional(),
  ignition: z.enum(['points', 'solid-state', 'unknown']).optional(),
  fuelSystem: z.enum(['float-bowl', 'diaphragm', 'unknown']).optional(),
  shaft: z.enum(['vertical', 'horizontal', 'unknown']).optional(),
  governor: z.enum(['air-vane', 'flyweight', 'none', 'unknown']).optional(),
  starter: z.enum(['rope', 'electric', 'unknown']).optional(),
  use: z.string().optional(),
  alsoUses: z.array(z.string()).optional(),
  storedMonths: z.number().min(0).max(1200).optional(),
  fuelLeftIn: yesNo.optional(),
  struck: yesNo.optional(),
  tipped: yesNo.optional(),
  wrongFuel: yesNo.optional(),
  variants: z.record(z.string(), z.boolean()).optional(),
});

const seen = z.strictObject({
  check: z.string(),
  outcomes: z.array(z.string()).optional(),
  /** a number read: its check says what it means on such an engine */
  value: z.union([z.number(), z.string()]).optional(),
  doubtful: z.boolean().optional(),
  words: z.string().optional(),
});

const choices = [
  'present',
  'absent',
  'repair',
  'repaired',
  'replace',
  'reuse',
  'declined',
  'excluded',
] as const;

const schema = z.strictObject({
  facts,
  variants: z.record(z.string(), z.boolean()).optional(),
  complaints: z.array(z.string()).optional(),
  runs: z.enum(['yes', 'no']).optional(),
  off: z.array(z.string()).optional(),
  seen: z.array(seen).default([]),
  decided: z.array(z.strictObject({ fault: z.string(), choice: z.string() })).optional(),
  /** the shop's, an hour */
  rate: z.number().min(0).max(100_000).optional(),
});

export type Case = z.infer<typeof schema>;
export const caseChoices = choices;

/** What is wrong in a case: where, and why. */
export class CaseError extends Error {
  override readonly name = 'CaseError';
  constructor(
    readonly code: 'shape' | 'unknown' | 'impossible',
    readonly place: string,
    words: string,
  ) {
    super(`${place}: ${words}`);
  }
}

/** The case, or a CaseError that names the first place where it is wrong. */
export function readCase(catalog: Catalog, given: unknown): Case {
  const parsed = schema.safeParse(given);
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    const place = issue!.path.reduce<string>(
      (at, p) => (typeof p === 'number' ? `${at}[${p}]` : at ? `${at}.${String(p)}` : String(p)),
      '',
    );
    throw new CaseError('shape', place || 'case', issue!.message);
  }
  checkIds(catalog, parsed.data);
  return parsed.data;
}

function checkIds(catalog: Catalog, told: Case): void {
  const known = (list: readonly { readonly id: string }[], id: string, place: string, what: string): void => {
    if (!list.some((x) => x.id === id))
      throw new CaseError('unknown', place, `there is no ${what} “${id}” in the catalog`);
  };
  const uses = [told.facts.use ?? 'unknown', ...(told.facts.alsoUses ?? [])];
  for (const id of uses.filter((each) => each !== 'unknown')) known(catalog.uses, id, 'facts.use', 'use');
  for (const [id] of Object.entries({ ...told.facts.variants, ...told.variants }))
    known(catalog.variants, id, `variants.${id}`, 'variant');
  for (const [i, id] of (told.complaints ?? []).entries())
    known(catalog.complaints, id, `complaints[${i}]`, 'complaint');
  for (const [i, id] of (told.off ?? []).entries()) known(catalog.components, id, `off[${i}]`, 'component');
  for (const [i, { fault }] of (told.decided ?? []).entries())
    known(catalog.faults, fault, `decided[${i}].fault`, 'fault');
  const checks = byId(catalog.checks);
  for (const [i, { check, outcomes = [] }] of told.seen.entries()) {
    known(catalog.checks, check, `seen[${i}].check`, 'check');
    const all = checks.get(check)!.outcomes;
    for (const [k, outcome] of outcomes.entries()) {
      const place = `seen[${i}].outcomes[${k}]`;
      if (saidOfAnyCheck.includes(outcome) || all.some((o) => o.id === outcome || o.words === outcome))
        continue;
      throw new CaseError(
        'unknown',
        place,
        `“${check}” has no outcome “${outcome}”; it has ${all.map((o) => o.id).join(', ')}, ${saidOfAnyCheck.join(', ')}`,
      );
    }
  }
}
