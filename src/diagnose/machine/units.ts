import { applies, byId, type Catalog, type Check } from '../../catalog/index.js';
import type { MachineFacts } from './case.js';
import { repeatOf, withSuspects } from './differential.js';
import { spoilersOf } from './functions.js';
import { type Scale, scalesOf } from './scale.js';

/** Checks that read the same thing, so that their readings are not independent; most checks stand alone. */
export interface Unit {
  readonly id: string;
  readonly checks: readonly Check[];
  readonly scales: readonly Scale[];
  readonly faults: ReadonlySet<string>;
}

/** Kin of the catalog, and a check with its repeats. */
export function unitsFor(catalog: Catalog, facts: MachineFacts, concerned: ReadonlySet<string>): Unit[] {
  const checks = catalog.checks.filter((c) => applies(c.when, facts) !== 'no');
  const functions = byId(catalog.functions);
  const spoilersById = (id: string): string[] =>
    spoilersOf(functions.get(id)!, facts, concerned).map((s) => s.fault);
  return kinGroups(catalog, checks).map((group) => {
    const scales = group.flatMap((check) => scalesIn(catalog, check, group, facts, concerned));
    const spoilers = scales.flatMap((s) => [...s.functions.keys()].flatMap((id) => spoilersById(id)));
    const faults = new Set([...scales.flatMap((s) => [...s.causes.keys()]), ...spoilers]);
    return { id: group[0]!.id, checks: group, scales, faults };
  });
}

function kinGroups(catalog: Catalog, checks: readonly Check[]): Check[][] {
  const home = new Map(checks.map((c) => [c.id, c.id]));
  const join = (ids: readonly string[]) => {
    const here = ids.filter((id) => home.has(id)).map((id) => home.get(id)!);
    for (const [id, at] of home) if (here.includes(at)) home.set(id, here[0]!);
  };
  for (const kin of catalog.checkKin) join(kin.checks);
  for (const c of checks) if (c.differentialOf) join([c.differentialOf.check, c.id]);
  const groups = new Map<string, Check[]>();
  for (const c of checks) groups.set(home.get(c.id)!, [...(groups.get(home.get(c.id)!) ?? []), c]);
  return [...groups.values()];
}

function scalesIn(
  catalog: Catalog,
  check: Check,
  group: readonly Check[],
  facts: MachineFacts,
  concerned: ReadonlySet<string>,
): Scale[] {
  if (!check.differentialOf) return firstScales(catalog, check, group, facts, concerned);
  const { after } = check.differentialOf;
  const base = group.find((c) => c.id === check.differentialOf!.check);
  if (!base) return [];
  const repeated = firstScales(catalog, base, group, facts, concerned).find((s) =>
    s.outcomes.some((o) => after.includes(o)),
  );
  return repeated ? [repeatOf(check, repeated)] : [];
}

function firstScales(
  catalog: Catalog,
  check: Check,
  group: readonly Check[],
  facts: MachineFacts,
  concerned: ReadonlySet<string>,
): Scale[] {
  const scales = scalesOf(catalog, check, facts, concerned);
  const repeats = group.filter((c) => c.differentialOf?.check === check.id);
  return scales.map((scale) => {
    const own = repeats.filter((c) => c.differentialOf!.after.some((o) => scale.outcomes.includes(o)));
    return withSuspects(catalog, scale, own, concerned);
  });
}
