import { expect, test } from 'vitest';
import { tightening, turnFrom } from '../../../../src/job/answers/assembly/tightening.js';
import { twoAccountsOf } from '../../../../src/job/answers/steps/two-accounts.js';
import { type Body, type EntryKind, fold, type RawEntry } from '../../../../src/job/index.js';
import { jobId, log, torque } from '../../entries.js';

/** Lines of several devices, a minute after each other. */
function devices() {
  const { add, lines } = log();
  const by = <K extends EntryKind>(who: string, kind: K, body: Body<K>): RawEntry => {
    const line = { ...add(kind, body), by: who };
    lines[lines.length - 1] = line;
    return line;
  };
  by('bench', 'open', { tag: 17, title: 'pump' });
  const job = () => fold(jobId, lines);
  return { by, job, told: () => twoAccountsOf(job()) };
}

const off = (bag?: string): Body<'step'> => ({
  ...({ step: 'cylinder-head', stage: 'teardown', title: 'Cylinder head', state: 'done' } as const),
  ...(bag !== undefined && { bag }),
});

test('a piece that two devices took off into different bags is shown with both, until one line is struck', () => {
  const { by, told, job } = devices();
  by('Phone', 'step', off('3'));
  const other = by('bench', 'step', off('4'));
  expect(told()).toMatchObject([
    {
      what: 'Cylinder head',
      differ: true,
      accounts: [
        { who: expect.stringContaining('Phone'), says: 'bag 3' },
        { who: expect.stringContaining('bench'), says: 'bag 4' },
      ],
    },
  ]);
  by('bench', 'strike', { entry: other.id, reason: 'It is bag 3' });
  expect(told()).toEqual([]);
  expect(job().steps.get('cylinder-head')?.bag).toBe('3');
});

test('a line that the same device mended is no second account, nor is one that says the same', () => {
  const { by, told } = devices();
  by('Phone', 'step', off('3'));
  by('Phone', 'step', off('4'));
  by('bench', 'step', off('4'));
  expect(told()).toEqual([]);
});

test('what came off a second time, after it was dropped or planned, is another act', () => {
  const { by, told } = devices();
  by('Phone', 'step', off('3'));
  by('Phone', 'step', { ...off('3'), state: 'dropped' });
  by('bench', 'step', off('4'));
  expect(told()).toEqual([]);
});

test('one click logged on two devices is two accounts of one act, and counts once', () => {
  const { by, told, job } = devices();
  const holes = [0, 40].map((xMm) => ({ xMm, yMm: 0 }));
  const thumb = { from: 'rule of thumb' } as const;
  by('bench', 'joint', {
    ...{ joint: 'head', name: 'head', holes, passes: [1], finalRound: false, order: [2, 1] },
    ...{ target: torque('140 in-lb'), targetOrigin: thumb, orderOrigin: thumb },
  });
  const set = torque('140 in-lb');
  const click = (hole: number) => ({ joint: 'head', hole, pass: 1, result: 'clicked', set }) as const;
  by('Phone', 'torque', click(1));
  by('Tablet', 'torque', click(1));
  by('Phone', 'torque', click(1)); // loosened and clicked again: the same device, no third account
  const progress = tightening(job(), job().joints.get('head')!);
  expect([progress.done.size, progress.next]).toEqual([1, 0]);
  expect(turnFrom(progress, 1)).toBe(2); // who stands at that bolt is led on
  const [only, ...more] = told();
  expect(more).toEqual([]);
  expect(only).toMatchObject({ what: 'Head, bolt 2, pass 1', differ: false });
  expect(only!.accounts.map(({ who }) => who.split(',')[0])).toEqual(['Tablet', 'Phone']);
});
