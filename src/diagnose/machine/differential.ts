import { type Catalog, type Check, judgementOf } from '../../catalog/index.js';
import { chanceOf } from './faults.js';
import { reachOf, type Scale } from './scale.js';

/** What stays healthy and what still shows, with the suspect out of the way. */
export const clears = 'clears';
export const stillShows = 'still shows';

/**
 * The first reading with the suspects of its repeats among its causes. The sheet names some of them only in the
 * repeat ("better with a good plug"): a fault that is accused when the reading returns must have spoiled it first.
 */
export function withSuspects(
  catalog: Catalog,
  base: Scale,
  repeats: readonly Check[],
  concerned: ReadonlySet<string>,
): Scale {
  const causes = new Map(base.causes);
  for (const { differentialOf, links } of repeats) {
    const { bypasses, changed, after } = differentialOf!;
    for (const link of links) {
      const accused = bypasses.includes(link.fault) && link.outcomes.some((o) => changed.includes(o));
      if (!accused || causes.has(link.fault) || !concerned.has(link.fault)) continue;
      const reach = chanceOf(catalog, link.strength) * judgementOf(catalog, 'unnamed-suspect');
      causes.set(
        link.fault,
        base.outcomes.map((o, k) => (k === 0 ? 1 - reach : after.includes(o) ? reach / after.length : 0)),
      );
    }
  }
  return { ...base, causes };
}

/**
 * A repeat of a reading with the suspects bypassed: the same sign with the other causes only, as "clears" or "still
 * shows". Its own false alarm is left to what both readings share.
 */
export function repeatOf(check: Check, base: Scale): Scale {
  const { bypasses, bypassesFunctions = [], after } = check.differentialOf!;
  const reach = (masses: readonly number[]) =>
    masses.reduce((sum, m, k) => (after.includes(base.outcomes[k]!) ? sum + m : sum), 0);
  const causes = new Map<string, readonly number[]>();
  for (const [fault, masses] of base.causes) {
    const r = reach(masses);
    if (!bypasses.includes(fault) && r > 0) causes.set(fault, [1 - r, r]);
  }
  const leak = Math.min(check.falseAlarm, reachOf(base.leak));
  const functions = new Map<string, readonly (readonly number[])[]>();
  for (const [id, byState] of base.functions) {
    if (bypassesFunctions.includes(id)) continue;
    functions.set(
      id,
      byState.map(reach).map((r) => [1 - r, r]),
    );
  }
  const outcomes = [clears, stillShows];
  return { id: check.id, check: check.id, outcomes, leak: [1 - leak, leak], causes, functions };
}
