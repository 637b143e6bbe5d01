import { capital, timeWords } from '../../../phrase/index.js';
import { boltOf, type From, type Job } from '../../job.js';

/** What one device says of an act that another tells of too. */
export interface Account {
  /** the line that says it */
  readonly entry: string;
  /** "Apron phone, 14:02" */
  readonly who: string;
  /** what the accounts differ in: "bag 3"; nothing where they say the same */
  readonly says?: string;
}

/** One act of which two devices tell, each without having seen the other's line. It counts once. */
export interface TwoAccounts {
  readonly what: string;
  /** in the order in which they stand in the log */
  readonly accounts: readonly Account[];
  /** whether they differ, so that somebody who looks at the engine must say which is right */
  readonly differ: boolean;
}

type Torque = From<'torque'>;
type Step = From<'step'>;

/** Acts that were logged on more than one device: what differs first. */
export function twoAccountsOf(job: Job): TwoAccounts[] {
  const all = [...stepsTwice(job), ...clicksTwice(job)];
  return all.sort((a, b) => Number(b.differ) - Number(a.differ));
}

/**
 * A piece that is off by two devices' lines which name different bags. A line that the same device mended is no second
 * account, nor is one that says the same.
 */
function stepsTwice(job: Job): TwoAccounts[] {
  const told = new Map<string, Step[]>();
  for (const { known, struck } of job.log) {
    if (struck || known?.kind !== 'step') continue;
    const { state, step } = known.body;
    const line = { ...known.body, entry: known.id, at: known.at, by: known.by };
    // planned or dropped since: what is done after that is another act
    if (state === 'done') told.set(step, [...(told.get(step) ?? []).filter((s) => s.by !== line.by), line]);
    else told.delete(step);
  }
  return [...told.values()].flatMap((lines): TwoAccounts[] => {
    const bags = new Set(lines.map(({ bag }) => bag));
    if (bags.size < 2) return [];
    const accounts = lines.map((l) => ({
      ...account(l),
      says: l.bag === undefined ? 'no bag' : `bag ${l.bag}`,
    }));
    return [{ what: lines[0]!.title, accounts, differ: true }];
  });
}

/** One click of one bolt in one pass, logged on two devices: it was clicked once. */
function clicksTwice(job: Job): TwoAccounts[] {
  const joints = job.joints;
  const told = new Map<string, Torque[]>();
  for (const t of job.torques) {
    const joint = joints.get(t.joint);
    if (!joint || t.result !== 'clicked' || Date.parse(t.at) < Date.parse(joint.at)) continue;
    const turn = JSON.stringify([t.joint, t.pass, t.hole]);
    told.set(turn, [...(told.get(turn) ?? []).filter((other) => other.by !== t.by), t]);
  }
  return [...told.values()].flatMap((lines): TwoAccounts[] => {
    const [first] = lines;
    if (!first || lines.length < 2) return [];
    const name = capital(joints.get(first.joint)!.name);
    const what = `${name}, bolt ${boltOf(first)}, pass ${first.pass}`;
    return [{ what, accounts: lines.map(account), differ: false }];
  });
}

const account = ({ entry, by, at }: Pick<Step, 'entry' | 'by' | 'at'>): Account => ({
  entry,
  who: `${by}, ${timeWords(at)}`,
});
