import { expect, test } from 'vitest';
import type { Answers } from '../../../src/job/index.js';
import { mower, pump } from '../../demo/invented.js';
import { door } from '../door.js';

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
