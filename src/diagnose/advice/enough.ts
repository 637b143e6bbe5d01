import { byId } from '../../catalog/index.js';
import { chanceTogether, type ExactInference } from '../../infer/index.js';
import { countWord } from '../../phrase/index.js';
import type { Machine } from '../machine/machine.js';
import type { NextCheck, Ranked } from './next.js';
import { found, isActedOn, stakesOf } from './stakes.js';
import { lossAt } from './value.js';
import { behindComplaints, type Complaint, complaintStands, weighedFaults } from './weighed.js';
import { namesOf } from './words.js';

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
 * Acting is enough when no check that can be made pays (`nextChecks`: while the complaint is open a look pays sooner), and
 * no repair waits to be tried. A dear repair is looked at before it is made (`confirmingLook`). A
 * fault is repaired when it is likely and leaving it costs more on average than repairing it. Both chances are exact and over all faults
 * jointly.
 */
export function enoughToAct(machine: Machine, inference: ExactInference, { best }: Ranked): Enough {
  const weighed = weighedWith(machine, inference);
  const act = weighed.filter((w) => w.acts).sort((a, b) => b.probability - a.probability);
  const left = weighed.filter((w) => !act.includes(w));
  const all = (these: typeof weighed, present: boolean): number =>
    chanceTogether(
      inference,
      these.map((w) => ({ fault: w.now, present })),
    );
  const needless = 1 - all(act, true);
  const missed = 1 - all(left, false);
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
    words: `${wantsTry ? tryWords : (lookWords(saving, best[0]) ?? enoughWords(act.length > 0, complaintStands(machine, inference)))} ${riskWords(answer)}`,
  };
}

/** The weighed faults and those that explain a complaint, with what each has come to. */
function weighedWith(machine: Machine, inference: ExactInference) {
  const place = new Map(inference.faults.map((id, i) => [id, i]));
  const probability = (now: string): number => inference.posterior[place.get(now)!]!;
  const weighed = weighedFaults(machine, inference).map(({ id, now, fault, stakes }) => {
    const p = probability(now);
    return { id, now, name: fault.name, probability: p, stakes, acts: isActedOn(p, stakes) };
  });
  const behind = behindComplaints(machine);
  const explaining = machine.faults
    .filter(({ id }) => behind.has(id) && probability(machine.now(id)) >= found)
    .filter(({ id }) => weighed.every((w) => w.id !== id))
    .map((f) => ({
      id: f.id,
      now: machine.now(f.id),
      name: f.fault.name,
      probability: probability(machine.now(f.id)),
      stakes: stakesOf(machine.catalog, machine.facts, f, true),
      acts: true,
    }));
  return [...weighed, ...explaining];
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

const tryWords = 'Try it first: it was repaired and nobody has started it since.';

/** What is proposed first is named; where the complaint put something else before it, no other is. */
function lookWords([saving]: readonly NextCheck[], first: NextCheck | undefined): string | undefined {
  if (!saving) return undefined;
  const title = saving.id === first?.id ? `“${saving.title}”` : 'it';
  return saving.pays === 'its minutes'
    ? `Look further first: ${title} saves more minutes than it takes.`
    : 'Look further first: what the owner complains of is not explained yet.';
}

function enoughWords(toRepair: boolean, complaint: Complaint): string {
  const explained = complaint === 'explained' ? 'what the owner complains of is explained, and ' : '';
  return `Enough is seen${toRepair ? ' to act' : ''}: ${explained}no check that is left is worth its minutes.`;
}

const mostNames = 3;

/** "17 of 20": a chance as a mechanic counts it */
function outOfTwenty(chance: number): string {
  const count = Math.round(20 * chance);
  return count === 0 ? 'hardly any of 20' : count === 20 ? 'nearly all of 20' : `${count} of 20`;
}

function riskWords({ act, needless, missed }: Pick<Enough, 'act' | 'needless' | 'missed'>): string {
  if (act.length === 0)
    return `As it stands nothing is worth repairing; ${outOfTwenty(missed)} such machines have something that matters.`;
  const names = act.length > mostNames ? `${countWord(act.length)} faults` : namesOf(act);
  return `As it stands one would repair ${names}: on ${outOfTwenty(needless)} such machines ${act.length === 1 ? 'it is' : 'one of them is'} not there, and on ${outOfTwenty(missed)} something else that matters is left in.`;
}
