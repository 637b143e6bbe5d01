import { describe, expect, test } from 'vitest';
import { keepBells } from '../../../src/web/data/bells.js';

describe('a device keeps its bells', () => {
  const job = { id: 'a', tag: 7 };
  const bell = { key: 'soaking 1', at: 1_000_000, words: 'bowl', stage: 'measure' as const };

  test('what was heard stays heard, until its time is another', () => {
    const kept = keepBells([], job, [bell], 0).map((each) => ({ ...each, heard: true as const }));
    expect(keepBells(kept, job, [bell], 0)[0]?.heard).toBe(true);
    expect(keepBells(kept, job, [{ ...bell, at: 2_000_000 }], 0)[0]?.heard).toBeUndefined();
  });

  test('those of another job stay, those that are over by the log go', () => {
    const both = keepBells(keepBells([], job, [bell], 0), { id: 'b', tag: 8 }, [bell], 0);
    expect(both.map((each) => each.job)).toEqual(['a', 'b']);
    expect(keepBells(both, job, [], 0).map((each) => each.job)).toEqual(['b']);
  });

  test('what was over half a day before this device heard of it calls nobody', () => {
    expect(keepBells([], job, [bell], bell.at + 13 * 3_600_000)[0]?.heard).toBe(true);
    expect(keepBells([], job, [bell], bell.at + 3_600_000)[0]?.heard).toBeUndefined();
  });
});
