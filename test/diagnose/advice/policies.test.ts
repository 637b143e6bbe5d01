import { expect, test } from 'vitest';
import { policies } from '../../../bench/advice/policies.js';
import { infer } from '../../../src/infer/index.js';
import { catalog, machine, seen } from '../machine/support.js';

test('the advice bench goes on where no check is left but whether it starts', () => {
  const all = machine([]);
  const made = machine(seen(...all.checks.map(({ check }) => [check.id, check.outcomes[0]!.id] as const)));
  const open = all.checks.filter(({ check }) => check.id === 'does-it-start');
  const inference = infer(made.network);
  if (inference.kind !== 'exact') throw new Error('not exact');
  const standing = { catalog, machine: made, inference, off: new Set<string>(), runs: undefined, open };
  expect(policies['this advice'](standing as never).check.id).toBe('does-it-start');
});
