import { expect, test } from 'vitest';
import { boltTurns } from '../../../../src/job/answers/assembly/tightening.js';
import { fold, lineWords, turnTorque } from '../../../../src/job/index.js';
import { to } from '../../../../src/quantity/index.js';
import { tables } from '../../../../src/record/index.js';
import { door } from '../../door.js';
import { jobId, log, torque } from '../../entries.js';

const order = [5, 1, 7, 3, 8, 4, 6, 2];
const head = {
  joint: 'head',
  name: 'Cylinder head',
  holes: Array.from({ length: 8 }, (_, i) => ({ xMm: 30 * Math.cos(i), yMm: 30 * Math.sin(i) })),
  target: torque('140 in-lb'),
  targetOrigin: { from: "maker's sheet" as const, detail: 'page 31' },
  passes: [0.5, 1],
  finalRound: false,
  order,
  orderOrigin: { from: "maker's sheet" as const },
};

test('common practice: an eight-bolt head to 140 in-lb goes 70 then 140, each time in the maker’s own sequence', () => {
  const turns = boltTurns(head);
  expect(turns.map((t) => t.hole)).toEqual([...order, ...order]);
  expect(turns.map((t) => to(turnTorque(head, t), 'in-lb').toFixed(6))).toEqual([
    ...Array(8).fill('70.000000'),
    ...Array(8).fill('140.000000'),
  ]);
});

test('the last round goes in a circle at full torque', () => {
  const turns = boltTurns({
    ...head,
    passes: [0.3, 0.7, 1],
    finalRound: true,
    around: [1, 2, 3, 4, 5, 6, 7, 8],
  });
  expect(turns).toHaveLength(32);
  expect(turns.slice(24).every((t) => t.isRound && t.pass === 4)).toBe(true);
  expect(turns.slice(24).map((t) => t.hole)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
});

function tightened(
  results: readonly { hole: number; pass: number; result: 'clicked' | 'turned without rising' }[],
) {
  const { add, lines } = log();
  add('open', { tag: 1, title: '' });
  add('joint', head);
  for (const r of results)
    add('torque', { joint: 'head', set: torque(r.pass === 1 ? '70 in-lb' : '140 in-lb'), ...r });
  const job = fold(jobId, lines);
  return door(job).tightening.get('head')!;
}

test('the next bolt is the first of the order that has not clicked', () => {
  expect(tightened([]).next).toBe(0);
  const first = { hole: 5, pass: 1, result: 'clicked' } as const;
  expect(tightened([first]).next).toBe(1);
  expect(tightened([{ hole: 1, pass: 1, result: 'clicked' }, first]).next).toBe(2);
});

test('a bolt that turns without rising stays trouble until it clicks', () => {
  const bad = { hole: 5, pass: 1, result: 'turned without rising' } as const;
  expect(tightened([bad]).trouble.map((t) => t.hole)).toEqual([5]);
  expect(tightened([bad]).next).toBe(0);
  expect(tightened([bad, { hole: 5, pass: 1, result: 'clicked' }]).trouble).toEqual([]);
});

test('a joint is finished when every bolt has clicked in every pass', () => {
  const all = [1, 2].flatMap((pass) => order.map((hole) => ({ hole, pass, result: 'clicked' as const })));
  expect(tightened(all).next).toBeUndefined();
  expect(tightened(all.slice(0, -1)).next).toBe(15);
});

test('laying the joint out anew makes the earlier clicks count no longer', () => {
  const { add, lines } = log();
  add('open', { tag: 1, title: '' });
  add('joint', head);
  add('torque', { joint: 'head', hole: 5, pass: 1, set: torque('70 in-lb'), result: 'clicked' });
  add('joint', { ...head, target: torque('165 in-lb') });
  const job = fold(jobId, lines);
  expect(door(job).tightening.get('head')!.next).toBe(0);
});

test('a bolt has one number, its place in the tightening order: on screen, in the log, at the gate and in the table', () => {
  const { add, lines } = log();
  add('open', { tag: 3, title: 'invented' });
  add('intake', { architecture: 'overhead-valve' });
  add('joint', head);
  const set = torque('70 in-lb');
  add('torque', { joint: 'head', hole: 5, pass: 1, set, result: 'clicked' }); // as lines told it before 0.2
  add('torque', { joint: 'head', hole: 7, bolt: 3, pass: 1, set, result: 'turned without rising' });
  const job = fold(jobId, lines);
  const [first, , third] = boltTurns(head);
  expect([first!.bolt, third!.bolt]).toEqual([1, 3]);
  expect(job.log.slice(-2).map((line) => lineWords(line).title)).toEqual(['head, bolt 1', 'head, bolt 3']);
  const gate = door(job).gates.find(({ stage }) => stage === 'assembly')!;
  expect(gate.missing).toContain('Cylinder head, bolt 3: turned without rising');
  const [columns, ...rows] = tables(job)
    .torques.trim()
    .split('\r\n')
    .map((row) => row.split(','));
  const at = columns!.indexOf('bolt');
  expect(rows.map((row) => row[at])).toEqual(['1', '3']);
});
