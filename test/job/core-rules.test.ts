import { describe, expect, test } from 'vitest';
import { fold, inOrder, type RawEntry, readEntry } from '../../src/job/index.js';
import { jobId, length, log } from './entries.js';

/** Rules that a small change of the code would break without a word anywhere else. */

const note = (id: string, at: string, words: string): RawEntry => ({
  ...log().add('note', { words }),
  id: `01900000-0000-7000-8000-${id.padStart(12, '0')}`,
  at,
});

describe('lines written at the same instant', () => {
  const instant = '2026-03-01T09:00:00+00:00';
  /** the same instant on a wall clock two hours on */
  const elsewhere = '2026-03-01T11:00:00+02:00';
  const lines = [note('3', instant, 'c'), note('1', elsewhere, 'a'), note('2', instant, 'b')];
  const words = (entries: readonly RawEntry[]) =>
    entries.map(({ body }) => (body as { words: string }).words);

  test('stand in the order of their ids, whichever came first', () => {
    expect(words(inOrder(lines))).toEqual(['a', 'b', 'c']);
    expect(words(inOrder([...lines].reverse()))).toEqual(['a', 'b', 'c']);
  });

  test('give the same job on every device: the last of them holds', () => {
    const tag = (id: string, number: number): RawEntry => ({
      ...log().add('intake', { owner: `owner ${number}` } as never),
      id: `01900000-0000-7000-8000-${id.padStart(12, '0')}`,
      at: instant,
    });
    const [first, second] = [tag('1', 1), tag('2', 2)];
    const one = fold(jobId, [first, second]);
    const other = fold(jobId, [second, first]);
    expect(one.log.map(({ entry }) => entry.id)).toEqual(other.log.map(({ entry }) => entry.id));
    expect(one.log.map(({ entry }) => entry.id)).toEqual([first.id, second.id]);
  });

  test('an earlier instant comes first, whatever its id', () => {
    const early = note('9', '2026-03-01T08:59:59+00:00', 'early');
    expect(words(inOrder([...lines, early]))).toEqual(['early', 'a', 'b', 'c']);
  });
});

describe('a written number and the one beside it', () => {
  const good = log().add('measurement', { measure: 'bore', title: 'Bore', value: length('2.6802 in') });
  const withSi = (change: (si: number) => number) => {
    const value = length('2.6802 in');
    return readEntry({
      ...good,
      body: { measure: 'bore', title: 'Bore', value: { ...value, si: change(value.si) } },
    });
  };

  test('agree to a billionth, as a conversion there and back does', () => {
    expect(() => withSi((si) => si * (1 + 5e-10))).not.toThrow();
    expect(() => withSi((si) => si * (1 - 5e-10))).not.toThrow();
  });

  test('are refused when they differ by more, on either side', () => {
    expect(() => withSi((si) => si * (1 + 2e-9))).toThrow(/otherwise/);
    expect(() => withSi((si) => si * (1 - 2e-9))).toThrow(/otherwise/);
    expect(() => withSi((si) => -si)).toThrow(/otherwise/);
    expect(() => withSi(() => 0)).toThrow(/otherwise/);
  });

  test('of nothing agree, and nothing is not a thousandth', () => {
    const value = length('0 mm');
    const entry = (si: number) =>
      readEntry({ ...good, body: { measure: 'bore', title: 'Bore', value: { ...value, si } } });
    expect(() => entry(0)).not.toThrow();
    expect(() => entry(0.001)).toThrow(/otherwise/);
  });
});
