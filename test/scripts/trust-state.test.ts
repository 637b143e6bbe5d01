import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { beginTrust, endTrust, figures, notePassed } from '../../scripts/trust-state.mjs';
import { playRounds } from '../support/rounds.js';

let folder: string;
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), 'wristpin-trust-')), 'state');
  vi.spyOn(console, 'info').mockImplementation(() => {});
});
afterEach(() => {
  rmSync(join(folder, '..'), { recursive: true, force: true });
  vi.restoreAllMocks();
});

const begin = (program = 'a', again = false) => beginTrust({ again, program, folder });
const campaign = { name: 'kills on SQLite', seed: 1, rounds: 4 };

describe('npm run trust', () => {
  test('begins anew, and after an interruption goes on with what has not passed', async () => {
    expect(begin()).toEqual({ passed: [], words: 'Begins anew.' });
    notePassed('test/store/crash.test.ts', folder);
    notePassed('test/store/crash.test.ts', folder);
    notePassed('test/infer/bound.test.ts', folder);
    const broken = async ({ number, count }: { number: number; count: (what: string) => void }) => {
      if (number === 2) throw new Error('the lights went out');
      count('kills');
    };
    await expect(playRounds(campaign, broken, folder)).rejects.toThrow('the lights went out');
    const { passed, words } = begin();
    expect(passed).toEqual(['test/store/crash.test.ts', 'test/infer/bound.test.ts']);
    expect(words).toContain('2 campaigns have passed, 1 in rounds');
    expect(figures(folder)).toMatchObject([{ campaign, next: 2, counts: { kills: 2 } }]);
  });

  test('begins anew when the program is another one by now, when it is asked to, and after all have passed', () => {
    begin();
    notePassed('test/store/crash.test.ts', folder);
    expect(begin('b')).toEqual({ passed: [], words: 'The program has changed since: begins anew.' });
    notePassed('test/store/crash.test.ts', folder);
    expect(begin('b', true)).toEqual({ passed: [], words: 'Begins anew.' });
    notePassed('test/store/crash.test.ts', folder);
    endTrust(folder);
    expect(existsSync(folder)).toBe(false);
    expect(begin('b').passed).toEqual([]);
  });
});
