import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { inWords, playRounds, type Round } from './rounds.js';

const campaign = { name: 'dice', seed: 7, rounds: 9 };
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'wristpin-rounds-'));
  vi.spyOn(console, 'info').mockImplementation(() => {});
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
  vi.restoreAllMocks();
});

/** Notes what each round drew; fails in the given one, after it has counted. */
function thrower(failsAt?: number) {
  const thrown: [number, number][] = [];
  const play = async ({ number, chance, count, most }: Round) => {
    const eyes = 1 + Math.floor(chance() * 6);
    thrown.push([number, eyes]);
    count('eyes', eyes);
    most('eyes at once', eyes);
    if (number === failsAt) throw new Error('it rolled off the table');
  };
  return { thrown, play };
}

const numbers = (thrown: readonly [number, number][]) => thrown.map(([number]) => number);

describe('the rounds of a campaign', () => {
  test('broken off go on with the round that failed, and tell in the end what one run would have told', async () => {
    const whole = thrower();
    const told = await playRounds(campaign, whole.play, undefined);
    const broken = thrower(5);
    await expect(playRounds(campaign, broken.play, folder)).rejects.toThrow(
      'dice, round 5 of 9, seed 7: it rolled off the table',
    );
    const rest = thrower();
    expect(await playRounds(campaign, rest.play, folder)).toEqual(told);
    expect(numbers(rest.thrown)).toEqual([5, 6, 7, 8]);
    expect([...broken.thrown.slice(0, 5), ...rest.thrown]).toEqual(whole.thrown);
  });

  test('that were all played are not played again, and tell their figures again', async () => {
    const once = await playRounds(campaign, thrower().play, folder);
    const again = thrower();
    expect(await playRounds(campaign, again.play, folder)).toEqual(once);
    expect(again.thrown).toEqual([]);
  });

  test('begin anew with another seed or size, and beside a state that cannot be read', async () => {
    await playRounds(campaign, thrower().play, folder);
    for (const other of [
      { ...campaign, seed: 8 },
      { ...campaign, rounds: 4 },
    ]) {
      const { thrown, play } = thrower();
      await playRounds(other, play, folder);
      expect(thrown.length).toBe(other.rounds);
    }
    writeFileSync(join(folder, 'dice.json'), '{"campaign":');
    const { thrown, play } = thrower();
    await playRounds(campaign, play, folder);
    expect(thrown.length).toBe(9);
  });

  test('are told in words: what was counted, and the greatest', () => {
    expect(inWords({ counts: { kills: 500, lost: 0 }, greatest: { 'MB of memory': 411.6 } })).toBe(
      '500 kills, 0 lost, at most 412 MB of memory',
    );
  });
});
