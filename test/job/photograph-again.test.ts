import { expect, test } from 'vitest';
import { type Body, fold } from '../../src/job/index.js';
import { jobId, log } from './entries.js';

const picture = { mime: 'image/png', bytes: 9, width: 3, height: 3 } as const;
const of = (sha: string, caption: string, more: Partial<Body<'photograph'>> = {}) => ({
  picture: { ...picture, sha256: sha.repeat(64) },
  caption,
  stage: 'intake' as const,
  when: 'before' as const,
  ...more,
});

test('a picture of which it is said anew what it shows keeps its place and its time; struck, the first words are back', () => {
  const { add, lines } = log();
  add('open', { tag: 7, title: 'invented' });
  const first = add('photograph', of('a', 'back'));
  add('photograph', of('b', 'front'));
  const anew = add('photograph', of('a', 'right side', { insteadOf: first.id }));
  const shown = () => fold(jobId, lines).photographs.map(({ caption, at }) => [caption, at]);
  expect(shown()).toEqual([
    ['right side', first.at],
    ['front', lines[2]!.at],
  ]);
  add('photograph', of('a', 'left side', { insteadOf: first.id }));
  expect(shown()[0]).toEqual(['left side', first.at]);
  add('strike', { entry: anew.id, reason: 'slip' });
  expect(shown()[0]).toEqual(['left side', first.at]);
  add('strike', { entry: first.id, reason: 'another machine' });
  expect(shown()).toEqual([['front', lines[2]!.at]]);
});
