import { describe, expect, test } from 'vitest';
import { worksheets } from '../../src/fasten/index.js';
import { printText, run, type Worksheet, WorksheetError } from '../../src/worksheet/index.js';
import { worksheetsOfRoom } from '../support/room-worksheets.js';

const sheet = (id: string): Worksheet => {
  const found = worksheets.find((each) => each.id === id);
  if (!found) throw new Error(`no worksheet ${id}`);
  return found;
};
const answers = (id: string, given: Record<string, string>) =>
  Object.fromEntries(run(sheet(id), given).map((each) => [each.id, each]));
const text = (id: string, given: Record<string, string>) =>
  printText(run(sheet(id), given), 'inch').join('\n');
const refused = (id: string, given: Record<string, string>) => {
  try {
    run(sheet(id), given);
  } catch (error) {
    if (error instanceof WorksheetError) return error;
    throw error;
  }
  throw new Error(`${id} answered`);
};

describe('worksheets of the room', () => {
  const examples = worksheets.flatMap((worksheet) =>
    worksheet.examples.map((example) => ({ worksheet, example })),
  );

  worksheetsOfRoom(worksheets);

  test('every answer says where it comes from', () => {
    for (const { worksheet, example } of examples) {
      for (const { id, origin } of run(worksheet, example.given)) {
        expect(
          origin.from === "maker's sheet" || (origin.detail?.length ?? 0) > 3,
          `${worksheet.id} ${id}`,
        ).toBe(true);
      }
    }
  });

  test('the eighteen questions of the room are there', () => {
    expect(worksheets.map(({ id }) => id)).toEqual(
      expect.arrayContaining([
        'bolt-strength',
        'clamp-from-torque',
        'into-aluminum',
        'loosening-order',
        'lubricant-correction',
        'name-thread',
        'plug-torque',
        'tap-drill',
        'thread-data',
        'thread-repair',
        'tightening-order',
        'tightening-passes',
        'torque-for-bolt',
        'torque-from-clamp',
        'torque-long-form',
        'torque-plausible',
        'wrench-adapter',
        'wrench-fit',
      ]),
    );
  });
});

describe('what a reader sees', () => {
  test('disagreeing sources stand side by side with what each would give', () => {
    const seen = text('torque-from-clamp', {
      clamp: '3000 lbf',
      thread: '5/16-18',
      condition: 'zinc plated, dry',
    });
    expect(seen).toMatch(/K 0\.15: plated \(IFI/);
    expect(seen).toMatch(/K 0\.2: zinc-plated \(Mechanical/);
    expect(seen).toMatch(/K 0\.295: zinc, dry \(Handbook/);
  });

  test('a K of one’s own goes before the table', () => {
    const found = answers('torque-for-bolt', { thread: 'M8', grade: '8.8', condition: 'oiled', k: '0.14' });
    expect(found.k!.origin.from).toBe("shop's own");
    expect(found['published-k']).toBeUndefined();
    expect(found['torque-least']).toBeUndefined();
  });

  test('an unknown bolt says that it was taken as the lowest', () => {
    expect(text('torque-for-bolt', { thread: '1/4-20', grade: 'unknown', condition: 'oiled' })).toMatch(
      /taken as SAE 1, the lowest/,
    );
  });

  test('a joint that stays is warned about, one that comes apart is not', () => {
    const given = { thread: 'M8', grade: '8.8', condition: 'oiled' };
    expect(answers('torque-for-bolt', { ...given, joint: 'permanent' }).caution).toBeDefined();
    expect(answers('torque-for-bolt', given).caution).toBeUndefined();
  });

  test('140 ft-lb on 5/16-18 fails with the likely reading', () => {
    expect(text('torque-plausible', { torque: '140 ft-lb', thread: '5/16-18' })).toMatch(
      /fail: .*140 in-lb would be plausible/,
    );
  });

  test('the long form wants torque or clamp, not both and not neither', () => {
    expect(refused('torque-long-form', { thread: 'M8' }).field).toBe('torque');
    expect(refused('torque-long-form', { thread: 'M8', torque: '20 N·m', clamp: '10 kN' }).field).toBe(
      'clamp',
    );
    const there = answers('torque-long-form', { thread: 'M8', torque: '20 N·m' });
    const value = there.torque!.value;
    expect(value.type === 'quantity' && value.quantity.si).toBeCloseTo(20, 9);
  });

  test('a range of torque stands where the sources disagree', () => {
    const found = answers('torque-for-bolt', { thread: 'M8', grade: '8.8', condition: 'zinc-dry' });
    const nm = (id: string) => {
      const value = found[id]!.value;
      return value.type === 'quantity' ? value.quantity.si : Number.NaN;
    };
    expect(nm('torque-most') / nm('torque-least')).toBeCloseTo(0.295 / 0.15, 9);
    expect(nm('torque')).toBeGreaterThan(nm('torque-least'));
  });

  test('a plug is not a bolt, and engagement that is short fails', () => {
    expect(refused('plug-torque', { thread: 'M8', seat: 'conical', head: 'iron' }).field).toBe('thread');
    const given = { thread: 'M8', torque: '25 N·m' };
    const engagement = (more: Record<string, string>) => {
      const value = answers('into-aluminum', { ...given, ...more }).engagement!.value;
      return value.type === 'verdict' ? value.verdict : undefined;
    };
    expect(engagement({})).toBe('cannot-decide');
    expect(engagement({ engagement: '12 mm' })).toBe('fail');
    expect(engagement({ engagement: '16 mm' })).toBe('pass');
  });

  test('a torque in the wrong condition is said to be less or more, not only set', () => {
    const given = { torque: '20 N·m', given: 'oiled', now: 'bare-dry' };
    expect(text('lubricant-correction', given)).toMatch(/11\.1 % more than printed/);
    expect(text('lubricant-correction', { ...given, now: 'oiled' })).toMatch(/as printed/);
  });

  test("the maker's sequence goes before the computed one, and its origin says so", () => {
    const given = { holes: '0,0 60,0 60,60 0,60', order: '2, 4, 1, 3' };
    expect(answers('tightening-order', given).order).toMatchObject({
      value: { text: '2 4 1 3' },
      origin: { from: "maker's sheet" },
    });
    expect(refused('tightening-order', { ...given, order: '2, 4, 1, 1' }).message).toMatch(
      /1 named more than once; 3 left out/,
    );
  });

  test('a wrench that is not written so that it can be read is refused, naming the field', () => {
    expect(refused('wrench-fit', { torque: '140 in-lb', wrenches: 'the red one' }).field).toBe('wrenches');
    expect(refused('wrench-fit', { torque: '140 in-lb', wrenches: 'red: 5 ft-lb min 4 %' }).field).toBe(
      'wrenches',
    );
    expect(text('wrench-fit', { torque: '2 in-lb', wrenches: 'red: 5-50 ft-lb 4%' })).toMatch(
      /none of these/,
    );
  });

  test('a final round is listed as one', () => {
    const found = text('tightening-passes', {
      torque: '20 ft-lb',
      parts: '0.3, 0.7, 1',
      round: 'yes',
      order: '1, 3, 2, 4',
    });
    expect(found).toMatch(/final round: 20\.0 ft-lb/);
    expect(found).toMatch(/Turns of the wrench: 16/);
  });

  test('leaves of two systems at once are refused', () => {
    expect(refused('name-thread', { diameter: '7.85 mm', tpi: '18', pitch: '1.25 mm' }).field).toBe('pitch');
    expect(text('name-thread', { diameter: '7.85 mm', pitch: '1.25 mm' })).toMatch(/Thread: M8×1\.25/);
    expect(text('name-thread', { diameter: '0.247 in', where: 'bolt', tpi: '20' })).toMatch(
      /Thread: 1\/4-20/,
    );
    expect(text('name-thread', { diameter: '0.257 in', where: 'tapped hole', tpi: '18' })).toMatch(
      /Thread: 5\/16-18/,
    );
  });

  test('an insert is left out of the figures when none fits', () => {
    const found = answers('thread-repair', { thread: 'M8', metal: 'aluminum', depth: '5 mm' });
    expect(found['insert-drill']).toBeUndefined();
    expect(found['wire-insert']).toMatchObject({
      value: { items: [expect.stringMatching(/^not possible/)] },
    });
  });
});
