import { expect, test } from 'vitest';
import { openEar } from '../../../src/cli/commands/open-ear.js';
import { mostPhrases } from '../../../src/hear/index.js';
import { type Choice, sayables, toldAloud } from '../../../src/web/talk/answers/choice.js';
import { phrases } from '../../../src/web/talk/answers/phrases.js';

const choice = (say: string | undefined, more: Partial<Choice> = {}): Choice => ({
  ...{ label: say ?? 'only touched', say, writes: true, act: () => undefined, ...more },
});

test('every phrase of step mode has two words or more, like no other, in words whose sound is known', async () => {
  const ear = await openEar();
  const all = Object.values(phrases);
  expect(all.length).toBeGreaterThan(10);
  expect(new Set(all).size).toBe(all.length);
  for (const phrase of all) {
    expect(phrase).toMatch(/^[a-z']+( [a-z']+)+$/);
    expect(phrase.split(' ').filter((word) => !ear.knows(word))).toEqual([]);
  }
});

test('what may be said is what can be touched now, and at most eight of it', () => {
  const many = Array.from({ length: 12 }, (_, n) => choice(`answer number ${n}`));
  expect(sayables({ key: 'a', choices: many })).toHaveLength(mostPhrases);
  const asked = [
    choice('go back', { disabled: true }),
    choice(undefined),
    choice('next one'),
    toldAloud('how tight', '140 inch pounds'),
  ];
  expect(sayables({ key: 'a', choices: asked })).toEqual([
    { phrase: 'next one', writes: true },
    { phrase: 'how tight', writes: false },
  ]);
});
