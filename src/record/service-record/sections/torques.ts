import type { From, TighteningProgress } from '../../../job/index.js';
import { counted, inPercent, joined, listed } from '../../../phrase/index.js';
import { say, sayOrigin } from '../numbers.js';
import type { Block, Fact, Hole, JointBlock, Section, Verdict } from '../section.js';
import { type Sheet, wrenchOf } from '../sheet.js';
import { handleWords } from '../words.js';

/** Every joint that was tightened together, its holes drawn, and whether each one clicked in every pass. */
export function torques(sheet: Sheet): Section | undefined {
  const joints = [...sheet.job.joints.values()];
  const half = sheet.detail === 'brief' && joints.length > 1;
  const blocks = joints.map((joint) => jointBlock(sheet, joint, half));
  if (blocks.length === 0) return undefined;
  return { id: 'torques', title: 'Tightened', place: 'full', blocks: [...blocks, legend] };
}

const legend: Block = {
  type: 'words',
  words:
    'In the drawings a hole carries its place in the tightening order; a filled one clicked in every pass.',
  soft: true,
};

type Joint = From<'joint'>;

export interface JointState {
  /** holes[n-1] is hole n */
  readonly holes: readonly Hole['state'][];
  readonly passes: readonly { readonly name: string; readonly clicked: number; readonly of: number }[];
  /** what did not go as it should */
  readonly remarks: readonly string[];
  readonly verdict: Verdict;
}

export function jointTarget(sheet: Sheet, joint: Joint): string {
  return say(joint.target, sheet.system);
}

export function jointState(sheet: Sheet, joint: Joint): JointState {
  const progress = sheet.answers.tightening.get(joint.joint)!;
  const holes = joint.holes.map((_, i) => holeState(progress, i + 1));
  return {
    holes,
    passes: Array.from({ length: progress.passes }, (_, i) => passCount(progress, i + 1)),
    remarks: [...troubles(progress, joint), ...otherSettings(progress, joint, sheet)],
    verdict: jointVerdict(holes),
  };
}

/** A hole that the order leaves out was never tightened, whatever the other holes say. */
function holeState({ turns, done, trouble }: TighteningProgress, hole: number): Hole['state'] {
  if (trouble.some((t) => t.hole === hole)) return 'failed';
  const own = turns.flatMap((turn, i) => (turn.hole === hole ? [i] : []));
  return own.length > 0 && own.every((i) => done.has(i)) ? 'clicked' : 'not-complete';
}

function passCount({ turns, done }: TighteningProgress, pass: number): JointState['passes'][number] {
  const own = turns.flatMap((turn, i) => (turn.pass === pass ? [{ i, turn }] : []));
  const name = own[0]?.turn.isRound ? 'final round' : `pass ${pass}`;
  return { name, clicked: own.filter(({ i }) => done.has(i)).length, of: own.length };
}

function jointVerdict(holes: readonly Hole['state'][]): Verdict {
  if (holes.includes('failed')) return { sign: 'fail', word: 'not every hole came to its torque' };
  const open = holes.filter((state) => state !== 'clicked').length;
  if (open > 0)
    return { sign: 'cannot-decide', word: `${open} of ${holes.length} holes not logged in every pass` };
  return { sign: 'pass', word: `${counted(holes.length, 'hole')}, each clicked in every pass` };
}

function troubles({ trouble }: TighteningProgress, joint: Joint): string[] {
  return trouble.map((t) => `${holeName(joint, t.hole)} ${t.result} in ${passName(joint, t.pass)}`);
}

/** Within 2 % of the target: a wrench's scale is no finer (trade judgement, no source). */
const settingTolerance = 0.02;

function otherSettings({ turns, done }: TighteningProgress, joint: Joint, sheet: Sheet): string[] {
  return [...done].flatMap(([i, reading]) => {
    const isAsPlanned = Math.abs(reading.set.si - turns[i]!.torqueNm) <= settingTolerance * joint.target.si;
    if (isAsPlanned) return [];
    return [
      `${holeName(joint, reading.hole)} in ${passName(joint, reading.pass)}: wrench set to ${say(reading.set, sheet.system)}`,
    ];
  });
}

/** As the drawing numbers them: by their place in the order. */
function holeName(joint: Joint, hole: number): string {
  const [turn] = turnsOf(joint, hole);
  return turn === undefined ? 'a hole that the order leaves out' : `number ${turn}`;
}

function passName(joint: Joint, pass: number): string {
  return pass > joint.passes.length ? 'the final round' : `pass ${pass}`;
}

function jointBlock(sheet: Sheet, joint: Joint, half: boolean): JointBlock {
  const state = jointState(sheet, joint);
  return {
    type: 'joint',
    half,
    name: joint.name,
    holes: joint.holes.map((place, i) => ({
      ...place,
      number: i + 1,
      turns: turnsOf(joint, i + 1),
      state: state.holes[i]!,
    })),
    ...(joint.bottomEdge && { bottomEdge: joint.bottomEdge }),
    facts: half ? halfFacts(sheet, joint, state) : jointFacts(sheet, joint, state),
    verdict: state.verdict,
  };
}

function turnsOf(joint: Joint, hole: number): number[] {
  return joint.order.flatMap((ordered, place) => (ordered === hole ? [place + 1] : []));
}

function jointFacts(sheet: Sheet, joint: Joint, state: JointState): Fact[] {
  const facts: (Fact | undefined)[] = [
    { label: 'Target', value: targetWords(sheet, joint), origin: sayOrigin(joint.targetOrigin) },
    { label: 'Passes', value: passWords(joint) },
    { label: 'Order', value: 'as numbered in the drawing', origin: sayOrigin(joint.orderOrigin) },
    { label: 'Wrench', value: wrenchWords(sheet, joint) },
    { label: 'Clicked', value: clickedWords(state) },
    state.remarks.length > 0 ? { label: 'Remarks', value: state.remarks.join('; ') } : undefined,
  ];
  return facts.filter((fact) => fact !== undefined);
}

/** The same in three lines, for a joint that shares its row. */
function halfFacts(sheet: Sheet, joint: Joint, state: JointState): Fact[] {
  const clicked = state.verdict.sign === 'pass' ? undefined : clickedWords(state);
  const more = joined([clicked, ...state.remarks], '; ');
  return [
    { label: 'Target', value: targetWords(sheet, joint), origin: sayOrigin(joint.targetOrigin) },
    {
      label: 'Passes',
      value: `${passWords(joint)}, in the order drawn`,
      origin: sayOrigin(joint.orderOrigin),
    },
    { label: 'Wrench', value: wrenchWords(sheet, joint) },
    ...(more ? [{ label: 'Remarks', value: more }] : []),
  ];
}

function clickedWords(state: JointState): string {
  return state.passes.map((p) => `${p.name}: ${p.clicked} of ${p.of}`).join(', ');
}

function targetWords(sheet: Sheet, joint: Joint): string {
  const threads = joined([joint.thread, joint.condition], ', ');
  return `${jointTarget(sheet, joint)}${threads ? ` on ${threads}` : ', threads not noted'}`;
}

function passWords(joint: Joint): string {
  const parts = joint.passes.map((part) => inPercent(part));
  return joined([listed(parts), joint.finalRound ? 'then a round at full torque' : undefined], ', ');
}

/** Every wrench that was used, not only the one that was planned. */
function wrenchWords(sheet: Sheet, joint: Joint): string {
  const used = sheet.job.torques.filter((t) => t.joint === joint.joint).map((t) => t.wrench ?? joint.wrench);
  const tools = new Set(used.length > 0 ? used : [joint.wrench]);
  return [...tools].map((tool) => (tool ? wrenchName(sheet, tool) : 'not noted')).join(', ');
}

function wrenchName(sheet: Sheet, tool: string): string {
  const wrench = wrenchOf(sheet, tool);
  return wrench ? `${wrench.name}, ± ${wrench.accuracyPercent} % of reading` : handleWords(tool);
}
