import type { Check } from '../../catalog/index.js';
import type { Reading } from '../network.js';
import type { MachineFacts, SeenCheck } from './case.js';
import { clears, stillShows } from './differential.js';
import { hiddenBy } from './masks.js';
import { releaseLeaves } from './release.js';
import type { Scale } from './scale.js';

/** A doubtful reading leaves every other outcome this likely beside the one that was written down. */
export const doubt = 0.35;

/** The outcomes that were chosen, as catalog ids; words that are not the catalog's are left out. */
export function chosenOutcomes(check: Check, written: readonly string[]): string[] {
  const said = written.map((w) => w.trim().toLowerCase());
  return check.outcomes
    .filter((o) => said.includes(o.id) || said.includes(o.words.toLowerCase()))
    .map((o) => o.id);
}

/** What a check that was made says of its signs; a sign that is hidden by what was seen is not read. */
export function readingsOf(
  check: Check,
  scales: readonly Scale[],
  seen: SeenCheck,
  facts: MachineFacts,
): Reading[] {
  const chosen = chosenOutcomes(check, seen.outcomes);
  if (chosen.length === 0) return [];
  if (check.differentialOf) return repeatReading(check, scales[0]!, chosen, seen.doubtful === true);
  const hidden = hiddenBy(check.id, chosen);
  return scales.flatMap((scale) => {
    const level = scale.outcomes.findLastIndex((o, k) => k > 0 && chosen.includes(o));
    if (level < 0 && scale.outcomes.slice(1).every((o) => hidden.has(o))) return [];
    return [weighed(scale, Math.max(0, level), facts, seen.doubtful === true)];
  });
}

function repeatReading(check: Check, scale: Scale, chosen: readonly string[], doubtful: boolean): Reading[] {
  const { changed, unchanged } = check.differentialOf!;
  const outcome = chosen.some((o) => changed.includes(o))
    ? clears
    : chosen.includes(unchanged)
      ? stillShows
      : undefined;
  if (outcome === undefined) return [];
  return [doubtful ? softened(scale, scale.outcomes.indexOf(outcome)) : { sign: scale.id, outcome }];
}

function weighed(scale: Scale, level: number, facts: MachineFacts, doubtful: boolean): Reading {
  const outcome = scale.outcomes[level]!;
  const left = releaseLeaves(scale.check, outcome, facts);
  const plain = !doubtful && left === 0;
  if (plain) return { sign: scale.id, outcome };
  const others = doubtful ? doubt : 0;
  const weights = scale.outcomes.map((_, k) => (k === level ? 1 : Math.max(others, k < level ? left : 0)));
  return { sign: scale.id, weights };
}

function softened(scale: Scale, level: number): Reading {
  return { sign: scale.id, weights: scale.outcomes.map((_, k) => (k === level ? 1 : doubt)) };
}
