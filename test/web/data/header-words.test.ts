import { describe, expect, test } from 'vitest';
import type { RawEntry } from '../../../src/job/index.js';
import type { Outbox } from '../../../src/web/data/outbox/outbox.js';
import type { Reach } from '../../../src/web/data/outbox/rules.js';
import { stateWords } from '../../../src/web/data/outbox/words.js';

/** What the head of every page says, in every state that a device can be in. */
const line: RawEntry = {
  ...{ id: '01900000-0000-7000-8000-000000000001', job: '01900000-0000-7000-8000-00000000000a' },
  ...{ at: '2026-03-01T08:00:00Z', by: 'bench', kind: 'note', v: 1, body: { words: 'one' } },
};
const reaches: readonly Reach[] = [
  ...(['not asked', 'reached', 'no network'] as const),
  ...(['no answer', 'out of order', 'not paired'] as const),
];
const held: readonly [string, Partial<Outbox>][] = [
  ['nothing held', {}],
  ['not read yet', { unread: true }],
  ['being kept', { keeping: 1 }],
  ['a line waits', { waiting: [line] }],
  ['a picture waits', { pictures: 1 }],
  ['a sound waits', { sounds: 1 }],
  ['all three wait', { waiting: [line], pictures: 1, sounds: 2 }],
  ['both wait', { waiting: [line, line], pictures: 3, part: 0.4 }],
  ['one is refused', { refused: [{ reason: 'too large', entry: line }] }],
  ['one is refused, others wait', { refused: [{ reason: 'too large', entry: line }], waiting: [line] }],
  ['the device cannot keep', { trouble: 'This device has no room.' }],
  ['what waited here is gone', { missing: { lines: 2, pictures: 1 } }],
];
const stateOf = (reach: Reach, more: Partial<Outbox>): Outbox => ({
  ...{ waiting: [], keeping: 0, pictures: 0, sounds: 0, refused: [], sending: false, reach },
  ...more,
});

describe('the head of a page', () => {
  test('says “all saved” where nothing is held and the store was reached, and nowhere else', () => {
    for (const reach of reaches)
      for (const [name, more] of held) {
        const { words, look } = stateWords(stateOf(reach, more));
        const isSaved = reach === 'reached' && name === 'nothing held';
        expect(words === 'all saved', `${reach}, ${name}: ${words}`).toBe(isSaved);
        expect(look === 'saved', `${reach}, ${name}`).toBe(isSaved);
        expect(/saved/.test(words), `${reach}, ${name}: ${words}`).toBe(isSaved);
      }
  });

  test('leads to what is held wherever anything is', () => {
    for (const reach of reaches)
      for (const [name, more] of held)
        expect(stateWords(stateOf(reach, more)).isLink, `${reach}, ${name}`).toBe(
          !['nothing held', 'not read yet', 'being kept'].includes(name),
        );
  });

  test.each([
    ['no network', {}, 'no network', '; nothing waits here'],
    ['no answer', {}, 'store not reached', '; nothing waits here'],
    ['no network', { waiting: [line] }, '1 waiting to send, no network', undefined],
    ['out of order', { pictures: 2 }, '2 pictures to send, the store is out of order', undefined],
    ['reached', { waiting: [line], pictures: 1, part: 0.4 }, '1 waiting to send', ', 1 picture (40 %)'],
    ['no network', { waiting: [line], sounds: 1 }, '1 waiting to send, no network', ', 1 sound'],
    ['reached', { pictures: 1, sounds: 2 }, '1 picture and 2 sounds to send', undefined],
    ['not paired', { waiting: [line] }, 'not paired any more', ': 1 line is still on this device'],
    ['reached', { missing: { lines: 2, pictures: 1 } }, '2 lines and 1 picture missing: look', undefined],
  ] as const)('%s, %j: “%s”', (reach, more, words, rest) => {
    const said = stateWords(stateOf(reach, more));
    expect([said.words, said.more]).toEqual([words, rest]);
  });
});
