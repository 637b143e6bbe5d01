import type { AssemblyPlan, BackStep } from '../../../job/index.js';

/**
 * The pieces that can go back one after the other before anything must be looked at, waited for or tightened to the maker's
 * torque: such a piece is done by itself, and so is one that can hurt somebody where it is not back as it should be.
 */
export function inOneGo({ steps, gates }: AssemblyPlan): BackStep[] {
  const open = steps.filter(({ state }) => state !== 'back');
  const closing = new Set(gates.filter((g) => g.state !== 'passed').flatMap((g) => g.gate.after));
  const alone = open.findIndex(
    (s) =>
      s.state === 'waits' ||
      s.checks.some(({ safety }) => safety) ||
      s.renew.some(({ state }) => state === 'late') ||
      s.torques.some(({ spec }) => spec !== undefined),
  );
  const upTo = open.findIndex((s) => s.components.some((id) => closing.has(id)));
  const free = open.slice(0, alone < 0 ? open.length : alone);
  return upTo < 0 ? free : free.slice(0, upTo + 1);
}
