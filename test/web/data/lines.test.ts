import { expect, test } from 'vitest';
import { entryVersion, nothingTaught, type RawEntry } from '../../../src/job/index.js';
import { answersOf } from '../../../src/web/data/answers-of.js';
import { linesOf, sameLines, shopOf } from '../../../src/web/data/lines.js';

const job = '0198c0de-0000-7000-8000-00000000000a';
const line = (n: number, text: string, of = job): RawEntry => ({
  id: `0198c0de-0000-7000-8000-${String(n).padStart(12, '0')}`,
  job: of,
  at: `2026-11-28T10:00:${String(n % 60).padStart(2, '0')}+00:00`,
  by: 'bench',
  kind: 'note',
  v: entryVersion,
  body: { stage: 'intake', words: text },
});

test('a line that comes again, from the store or the outbox, stays the same object', () => {
  const first = line(1, 'one');
  expect(sameLines([first])).toEqual([first]);
  expect(sameLines([{ ...first }])[0]).toBe(first);
});

test('the store’s lines and the unsent ones of this log stand together, each once, and the list stays the same', () => {
  const [stored, unsent, elsewhere] = [
    line(11, 'stored'),
    line(12, 'unsent'),
    line(13, 'elsewhere', 'another'),
  ];
  const lines = linesOf(job, sameLines([stored]), [unsent, elsewhere]);
  expect(lines).toEqual([stored, unsent]);
  // the store has acknowledged it, the outbox still holds it
  const both = linesOf(job, sameLines([{ ...stored }, { ...unsent }]), [unsent]);
  expect(both).toBe(lines);
  expect(linesOf(job, sameLines([stored, unsent, line(14, 'more')]), [])).not.toBe(lines);
});

test('a log that nobody has read yet is empty', () => {
  expect(linesOf('unread', undefined, [])).toEqual([]);
});

test('the shop is folded once for the same lines', () => {
  const lines: readonly RawEntry[] = [];
  const shop = shopOf(lines);
  expect(shopOf(lines)).toBe(shop);
  expect(shopOf([...lines])).not.toBe(shop);
});

test('the door to a job stays the same until its lines, the shop or what its jobs taught is another', () => {
  const lines = sameLines([line(21, 'one')]);
  const shop = shopOf([]);
  const answers = answersOf(job, lines, shop, nothingTaught);
  expect(answersOf(job, lines, shop, nothingTaught)).toBe(answers);
  expect(answersOf(job, [...lines], shop, nothingTaught)).not.toBe(answers);
  const now = answersOf(job, lines, shop, nothingTaught);
  expect(answersOf(job, lines, shop, { ...nothingTaught })).not.toBe(now);
  expect(answersOf(job, lines, { ...shop }, nothingTaught)).not.toBe(now);
});
