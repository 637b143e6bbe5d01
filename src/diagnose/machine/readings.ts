import { type Catalog, type Check, judgementOf } from '../../catalog/index.js';
import type { Reading } from '../../infer/index.js';
import type { MachineFacts, SeenCheck } from './case.js';
import { clears, stillShows } from './differential.js';
import { hiddenBy } from './masks.js';
import { usualLeaves } from './release.js';
import type { Scale } from './scale.js';
import { spoiledReading } from './spoils.js';

/** Outcomes of any check: it was tried and told nothing, or it could not be made. Both are kept and move no belief. */
export const cannotTell = 'cannot-tell';
export const notNow = 'could-not-be-done';
export const saidOfAnyCheck: readonly string[] = [cannotTell, notNow];

/** The outcomes that were chosen, as catalog ids; words that are not the catalog's are left out. */
export function chosenOutcomes(check: Check, written: readonly string[]): string[] {
  const said = written.map((w) => w.trim().toLowerCase());
  return check.outcomes
    .filter((o) => said.includes(o.id) || said.includes(o.words.toLowerCase()))
    .map((o) => o.id);
}

/** What a check that was made says of its signs; a sign that is hidden by what was seen is not read. */
export function readingsOf(
  catalog: Catalog,
  check: Check,
  scales: readonly Scale[],
  seen: SeenCheck,
  facts: MachineFacts,
  spoiled = false,
): Reading[] {
  const read = cleanReadings(catalog, check, scales, seen, facts);
  return spoiled ? read.map((r) => spoiledReading(catalog, scales.find((s) => s.id === r.sign)!, r)) : read;
}

function cleanReadings(
  catalog: Catalog,
  check: Check,
  scales: readonly Scale[],
  seen: SeenCheck,
  facts: MachineFacts,
): Reading[] {
  if (seen.weights && scales.length === 1) return [softReading(scales[0]!, seen.weights)];
  const chosen = chosenOutcomes(check, seen.outcomes);
  if (chosen.length === 0) return [];
  const doubt = seen.doubtful ? judgementOf(catalog, 'doubtful-leaves') : 0;
  if (check.differentialOf) return repeatReading(check, scales[0]!, chosen, doubt);
  const left = (scale: Scale, level: number): number =>
    usualLeaves(catalog, check, scale.outcomes[level]!, facts);
  const hidden = hiddenBy(catalog, check.id, chosen);
  const levelOf = (scale: Scale): number =>
    scale.outcomes.findLastIndex((o, k) => k > 0 && chosen.includes(o));
  // a fault that shows one face is not cleared for not showing another
  const shown = new Set(
    scales.flatMap((s) => [...s.causes].flatMap(([fault, m]) => ((m[levelOf(s)] ?? 0) > 0 ? [fault] : []))),
  );
  return scales.flatMap((scale) => {
    const level = levelOf(scale);
    if (level < 0 && scale.outcomes.slice(1).every((o) => hidden.has(o))) return [];
    if (level < 0 && [...scale.causes.keys()].some((fault) => shown.has(fault))) return [];
    return [weighed(scale, Math.max(0, level), left(scale, Math.max(0, level)), doubt)];
  });
}

const softReading = (scale: Scale, weights: Readonly<Record<string, number>>): Reading => ({
  sign: scale.id,
  weights: scale.outcomes.map((outcome) => weights[outcome] ?? 0),
});

function repeatReading(check: Check, scale: Scale, chosen: readonly string[], doubt: number): Reading[] {
  const { changed, unchanged } = check.differentialOf!;
  const outcome = chosen.some((o) => changed.includes(o))
    ? clears
    : chosen.includes(unchanged)
      ? stillShows
      : undefined;
  return outcome === undefined ? [] : [weighed(scale, scale.outcomes.indexOf(outcome), 0, doubt)];
}

/** @param left what the reading leaves of milder outcomes, where a variant makes it usual */
function weighed(scale: Scale, level: number, left: number, doubt: number): Reading {
  if (doubt === 0 && left === 0) return { sign: scale.id, outcome: scale.outcomes[level]! };
  const weights = scale.outcomes.map((_, k) => (k === level ? 1 : Math.max(doubt, k < level ? left : 0)));
  return { sign: scale.id, weights };
}
