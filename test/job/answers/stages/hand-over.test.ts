import { describe, expect, test } from 'vitest';
import { door } from '../../door.js';
import { bench } from '../../plan-job.js';

const handOver = (at: ReturnType<typeof bench>) => door(at.job()).gates.find((g) => g.stage === 'hand-over')!;
const confirm = (at: ReturnType<typeof bench>, fault: string, choice = 'repair', reason = '') =>
  at.add('decision', { about: 'fault', which: fault, title: fault, choice, reason });

describe('ready to hand over', () => {
  test('never with a fault that was found and not repaired', () => {
    const at = bench('side-valve', {});
    confirm(at, 'rings-stuck');
    expect(handOver(at).blocks).toContain('found and not repaired: rings stuck in grooves');
    confirm(at, 'rings-stuck', 'repaired');
    expect(handOver(at).blocks).toEqual([]);
  });

  test('never with an old part in for now and no reason', () => {
    const at = bench('two-stroke', {});
    const old = {
      about: 'part',
      which: 'diaphragm',
      title: 'Old diaphragm back in',
      choice: 'provisional',
    } as const;
    at.add('decision', { ...old, reason: '' });
    expect(handOver(at).blocks).toEqual(['in for now, and nobody said why: Old diaphragm back in']);
    at.add('decision', { ...old, reason: 'the owner needs it on Saturday' });
    expect(handOver(at).blocks).toEqual([]);
  });

  test('never above the owner’s limit without a word of who agreed', () => {
    const at = bench('side-valve', { stopLimit: { amount: 150, currency: '$' } });
    const quote = (reason: string) =>
      at.add('decision', {
        about: 'machine',
        title: 'It is to be repaired',
        choice: 'repair',
        amount: { amount: 240, currency: '$' },
        reason,
      });
    quote('');
    expect(handOver(at).blocks).toEqual(['quoted above the owner’s limit: say who agreed']);
    quote('called on Tuesday, go on');
    expect(handOver(at).blocks).toEqual([]);
  });
});

describe('the owner declines', () => {
  test('it can go back as it is, and what is unsafe is said', () => {
    const at = bench('two-stroke', { use: 'trimmer', complaints: ['cranks-never-fires'] });
    confirm(at, 'stop-control-dead');
    confirm(at, 'bore-scored');
    expect(handOver(at).state).toBe('blocked');
    at.add('decision', {
      about: 'machine',
      title: 'The owner declines',
      choice: 'declined',
      reason: 'a new one costs less',
    });
    const { asItIs, nextDue, safetyNotShown } = door(at.job());
    expect(handOver(at).blocks).toEqual([]);
    expect(safetyNotShown).toEqual([]);
    expect(nextDue).toEqual([]);
    expect(asItIs).toMatchObject({ runs: 'It does not run' });
    expect(asItIs!.unsafe).toContain('Stop control or operator-presence control does not stop the engine');
    expect(asItIs!.unsafe).not.toContain('The stop control does not stop it');
  });

  test('one that is to be repaired is not handed back as it is', () => {
    expect(door(bench('side-valve', {}).job()).asItIs).toBeUndefined();
  });
});
