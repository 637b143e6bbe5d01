import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../../../src/catalog/index.js';
import { type BillLine, fold, readEntry, written } from '../../../../src/job/index.js';
import { door } from '../../door.js';
import { jobId, log } from '../../entries.js';

const catalog = builtInCatalog();
type Add = ReturnType<typeof log>['add'];

function billOf(
  more: (add: Add) => void,
  architecture: 'overhead-valve' | 'two-stroke' = 'overhead-valve',
): BillLine[] {
  const { add, lines } = log();
  add('open', { tag: 4, title: 'Pump' });
  add('intake', { architecture, use: 'pump' });
  more(add);
  for (const line of lines) readEntry(line);
  return door(fold(jobId, lines)).bill;
}
const line = (bill: readonly BillLine[], name: string) => bill.find((l) => l.name === name);
const goal = (add: Add, component: string) =>
  add('goal', { component, title: component.replaceAll('-', ' '), why: '', state: 'wanted' });
const repair = (add: Add, which: string) =>
  add('decision', { about: 'fault', which, choice: 'repair', title: which, reason: '' });

describe('the bill of parts', () => {
  test('is empty while nothing is decided, and while the kind of engine is not known', () => {
    expect(billOf(() => undefined)).toEqual([]);
    const { add, lines } = log();
    goal(add, 'cylinder-head');
    expect(door(fold(jobId, lines)).bill).toEqual([]);
  });

  test('one-time parts come by themselves from what is reached and from what is in its way', () => {
    const bill = billOf((add) => goal(add, 'cylinder-head'));
    expect(line(bill, 'Head gasket')).toMatchObject({
      part: 'cylinder-head-head-gasket',
      component: 'cylinder-head',
      ifNeeded: false,
      why: ['not used twice; reached for: cylinder head'],
    });
    expect(line(bill, 'Rocker cover gasket')?.why).toEqual(['not used twice; in the way of: cylinder head']);
    expect(bill.some(({ component }) => component === 'crankcase-cover')).toBe(false);
  });

  test('and from what has come off, until it is back', () => {
    const off = (add: Add) =>
      add('step', { step: 'one', stage: 'teardown', title: 'Muffler', component: 'muffler', state: 'done' });
    expect(line(billOf(off), 'Exhaust gasket')?.why).toEqual(['not used twice; Muffler: off']);
    const back = billOf((add) => {
      off(add);
      add('step', { step: 'two', stage: 'assembly', title: 'Muffler', state: 'done', putsBack: 'one' });
    });
    expect(line(back, 'Exhaust gasket')).toBeUndefined();
  });

  test('a fault to be repaired brings its parts; repaired, declined or ruled out it brings none', () => {
    const bill = billOf((add) => repair(add, 'plug-fouled-or-cracked'));
    expect(line(bill, 'Spark plug')?.why).toContain(
      `for the repair: ${catalog.faults.find((f) => f.id === 'plug-fouled-or-cracked')!.name}`,
    );
    for (const choice of ['repaired', 'declined', 'excluded']) {
      const none = billOf((add) => {
        repair(add, 'plug-fouled-or-cracked');
        add('decision', { about: 'fault', which: 'plug-fouled-or-cracked', choice, title: 'x', reason: '' });
      });
      expect(none).toEqual([]);
    }
  });

  test('a part measured and to be renewed is on it', () => {
    const bill = billOf((add) =>
      add('decision', { about: 'component', which: 'valves', choice: 'renew', title: 'Valves', reason: '' }),
    );
    expect(bill.map(({ why }) => why)).toContainEqual(['decided: Valves']);
  });

  test('what is needed only if it is worn says so', () => {
    const bill = billOf((add) => goal(add, 'cylinder-head'));
    expect(line(bill, 'Dowels, cylinder head')).toMatchObject({ ifNeeded: true, note: 'if loose' });
  });

  test('where the gaskets stand one by one, a set of them does not stand beside them', () => {
    const names = billOf((add) => repair(add, 'rings-and-bore-worn')).map(({ name }) => name);
    expect(names).toContain('Piston rings');
    expect(names).toContain('Cover gasket');
    expect(names).not.toContain('Gasket set');
  });

  test('each handle and each name of a component stands once', () => {
    const bill = billOf((add) => {
      for (const fault of catalog.faults) repair(add, fault.id);
    });
    expect(bill.length).toBeGreaterThan(60);
    expect(new Set(bill.map(({ part }) => part)).size).toBe(bill.length);
  });

  test('look-alikes name both parts and how to tell them', () => {
    const bill = billOf((add) => goal(add, 'carburetor'));
    const gaskets = line(bill, 'Intake gaskets')!.lookAlikes;
    expect(gaskets.map(({ id }) => id)).toEqual(['intake-gaskets', 'air-cleaner-and-flange-gaskets']);
    expect(gaskets[1]).toMatchObject({
      name: 'Air-cleaner base gasket and carburetor flange gasket',
      twins: ['Air-cleaner gasket'],
    });
    expect(gaskets[0]!.tell).toMatch(/slot/);
  });

  test('oil is asked for by the maker’s amount where the sheet gives one', () => {
    const drained = (add: Add) => goal(add, 'crankcase-cover');
    expect(line(billOf(drained), 'Engine oil')).toMatchObject({ consumable: true, amount: 'to the mark' });
    const known = billOf((add) => {
      drained(add);
      add('spec', {
        spec: 'oil-capacity',
        label: 'Oil capacity',
        line: 'Oil 20 fl oz',
        value: written('20 fl oz', 'volume'),
        origin: { from: "maker's sheet", detail: 'service sheet, page 4' },
      });
    });
    expect(line(known, 'Engine oil')?.amount).toBe('20 fl oz, by service sheet, page 4');
    expect(
      line(
        billOf((add) => goal(add, 'cylinder'), 'two-stroke'),
        'Engine oil',
      ),
    ).toBeUndefined();
  });

  test('a cleaner that is planned is asked for', () => {
    const bill = billOf((add) =>
      add('cleaning', {
        cleaning: 'c1',
        title: 'Tank',
        materials: ['steel'],
        agent: 'chelator',
        state: 'planned',
      }),
    );
    expect(bill.map(({ name }) => name)).toEqual(['Chelating rust remover']);
  });

  test('a line that is on the list already says under which handle, whatever a person called it', () => {
    const bill = billOf((add) => {
      goal(add, 'cylinder-head');
      add('part', { part: 'head-gasket', name: 'head gasket', count: 1, state: 'wanted' });
    });
    expect(line(bill, 'Head gasket')?.listed).toBe('head-gasket');
    expect(line(bill, 'Exhaust gasket')?.listed).toBeUndefined();
  });

  test('a machine that is handed over asks for nothing', () => {
    const bill = billOf((add) => {
      goal(add, 'cylinder-head');
      add('hand-over', { receivedBy: 'owner', declined: [], nextDue: [] });
    });
    expect(bill).toEqual([]);
  });
});
