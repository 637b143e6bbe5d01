import { describe, expect, test } from 'vitest';
import { door } from '../door.js';
import { bench } from '../plan-job.js';

const soak = {
  cleaning: 'bowl',
  title: 'Carburetor bowl',
  materials: ['zinc-alloy'],
  agent: 'carburetor-dip',
  state: 'soaking' as const,
  soakMinutes: 30,
};

describe('what rings', () => {
  test('a soak rings when its minutes are over, and no more once it was taken out', () => {
    const at = bench('overhead-valve');
    const line = at.add('cleaning', soak);
    expect(door(at.job()).bells).toEqual([
      {
        key: `soaking ${line.id}`,
        at: Date.parse(line.at) + 30 * 60_000,
        words: 'carburetor bowl: its soak is over',
        stage: 'measure',
      },
    ]);
    at.add('cleaning', { ...soak, state: 'done' });
    expect(door(at.job()).bells).toEqual([]);
  });

  test('an engine that ran rings when it is cold enough for what comes off, and one that comes off cold does not', () => {
    const at = bench('overhead-valve');
    at.want('cylinder-head');
    expect(door(at.job()).bells).toEqual([]);
    const ran = at.add('observation', { check: 'smoke', title: 'Smoke', outcomes: ['none'] });
    const [bell] = door(at.job()).bells;
    expect(bell?.words).toBe('the engine is cold enough to go on');
    expect(bell!.at).toBeGreaterThan(Date.parse(ran.at));
  });
});
