import { capital, counted, lowerFirst } from '../../../phrase/index.js';
import { stages } from '../../entry.js';
import { stageNames } from '../../stage-names.js';
import type { Answers } from '../answers.js';
import { gate } from '../stages/gates.js';

/** One thing to do next, and the page below the job's own on which it is done. */
export interface NextThing {
  readonly words: string;
  readonly page: string;
}

const most = 3;

/**
 * The next three things, as the hand would take them up: what was left half done, what waited and waits no longer, then
 * the work in hand, piece by piece, and after that what the sheets still want.
 */
export function nextThings(answers: Answers): NextThing[] {
  const apart = takeOff(answers);
  const back = goBack(answers);
  const inHand = answers.putBack.length > 0 ? [...back, ...apart] : [...apart, ...back];
  return [
    ...halfTight(answers),
    ...bathsToEmpty(answers),
    ...partsToFit(answers),
    ...inHand,
    ...stillWanted(answers),
  ].slice(0, most);
}

function halfTight({ job, tightening }: Answers): NextThing[] {
  return [...job.joints.values()].flatMap(({ joint, name, holes }): NextThing[] => {
    const { done, next, turns } = tightening.get(joint)!;
    if (done.size === 0 || next === undefined) return [];
    const { bolt, pass, isRound } = turns[next]!;
    const round = isRound ? 'the last round' : `pass ${pass}`;
    return [
      {
        words: `Tighten ${lowerFirst(name)}: bolt ${bolt} of ${holes.length} in ${round}`,
        page: `tighten/${joint}`,
      },
    ];
  });
}

const bathsToEmpty = ({ cleanings }: Answers): NextThing[] =>
  cleanings
    .filter(({ cleaning }) => cleaning.state === 'soaking' || cleaning.state === 'drying')
    .map(({ cleaning }) => ({
      words: `${cleaning.state === 'soaking' ? 'Take out of the bath' : 'Oil what dried'}: ${lowerFirst(cleaning.title)}`,
      page: 'measure',
    }));

const partsToFit = ({ provisionals }: Answers): NextThing[] =>
  provisionals
    .filter(({ state }) => state === 'here')
    .map(({ part }) => ({
      words: `Fit the new ${lowerFirst(part!.name)}: the old one is in for now`,
      page: 'assembly',
    }));

function takeOff({ teardown, components }: Answers): NextThing[] {
  if (teardown.state !== 'planned') return [];
  return teardown.steps.map(({ step, name, components: pieces, bag }) => {
    const isAct = pieces.every((id) => components.get(id)?.comesOffAs === 'action');
    return {
      words: isAct ? name : `Take off: ${name}${bag === undefined ? '' : `, into bag ${bag}`}`,
      page: `take-apart/${step}`,
    };
  });
}

/** What can go back now, each gate before what would hide it. */
function goBack({ assembly }: Answers): NextThing[] {
  const gates = assembly.gates.filter(({ state }) => state === 'asked');
  const steps = assembly.steps.filter(({ state }) => state === 'next' || state === 'can');
  return [
    ...gates.map(({ gate: { name } }) => ({
      words: `Look, before it is covered: ${name}`,
      page: 'put-together',
    })),
    ...steps.map(({ title, off }) => ({
      words: `Put back: ${title}${off.bag ? `, bag ${off.bag}` : ''}`,
      page: `put-together/${off.step}`,
    })),
  ];
}

/** What the first sheets that are not closed ask for. */
const stillWanted = (answers: Answers): NextThing[] =>
  stages.flatMap((stage): NextThing[] => {
    const { state, missing, blocks } = gate(answers, answers.listedRules, stage);
    const open = [...blocks, ...missing];
    if (state === 'done' || state === 'not-needed' || open.length === 0) return [];
    const more = open.length > 1 ? ` (and ${counted(open.length - 1, 'thing')} more)` : '';
    return [{ words: `${stageNames[stage]}: ${capital(open[0]!)}${more}`, page: stage }];
  });
