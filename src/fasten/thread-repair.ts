import { neededEngagementMm, type TappedMetal } from './aluminum.js';
import { positive } from './error.js';
import { figure } from './figure.js';
import { commonPractice, tradeJudgement } from './sources.js';
import { tapDrill } from './tap-drill.js';
import { mmPerInch, type ThreadForm } from './thread-form.js';
import { findThread, isPlugThread, type StandardThread, threads, threadWords } from './threads.js';
import { chooseInsert, type InsertChoice, insertDrill, insertSource, insertThreadMm } from './wire-insert.js';

export interface StrippedHole {
  readonly form: ThreadForm;
  readonly metal: TappedMetal;
  /** how deep the hole may be drilled; left out when not measured */
  readonly depthMm?: number | undefined;
  /** depth of good thread left below the damage */
  readonly goodThreadMm?: number | undefined;
  /** outside of the boss round the hole, across its thinnest place */
  readonly bossMm?: number | undefined;
}

export interface RepairOption {
  readonly way: 'chase' | 'longer bolt' | 'wire insert' | 'next size';
  /** undefined: depends on something that was not measured */
  readonly possible: boolean | undefined;
  readonly steps: readonly string[];
  readonly why: string;
  readonly source: string;
  /** of a wire insert */
  readonly insert?: InsertChoice;
}

/** "0.266 in (6.76 mm)" or "8.3 mm", as the thread's own trade reads it. */
function size(mm: number, { system }: ThreadForm): string {
  return system === 'inch' ? `${(mm / mmPerInch).toFixed(3)} in (${figure(mm)} mm)` : `${figure(mm)} mm`;
}

/**
 * Boss wanted round an insert, mm across. Full strength: twice the insert tap's diameter, as insert makers ask. The
 * least, twice the bolt or a wall of 1.5 mm: trade judgement, no source.
 */
export function leastBossMm(form: ThreadForm): { readonly fullStrengthMm: number; readonly leastMm: number } {
  const { majorMm } = insertThreadMm(form);
  return { fullStrengthMm: 2 * majorMm, leastMm: Math.max(2 * form.majorMm, majorMm + 3) };
}

/** Sizes of the lists that few shops and suppliers keep (trade judgement, no source). */
const seldomKept = [/^#5-/, /^#12-/, /^M3\.5×/, /^M7×/];
/** What may remain of the old thread's crests in the new hole, in old pitches (trade judgement, no source). */
const oldCrests = 0.15;

const family = ({ series }: StandardThread) =>
  series.some((each) => each === 'UNC' || each === 'metric coarse') ? 'coarse' : 'fine';

/**
 * The next larger standard thread of the system whose tap drill takes the old thread away; of one size the pitch
 * family of the old one goes first. Undefined at the end of the lists.
 * Example: 1/4-20 gives 5/16-18, M8×1.25 gives M10×1.5, 7/16-14 gives 1/2-20.
 */
export function nextSize(form: ThreadForm): StandardThread | undefined {
  const leastHoleMm = form.majorMm - oldCrests * form.pitchMm;
  const old = findThread(form);
  const alike = threads.filter(
    (thread) =>
      thread.system === form.system &&
      thread.majorMm > form.majorMm &&
      tapDrill(thread).holeMm >= leastHoleMm &&
      isPlugThread(thread) === isPlugThread(form) &&
      !seldomKept.some((name) => name.test(thread.name)),
  );
  const otherFamily = (thread: StandardThread) => Number(family(thread) !== (old ? family(old) : 'coarse'));
  return alike.sort((a, b) => a.majorMm - b.majorMm || otherFamily(a) - otherFamily(b))[0];
}

function chase({ form, goodThreadMm, metal }: StrippedHole): RepairOption {
  const needed = neededEngagementMm(form.majorMm, metal);
  const enough = goodThreadMm === undefined ? undefined : goodThreadMm >= needed;
  return {
    way: 'chase',
    possible: enough,
    steps: [
      `run a thread chaser or tap, ${threadWords(form)}, through by hand, oiled, backing off each half turn`,
      'blow the chips out, wash, and try a clean bolt by hand to full depth',
    ],
    why: `only for bruised or dirty threads: ${size(needed, form)} of good thread is needed in ${metal}; a thread that has pulled out cannot be chased`,
    source: commonPractice,
  };
}

function longerBolt({ form, metal, goodThreadMm }: StrippedHole): RepairOption {
  const needed = neededEngagementMm(form.majorMm, metal);
  return {
    way: 'longer bolt',
    possible: goodThreadMm === undefined ? undefined : goodThreadMm >= needed,
    steps: [
      'measure the depth of good thread below the damage and the depth to the bottom of the hole',
      `choose a bolt that reaches ${size(needed, form)} of good thread and stays one pitch off the bottom`,
      'mark the hole in the record: this bolt goes back to this hole',
    ],
    why: 'uses thread that no bolt has used; a bolt that touches bottom feels tight and clamps nothing',
    source: commonPractice,
  };
}

function bossWords(form: ThreadForm, bossMm: number | undefined): string {
  const { fullStrengthMm, leastMm } = leastBossMm(form);
  const need = `boss ${size(fullStrengthMm, form)} across for full strength, ${size(leastMm, form)} at the least`;
  if (bossMm === undefined) return `${need}; measure it`;
  const wallMm = (bossMm - insertThreadMm(form).majorMm) / 2;
  return wallMm > 0
    ? `${need}; yours leaves a wall of ${size(wallMm, form)}`
    : `${need}; the insert tap is wider than yours`;
}

function insertSteps(form: ThreadForm, choice: InsertChoice): readonly string[] {
  const { minorMm, majorMm } = insertThreadMm(form);
  const drill = insertDrill(form);
  return [
    `drill ${drill ? drill.name : size(minorMm, form)}, square to the face, ${size(choice.drillDepthMm, form)} deep with a bottoming tap (the drill in the kit goes first)`,
    `tap with the ${threadWords(form)} insert tap (STI, ${size(majorMm, form)} outside): no ordinary tap fits`,
    `wind in an insert ${size(choice.lengthMm, form)} long (${choice.diameters} d) until it lies ¼ to ½ turn under the face`,
    'break off the tang and take it out; count it',
  ];
}

function wireInsert(hole: StrippedHole): RepairOption {
  const { form, metal, depthMm, bossMm } = hole;
  const choice = chooseInsert(form, metal, depthMm);
  const bossTooSmall = bossMm !== undefined && bossMm < leastBossMm(form).leastMm;
  if (!choice) {
    return {
      way: 'wire insert',
      possible: false,
      steps: [],
      why: `a hole ${size(depthMm ?? 0, form)} deep does not take even an insert of one diameter`,
      source: insertSource(form),
    };
  }
  return {
    way: 'wire insert',
    possible: bossTooSmall ? false : depthMm === undefined || bossMm === undefined ? undefined : true,
    steps: insertSteps(form, choice),
    why: `keeps the bolt size; ${bossWords(form, bossMm)}`,
    source: insertSource(form),
    insert: choice,
  };
}

function oversize({ form, metal, bossMm }: StrippedHole): RepairOption {
  const next = nextSize(form);
  if (!next) {
    return {
      way: 'next size',
      possible: false,
      steps: [],
      why: 'no larger thread is listed',
      source: commonPractice,
    };
  }
  const leastMm = next.majorMm * 1.5;
  const { inch, metric } = tapDrill(next);
  const drill = next.system === 'inch' ? inch.drill : metric.drill;
  return {
    way: 'next size',
    possible: bossMm === undefined ? undefined : bossMm >= leastMm,
    steps: [
      `drill ${drill.name}, tap ${next.name}, ${size(neededEngagementMm(next.majorMm, metal), form)} of thread`,
      `open the clearance holes of the parts above it for ${next.name}`,
      'note the odd bolt in the record',
    ],
    why: `the ${drill.name} drill clears the old thread; a boss of ${size(leastMm, form)} across is wanted; the bolt keeps the torque of its neighbors, not that of its new size`,
    source: tradeJudgement,
  };
}

/**
 * What can be done for a damaged or stripped tapped hole, cheapest first: chase, longer bolt, helical wire insert,
 * next size; each with drill, tap and steps, and whether depth and boss allow it.
 *
 * Sources stand with each way. Validity: cold metal, hole not cracked; a crack from the hole rules all of them out.
 * A plug hole: grease on the tap and piston at the bottom, or better with the head off.
 * Throws FastenError for a measure that is not above zero.
 * Example: 5/16-18 stripped in aluminum, 30 mm deep: insert of 2 d, drill 21/64 in; next size 3/8-16.
 */
export function repairWays(hole: StrippedHole): readonly RepairOption[] {
  for (const [field, value] of [
    ['depth', hole.depthMm],
    ['good-thread', hole.goodThreadMm],
    ['boss', hole.bossMm],
  ] as const) {
    if (value !== undefined) positive(value, field, 'mm');
  }
  return [chase(hole), longerBolt(hole), wireInsert(hole), oversize(hole)];
}
