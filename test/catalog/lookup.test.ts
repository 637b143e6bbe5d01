import { describe, expect, test } from 'vitest';
import { builtInCatalog, cautionsFor } from '../../src/catalog/index.js';

const catalog = builtInCatalog();
const ids = (occasion: Parameters<typeof cautionsFor>[1]) =>
  cautionsFor(catalog, occasion).map(({ id }) => id);

describe('cautions come before the act', () => {
  test('leak-down: the shaft must be held', () => {
    expect(ids({ check: 'leak-down' })).toContain('leak-down-shaft-held');
  });

  test('caustic: never on aluminum', () => {
    expect(ids({ agent: 'caustic' })).toContain('caustic-never-on-aluminum');
  });

  test('the flywheel: puller, no prying', () => {
    expect(ids({ component: 'flywheel' })).toContain('flywheel-puller');
  });

  test('the first pull: carbon monoxide, overspeed and two ways to stop, the gravest first', () => {
    const found = cautionsFor(catalog, { runUp: 'first-pull' });
    expect(found.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['carbon-monoxide', 'overspeed', 'stop-two-ways']),
    );
    expect(found.map(({ severity }) => severity)).toEqual(
      found.map(({ severity }) => severity).toSorted((a, b) => b - a),
    );
  });

  test('nothing about to be done: nothing to shout', () => {
    expect(cautionsFor(catalog, {})).toEqual([]);
  });

  test('each caution is reached from something that can be done', () => {
    const occasions = [
      ...catalog.checks.map(({ id }) => ({ check: id })),
      ...catalog.components.map(({ id }) => ({ component: id })),
      ...catalog.agents.map(({ id }) => ({ agent: id })),
      ...catalog.runUp.map(({ id }) => ({ runUp: id })),
      ...catalog.faults.map(({ id }) => ({ fault: id })),
      { stage: 'hand-over' as const },
      { stage: 'run-up' as const },
    ];
    const reached = new Set(occasions.flatMap(ids));
    expect(catalog.cautions.filter(({ id }) => !reached.has(id)).map(({ id }) => id)).toEqual([]);
  });
});
