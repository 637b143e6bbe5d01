import { applies, byId, type Catalog, type Hazard } from '../../catalog/index.js';
import type { SeenCheck } from '../machine/case.js';
import type { KnownOfEngine } from './known.js';
import type { Pieces } from './pieces.js';
import { chosenOutcomes } from './state.js';

/** What stands against pulling or running an engine now, the gravest first. */
export function standingHazards(catalog: Catalog, known: KnownOfEngine, pieces: Pieces): Hazard[] {
  const standing = catalog.hazards
    .filter((hazard) => applies(hazard.when, pieces.facts) === 'yes' || neverRuledOut(hazard, pieces))
    .filter((hazard) => stands(catalog, hazard, known, pieces));
  const ids = new Set(standing.map(({ id }) => id));
  return standing
    .filter(({ saidBy = [] }) => !saidBy.some((id) => ids.has(id)))
    .toSorted((a, b) => Number(a.bars === 'running') - Number(b.bars === 'running'));
}

/** What may be so and was seen counts; a hazard of facts alone needs them known. */
const neverRuledOut = (hazard: Hazard, { facts }: Pieces): boolean =>
  applies(hazard.when, facts) !== 'no' && !ofFactsAlone(hazard) && hazard.when?.struck === undefined;

const ofFactsAlone = ({ seen, complaints, missing }: Hazard): boolean => !seen && !complaints && !missing;

function stands(catalog: Catalog, hazard: Hazard, known: KnownOfEngine, { pieces, facts }: Pieces): boolean {
  const { faults = [], complaints = [], missing = [] } = hazard;
  const repaired = (known.repairs ?? []).filter((r) => faults.includes(r.fault)).map((r) => r.at);
  if (faults.some((id) => known.confirmed?.includes(id))) return true;
  if (missing.some((id) => pieces.get(id)?.why === 'seen to be missing')) return true;
  const read = lastReading(catalog, hazard, known);
  if (read) return read.bad && !repaired.some((at) => at >= read.seen.at);
  if (repaired.length > 0) return false;
  if (complaints.some((id) => known.complaints?.includes(id)))
    return !allExcluded(catalog, hazard, known, facts);
  return ofFactsAlone(hazard);
}

/** Of all readings that can show it or clear it the last one counts. */
function lastReading(catalog: Catalog, { seen = [], clearedBy = [] }: Hazard, known: KnownOfEngine) {
  const checks = byId(catalog.checks);
  const named = new Set([...seen.map((s) => s.check), ...clearedBy]);
  const says = (one: SeenCheck): boolean | undefined => {
    const check = checks.get(one.check);
    if (!check || !named.has(one.check)) return undefined;
    const chosen = chosenOutcomes(check, one).map((o) => o.id);
    if (chosen.length === 0) return undefined;
    const shows = seen.find((s) => s.check === one.check);
    if (shows && chosen.some((o) => shows.outcomes.includes(o))) return true;
    const sound = chosen.includes(check.outcomes[0]!.id);
    return shows || sound ? false : clearedBy.includes(one.check) ? true : undefined;
  };
  for (const one of known.seen.toReversed()) {
    const bad = says(one);
    if (bad !== undefined) return { bad, seen: one };
  }
  return undefined;
}

/** Nothing is left that could be behind it. */
function allExcluded(
  catalog: Catalog,
  { faults = [] }: Hazard,
  { excluded = [] }: KnownOfEngine,
  facts: Pieces['facts'],
): boolean {
  const known = byId(catalog.faults);
  const possible = faults.filter((id) => applies(known.get(id)?.when, facts) !== 'no');
  return possible.every((id) => excluded.includes(id));
}
