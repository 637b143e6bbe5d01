import { byId } from '../../catalog/index.js';
import { type ExactInference, inferExactly, NetworkError } from '../../infer/index.js';
import { countWord, listed, lowerFirst, percent } from '../../phrase/index.js';
import type { Machine } from '../machine/machine.js';
import type { Ranked } from './next.js';
import { isActedOn } from './stakes.js';
import { lossAt } from './value.js';
import { weighedFaults } from './weighed.js';

/** Whether to act now, and what is risked by it. */
export interface Enough {
  readonly enough: boolean;
  /** faults to repair now, the likeliest first */
  readonly act: readonly { readonly id: string; readonly name: string; readonly probability: number }[];
  /** chance that at least one of them is not there */
  readonly needless: number;
  /** chance that a fault that matters is there and is none of them */
  readonly missed: number;
  /** faults that matter and that no check made so far would show */
  readonly notLookedFor: readonly { readonly id: string; readonly name: string }[];
  /** minutes of needless and of missed work that acting now costs on average */
  readonly riskMinutes: number;
  /** a sentence */
  readonly words: string;
}

/**
 * Acting is enough when no check that can be made saves as many minutes as it takes, and no repair waits to be tried. A dear
 * repair is looked at before it is made (`confirmingLook`). A fault is repaired when leaving it
 * costs more on average than repairing it. Both chances are exact and over all faults jointly.
 */
export function enoughToAct(machine: Machine, inference: ExactInference, { best }: Ranked): Enough {
  const place = new Map(inference.faults.map((id, i) => [id, i]));
  const weighed = weighedFaults(machine, inference).map(({ id, now, fault, stakes }) => {
    return { id, now, name: fault.name, probability: inference.posterior[place.get(now)!]!, stakes };
  });
  const act = weighed
    .filter((w) => isActedOn(w.probability, w.stakes))
    .sort((a, b) => b.probability - a.probability);
  const left = weighed.filter((w) => !act.includes(w));
  const needless =
    1 -
    chanceThat(
      inference,
      act.map((w) => w.now),
      true,
    );
  const missed =
    1 -
    chanceThat(
      inference,
      left.map((w) => w.now),
      false,
    );
  const saving = best.filter((c) => c.pays);
  const riskMinutes = weighed.reduce((sum, w) => sum + lossAt(w.probability, w.stakes), 0);
  const answer = {
    notLookedFor: notLookedFor(machine, left),
    act: act.map(({ id, name, probability }) => ({ id, name, probability })),
    needless,
    missed,
  };
  const wantsTry = byId(machine.catalog.checks).get(best[0]?.id ?? '')?.afterRepair === true;
  return {
    enough: saving.length === 0 && !wantsTry,
    ...answer,
    riskMinutes,
    words: `${leadWords(wantsTry, saving[0]?.title)} ${riskWords(answer, riskMinutes)}`,
  };
}

function notLookedFor(machine: Machine, left: readonly { readonly id: string; readonly name: string }[]) {
  const made = new Set(machine.readings.filter((r) => !r.silent).map((r) => r.seen.check));
  const shown = new Set(
    machine.checks.filter((c) => made.has(c.check.id)).flatMap((c) => c.check.links.map((l) => l.fault)),
  );
  const known = new Set(machine.network.known.map((k) => k.fault));
  return left
    .filter((w) => !shown.has(w.id) && !known.has(machine.now(w.id)))
    .map(({ id, name }) => ({ id, name }));
}

/** The chance that all of these are present, or absent, together. */
function chanceThat(inference: ExactInference, faults: readonly string[], present: boolean): number {
  const { network } = inference;
  const known = new Map(network.known.map((k) => [k.fault, k.present]));
  if (faults.some((f) => known.get(f) === !present)) return 0;
  const more = faults.filter((f) => !known.has(f)).map((fault) => ({ fault, present }));
  if (more.length === 0) return 1;
  try {
    const { logEvidence } = inferExactly({ ...network, known: [...network.known, ...more] });
    return Math.min(1, Math.exp(logEvidence - inference.logEvidence));
  } catch (error) {
    if (error instanceof NetworkError && error.code === 'impossible') return 0;
    throw error;
  }
}

const mostNames = 3;

function leadWords(wantsTry: boolean, better: string | undefined): string {
  if (wantsTry) return 'Try it first: it was repaired and nobody has started it since.';
  return better === undefined
    ? 'Enough is seen to act: no check saves as many minutes as it takes.'
    : `Look further first: “${better}” saves more minutes than it takes.`;
}

function riskWords(
  { act, needless, missed }: Pick<Enough, 'act' | 'needless' | 'missed'>,
  riskMinutes: number,
): string {
  const names =
    act.length > mostNames ? `${countWord(act.length)} faults` : listed(act.map((a) => lowerFirst(a.name)));
  return act.length > 0
    ? `Repairing ${names} now risks needless work with ${percent(needless)} and missing something that matters with ${percent(missed)}, ${Math.round(riskMinutes)} minutes on average.`
    : `Nothing is worth repairing yet; something that matters is there with ${percent(missed)}.`;
}
