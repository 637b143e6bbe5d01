import { expect, test } from 'vitest';
import { type Answers, fold } from '../../../src/job/index.js';
import { mower, pump } from '../../demo/invented.js';
import { door } from '../door.js';
import { jobId, log } from '../entries.js';

test.each([pump, mower])(
  'every answer of an invented job is worked out once, however often it is asked',
  (job) => {
    const counts = new Map<string, number>();
    const answers = door(job, { onWork: (member) => counts.set(member, (counts.get(member) ?? 0) + 1) });
    const members = Object.getOwnPropertyNames(answers) as (keyof Answers)[];
    const first = members.map((member) => answers[member]);
    expect(members.map((member) => answers[member])).toEqual(first);
    expect(counts.get('findings')).toBe(1);
    expect([...counts].filter(([, times]) => times > 1)).toEqual([]);
  },
);

test('what one answer needs of another is not worked out again', () => {
  const counts: string[] = [];
  const answers = door(pump, { onWork: (member) => counts.push(member) });
  for (const sheet of ['gates', 'findings', 'evidence', 'lastMove', 'assembly', 'tally'] as const)
    void answers[sheet];
  expect(counts.filter((member) => member === 'machine')).toHaveLength(1);
  expect(counts.filter((member) => member === 'tally')).toHaveLength(1);
  expect(new Set(counts).size).toBe(counts.length);
});

test('a line that says nothing of the machine leaves its network and its inference as they are', () => {
  const { add, lines } = log();
  add('open', { tag: 1, title: 'A mower' });
  add('intake', { architecture: 'overhead-valve', complaints: ['cranks-never-fires'] });
  add('observation', { check: 'spark-gap', title: 'Spark across the gap', outcomes: ['none'] });
  const before = door(fold(jobId, lines));
  const { machine, inference } = before;
  add('note', { words: 'the owner rang' });
  add('intake', { owner: 'M. Okoro', missing: 'the air filter cover' });
  add('part', { part: 'gasket', name: 'Head gasket', count: 1, state: 'wanted' });
  const after = door(fold(jobId, lines));
  expect(after.machine).toBe(machine);
  expect(after.inference).toBe(inference);
  add('observation', { check: 'plug-tip', title: 'The plug’s tip', outcomes: ['wet'] });
  const more = door(fold(jobId, lines));
  expect(more.machine).not.toBe(machine);
  expect(more.inference).not.toBe(inference);
  // and the line before it is left out again without being worked out anew
  expect(more.on(fold(jobId, lines.slice(0, -1))).machine).toBe(machine);
});
