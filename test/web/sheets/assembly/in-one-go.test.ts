import { describe, expect, test } from 'vitest';
import { inOneGo } from '../../../../src/web/sheets/assembly/in-one-go.js';
import { door } from '../../../job/door.js';
import { bench } from '../../../job/plan-job.js';

const engines = [
  ['side-valve', { governor: 'flyweight' }, ['cylinder-head', 'governor-lever', 'flywheel']],
  ['overhead-valve', { governor: 'flyweight' }, ['cylinder-head', 'governor-lever', 'flywheel']],
  ['two-stroke', { variants: { 'detachable-head': true } }, ['cylinder-head', 'flywheel']],
] as const;

describe.each(engines)(
  'the pieces of a %s engine that are said to be back in one touch',
  (kind, facts, goals) => {
    const at = bench(kind, facts);
    for (const goal of goals) at.want(goal);
    for (const step of at.plan().steps) at.takeOff(step);
    const plan = () => door(at.job()).assembly;
    const hurts = () => plan().steps.filter(({ checks }) => checks.some(({ safety }) => safety));

    test('are never one that can hurt somebody, and never stand behind one that is not back', () => {
      expect(hurts().length).toBeGreaterThan(2);
      let lots = 0;
      for (let next = plan().next; next; next = plan().next) {
        const lot = inOneGo(plan());
        expect(lot.flatMap(({ checks }) => checks).filter(({ safety }) => safety)).toEqual([]);
        if (lot.length > 1) lots += 1;
        const inOrder = plan().steps.filter(({ state }) => state !== 'back');
        expect(lot.map(({ off }) => off.step)).toEqual(
          inOrder.slice(0, lot.length).map(({ off }) => off.step),
        );
        at.putBack(next.off.step);
        for (const { step, gate } of plan().gates.filter(({ state }) => state === 'asked'))
          at.add('step', {
            step,
            stage: 'assembly',
            title: gate.name,
            state: 'done',
            checked: [...gate.demands],
          });
      }
      expect(lots).toBeGreaterThan(0);
      expect(plan().steps.every(({ state }) => state === 'back')).toBe(true);
    });
  },
);
