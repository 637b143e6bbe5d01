import { byId } from '../../catalog/index.js';
import { listed, lowerFirst, percent, withinSentence } from '../../phrase/index.js';
import { clears, stillShows } from '../machine/differential.js';
import type { Machine } from '../machine/machine.js';
import type { CheckValue, OutcomeProspect } from './value.js';

interface Circumstances {
  readonly comesOff: readonly { readonly name: string }[];
  readonly ifItRuns: boolean;
  readonly spoiled: boolean;
}

/** Why a check is advised, in a sentence or two. */
export function whyWords(machine: Machine, value: CheckValue, around: Circumstances): string {
  const telling = value.outcomes
    .filter((o) => o.moves.length > 0)
    .sort((a, b) => pull(b) - pull(a))
    .map((o) => outcomeWords(machine, value, o))
    // one outcome may stand in two signs and move both alike
    .filter((words, i, all) => all.indexOf(words) === i)
    .slice(0, 2);
  const parts = [
    value.check.check.afterRepair ? 'It was repaired since it last would not run.' : '',
    telling.length > 0
      ? `${telling.join('; ')}.`
      : 'Nothing that it may show moves a fault that matters by much.',
    around.comesOff.length > 0 ? `Off first: ${listed(around.comesOff.map((c) => lowerFirst(c.name)))}.` : '',
    around.ifItRuns ? 'Only if the engine runs.' : '',
    around.spoiled ? 'Something done before has spoiled part of what it reads.' : '',
  ];
  return parts.filter(Boolean).join(' ');
}

/** How far an outcome moves its foremost fault, weighed with how likely it comes out so. */
const pull = (o: OutcomeProspect): number => o.probability * Math.abs(o.moves[0]!.to - o.moves[0]!.from);

function outcomeWords(machine: Machine, { check }: CheckValue, o: OutcomeProspect): string {
  const { fault, from, to } = o.moves[0]!;
  const name = withinSentence(byId(machine.catalog.faults).get(fault)!.name);
  const way = to > from ? 'raises' : 'lowers';
  return `“${wordsOf(check.check, o)}” (${percent(o.probability)}) ${way} ${name} from ${percent(from)} to ${percent(to)}`;
}

function wordsOf(check: CheckValue['check']['check'], { outcome }: OutcomeProspect): string {
  const { differentialOf } = check;
  const id =
    outcome === clears
      ? differentialOf?.changed[0]
      : outcome === stillShows
        ? differentialOf?.unchanged
        : outcome;
  return check.outcomes.find((o) => o.id === id)?.words ?? outcome;
}
