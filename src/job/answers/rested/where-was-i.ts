import { capital, counted, countWord, listed, lowerFirst, weekDay, withDays } from '../../../phrase/index.js';
import type { From } from '../../job.js';
import type { Answers } from '../answers.js';
import { type LastDone, lastDoneOf } from '../bench/last-done.js';
import { workOf } from '../bench/work-left.js';
import { fastenerLabel } from '../steps/tally.js';
import { type MissingMemory, missingMemories } from './memories.js';
import { type NextThing, nextThings } from './next-things.js';
import { daysBetween, restDays, restWords } from './rest.js';

/** A piece that is off: where it lies, and what lies with it. */
export interface OffNow {
  readonly step: string;
  readonly title: string;
  /** none where nobody named one */
  readonly bag?: string;
  /** "4 × M6 × 25 mm bolt" */
  readonly fasteners: readonly string[];
  /** openings that stand plugged since it came off */
  readonly plugged: readonly string[];
}

/** A joint or a fastening, and whether it is at its torque. */
export interface TorqueState {
  readonly name: string;
  readonly state: 'tight' | 'half tight' | 'not tightened' | 'to look into';
  readonly words: string;
}

/** A caution: in a word, and what to do about it. */
interface Minded {
  readonly word: string;
  readonly words: string;
}

/** A job that lay, told in one screen to a hand that has forgotten it. */
export interface WhereWasI {
  /** where the work stopped and by whom; none where nothing but the tag is there */
  readonly stopped?: LastDone;
  /** whole days since then */
  readonly days: number;
  /** "12 months", "3 days" */
  readonly rest: string;
  /** the last ones, newest first */
  readonly pictures: readonly From<'photograph'>[];
  /** what came off last stands first, for it goes back first */
  readonly off: readonly OffNow[];
  /** what soaks, waits or is in for now, each in a line */
  readonly waits: readonly string[];
  readonly torques: readonly TorqueState[];
  readonly next: readonly NextThing[];
  readonly missing: readonly MissingMemory[];
  /** what the rest itself has changed, to be minded first */
  readonly mind: readonly Minded[];
}

const lastPictures = 3;

/** `now`: local time, ISO 8601 with offset. */
export function whereWasI(answers: Answers, now: string): WhereWasI {
  const { job } = answers;
  const stopped = lastDoneOf(job);
  const days = stopped ? daysBetween(stopped.at, now) : 0;
  const torques = torquesOf(answers);
  return {
    ...(stopped && { stopped }),
    days,
    rest: restWords(days),
    pictures: job.photographs
      .filter(({ picture }) => picture)
      .slice(-lastPictures)
      .toReversed(),
    off: offOf(answers),
    waits: waitsOf(answers, now),
    torques,
    next: nextThings(answers),
    missing: missingMemories(answers),
    mind: days >= restDays ? mindAfter(answers, torques, days) : [],
  };
}

function offOf({ stillOff, tally }: Answers): OffNow[] {
  return stillOff.toReversed().map(({ step, title, bag, fasteners = [] }) => ({
    step,
    title,
    ...(bag !== undefined && { bag }),
    fasteners: fasteners.map((f) => `${f.count} × ${fastenerLabel(f)}`),
    plugged: tally.stillPlugged.filter((plug) => plug.step === step).map(({ port }) => port),
  }));
}

function waitsOf(answers: Answers, now: string): string[] {
  const { job, provisionals } = answers;
  const here = [...job.parts.values()].filter(({ state, consumable }) => state === 'arrived' && !consumable);
  return [
    ...workOf(answers, now).waits.map((words) => withDays(words, now)),
    ...here.map(({ name }) => `${name}: here, not fitted`),
    ...provisionals.map(
      ({ decision, comesBack }) => `${decision.title}: the old one is in for now, until ${comesBack}`,
    ),
    ...(job.intake.promised !== undefined ? [`promised for ${weekDay(job.intake.promised, now)}`] : []),
  ];
}

function torquesOf(answers: Answers): TorqueState[] {
  const { job, tightening, assembly } = answers;
  const laidOut = [...job.joints.values()].map((joint): TorqueState => {
    const { done, turns, next, trouble } = tightening.get(joint.joint)!;
    const { name, target } = joint;
    const clicked = `${done.size} of ${counted(turns.length, 'click')}, to ${target.written}`;
    if (trouble.length > 0)
      return { name, state: 'to look into', words: `${trouble[0]!.result}; ${clicked}` };
    if (done.size === 0) return { name, state: 'not tightened', words: `to ${target.written}` };
    return { name, state: next === undefined ? 'tight' : 'half tight', words: clicked };
  });
  const still = assembly.steps
    .filter(({ state }) => state !== 'back')
    .flatMap(({ torques }) => torques)
    .filter(({ joint, spec }) => joint === undefined && spec?.value !== undefined)
    .map(
      ({ name, spec }): TorqueState => ({
        name,
        state: 'not tightened',
        words: `to ${spec!.value!.written}, by the maker’s line`,
      }),
    );
  return [...laidOut, ...still];
}

/** Weeks after which fuel is taken for stale: common practice says about a month. */
const fuelKeepsDays = 30;

/** What lying does to an engine that is half apart. Common practice; the maker's manual comes first. */
function mindAfter({ engine, tally, cleanings }: Answers, torques: readonly TorqueState[], days: number) {
  const half = torques.filter(({ state }) => state === 'half tight').map(({ name }) => name);
  const wet = cleanings.filter(({ cleaning }) => cleaning.state === 'soaking');
  const plugs = tally.stillPlugged.length;
  return [
    ...half.map((name) => ({
      word: `${name} half tight`,
      words: `${name} stood half tight: loosen all its bolts and begin again with the first pass, with a new gasket where there is one. The maker’s manual comes first.`,
    })),
    ...wet.map(({ cleaning: { title } }) => ({
      word: `${title} still in the bath`,
      words: `${title} has been in the bath all the time: look for pitting before it is used.`,
    })),
    ...(days > fuelKeepsDays && engine.state.fuel !== 'none'
      ? [{ word: 'old fuel', words: 'Fuel that was left in is stale now: drain it before it is started.' }]
      : []),
    ...(plugs > 0
      ? [
          {
            word: plugs === 1 ? 'a plug in' : `${countWord(plugs)} plugs in`,
            words: `${capital(listed(tally.stillPlugged.map(({ port }) => lowerFirst(port))))} still plugged: the plugs come out before anything covers them.`,
          },
        ]
      : []),
  ];
}
