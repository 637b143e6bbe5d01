import { describe, expect, test } from 'vitest';
import { of, type Quantity, QuantityError, requirePlausible } from '../../src/quantity/index.js';
import {
  type Ask,
  amount,
  ask,
  describe as describeWorksheet,
  type Given,
  optional,
  practice,
  Refusal,
  run,
  type Worksheet,
  WorksheetError,
  words,
  worksheet,
} from '../../src/worksheet/index.js';
import { sheet } from './sheet.js';

function refusal(worksheet: Worksheet, given: Record<string, string>): WorksheetError {
  try {
    run(worksheet, given);
  } catch (error) {
    if (error instanceof WorksheetError) return error;
    throw error;
  }
  return expect.fail('answered where a refusal was due');
}

type Asks = Readonly<Record<string, Ask<unknown>>>;

/** What `compute` is given for these texts. */
function given<F extends Asks>(fields: F, written: Record<string, string>): Given<F> {
  let seen: Given<F> | undefined;
  run(
    sheet(fields, (each) => {
      seen = each;
      return [];
    }),
    written,
  );
  return seen ?? expect.fail('the worksheet did not compute');
}

const help = 'For the test.';
const torque = ask.quantity('torque', 'TORQUE', help);
const everyKind = {
  torque,
  set: ask.in('ft-lb', 'SET', help),
  thread: ask.thread('THREAD', help),
  grade: ask.choice('GRADE', help, { 'sae-5': 'SAE grade 5', unknown: 'Not known' }),
  side: ask.choice('SIDE', help, ['left', 'right']),
  factor: ask.number('FACTOR', help),
  bolts: ask.count('BOLTS', help),
  name: ask.text('NAME', help),
  holes: ask.points('HOLES', help),
  readings: ask.list('pressure', 'READINGS', help),
  weights: ask.numbers('WEIGHTS', help),
};
const everyKindWritten = {
  torque: '140 in-lb',
  set: '140 in-lb',
  thread: '5/16-18',
  grade: 'sae-5',
  side: 'Left',
  factor: '0.18',
  bolts: '8',
  name: 'head bolts',
  holes: '0,0 60,0 60,40 0,40',
  readings: '60, 62, 61 psi',
  weights: '1; 2,5; 3/4',
};

describe('every field is read as it asks', () => {
  const each = given(everyKind, everyKindWritten);

  test('quantities as written, or as a number in a named unit', () => {
    expect(each.torque).toMatchObject({ kind: 'torque', unit: 'in-lb', written: '140 in-lb' });
    expect(each.torque.si).toBeCloseTo(15.818, 3);
    expect(each.set).toBeCloseTo(140 / 12, 12);
  });

  test('threads, choices, numbers, counts, words', () => {
    expect(each.thread.name).toBe('5/16-18');
    expect(each.grade).toBe('sae-5');
    expect(each.side).toBe('left');
    expect(each.factor).toBe(0.18);
    expect(each.bolts).toBe(8);
    expect(each.name).toBe('head bolts');
  });

  test('places and lists', () => {
    expect(each.holes).toHaveLength(4);
    expect(each.holes[2]).toEqual({ xMm: 60, yMm: 40 });
    expect(each.readings.map(({ si }) => si)).toEqual([60, 62, 61].map((psi) => of(psi, 'psi').si));
    expect(each.weights).toEqual([1, 2.5, 0.75]);
  });

  test('a choice may be said by its label', () => {
    expect(given(everyKind, { ...everyKindWritten, grade: 'Not Known' }).grade).toBe('unknown');
  });

  test('a unit that is none is found when the sheet is made, not when it is used', () => {
    expect(() => ask.in('mn', 'BORE', help)).toThrow(QuantityError);
  });

  test('a description says the kind of each and no more than JSON can carry', () => {
    const { fields } = describeWorksheet(sheet(everyKind));
    expect(fields.map(({ id, kind }) => [id, kind])).toEqual([
      ['torque', 'torque'],
      ['set', 'torque'],
      ['thread', 'thread'],
      ['grade', 'choice'],
      ['side', 'choice'],
      ['factor', 'number'],
      ['bolts', 'count'],
      ['name', 'text'],
      ['holes', 'points'],
      ['readings', 'list'],
      ['weights', 'list'],
    ]);
    expect(JSON.parse(JSON.stringify(fields))).toEqual(fields);
  });
});

/** Read by the compiler: each line under an expected error must not compile. `npm test` runs the compiler first. */
test('a misspelt field, or one of another kind, does not compile', () => {
  const bore = ask.in('mm', 'BORE', help);
  const rod = ask.in('mm', 'ROD', help, { optional: true });
  const half = ask.in('mm', 'HALF', help, { optional: true, standard: '1 mm' });
  // @ts-expect-error there is no such field
  sheet({ bore }, ({ boer }) => [amount('a', 'A', Number(boer), 'mm', practice)]);
  // @ts-expect-error a choice is no number
  sheet({ side: everyKind.side }, ({ side }) => [amount('a', 'A', side, 'mm', practice)]);
  // @ts-expect-error a choice is one of its own
  sheet({ side: everyKind.side }, ({ side }) => (side === 'top' ? [] : []));
  // @ts-expect-error a thread is no text
  sheet({ thread: everyKind.thread }, ({ thread }) => [words('a', 'A', thread, practice)]);
  // @ts-expect-error a torque is no length
  sheet({ torque }, (each) => [words('a', 'A', lengthWords(each.torque), practice)]);
  // @ts-expect-error what may be left out may not be there
  sheet({ rod }, (each) => [amount('a', 'A', each.rod, 'mm', practice)]);
  // @ts-expect-error a refusal is named by a field that there is
  sheet({ bore }, () => [], { boreMm: 'boer' });
  const told = {
    id: 'x',
    group: 'Threads',
    question: '?',
    title: 'X',
    purpose: 'X',
    cautions: [],
    sources: [],
  } as const;
  const example = { title: 'X', expect: {}, source: 'X', mark: 'calculated' } as const;
  worksheet({
    ...{ ...told, fields: { bore }, compute: () => [] },
    // @ts-expect-error an example fills in fields that there are
    examples: [{ ...example, given: { boer: '1 mm' } }],
  });
  // @ts-expect-error a group of the desk
  worksheet({ ...told, group: 'Thread', fields: { bore }, compute: () => [], examples: [] });
  expect(
    run(
      sheet({ bore, rod, half }, (each) => [amount('a', 'A', each.bore + each.half, 'mm', practice)]),
      { bore: '2 mm' },
    ),
  ).toMatchObject([{ value: { quantity: { si: 0.003 } } }]);
});

const lengthWords = (length: Quantity<'length'>) => `${length.si} m`;

describe('what is missing', () => {
  test('a required field left empty is refused with how to write it', () => {
    const asking = sheet({ torque: ask.quantity('torque', 'TORQUE', help, '140 in-lb') });
    for (const written of [{}, { torque: '' }, { torque: '  ' }]) {
      expect(refusal(asking, written)).toMatchObject({
        field: 'torque',
        message: 'TORQUE is missing; write it like 140 in-lb',
      });
    }
  });

  test('an optional field left empty is not there', () => {
    expect(given({ torque: optional(torque) }, { torque: ' ' }).torque).toBeUndefined();
    const field = ask.number('FACTOR', help, { optional: true });
    expect(given({ factor: field }, {}).factor).toBeUndefined();
  });

  test('a standard stands where nothing is written, and gives way to what is', () => {
    const fields = {
      factor: ask.number('FACTOR', help, { standard: '0.20' }),
      share: ask.quantity('ratio', 'SHARE', help, { standard: '75 %', optional: true }),
    };
    expect(given(fields, {}).factor).toBe(0.2);
    expect(given(fields, {}).share.si).toBe(0.75);
    expect(given(fields, { factor: '0.18' }).factor).toBe(0.18);
  });
});

describe('refusals name the field', () => {
  const refused: readonly (readonly [id: string, text: string, words: string])[] = [
    ['torque', '0.030 in', 'torque wanted, length given (0.030 in)'],
    ['torque', '140', 'has no unit'],
    ['thread', '5/16', '5/16-18 (UNC)'],
    ['grade', 'sae-9', '"sae-9" is not one of sae-5, unknown'],
    ['factor', '0.18 mm', 'a plain number is wanted'],
    ['factor', 'low', 'not a number'],
    ['factor', '1,250', '1250 or 1.25'],
    ['bolts', '2.5', 'not a count'],
    ['bolts', '-1', 'not a count'],
    ['holes', '0,0 60', '"60" is not a place'],
    ['readings', '60, 62, 61', 'has no unit'],
    ['readings', '60, abc, 61 psi', 'abc'],
    ['readings', '60, 0.030 in, 61 psi', 'pressure wanted'],
    ['weights', '1; ; 2', 'empty place'],
  ];

  test.each(refused)('%s: %s', (id, text, words) => {
    const error = refusal(sheet(everyKind), { ...everyKindWritten, [id]: text });
    expect(error.field).toBe(id);
    expect(error.message).toContain(`${id.toUpperCase()}: `);
    expect(error.message).toContain(words);
  });

  test('the first error is kept as the cause', () => {
    expect(refusal(sheet(everyKind), { ...everyKindWritten, torque: '5 mm' }).cause).toMatchObject({
      code: 'kind-mismatch',
    });
  });

  test('a field the worksheet does not have is refused, with the ones it has', () => {
    const error = refusal(sheet({ torque }), { torque: '140 in-lb', toque: '15' });
    expect(error).toMatchObject({ field: 'toque' });
    expect(error.message).toContain('its fields are torque');
    expect(refusal(sheet({}), { constructor: '1' }).field).toBe('constructor');
  });

  test('a quantity refused while computing is named by the field its words stand in', () => {
    const bounds = {
      low: of(1, 'N·m'),
      high: of(30, 'N·m'),
      because: 'a small bolt',
      likelyUnits: ['in-lb'],
    };
    const believing = sheet({ torque }, (each) => {
      requirePlausible(each.torque, bounds);
      return [];
    });
    const error = refusal(believing, { torque: '140 ft-lb' });
    expect(error.field).toBe('torque');
    expect(error.message).toContain('140 in-lb would be plausible');
    expect(run(believing, { torque: '140 in-lb' })).toEqual([]);
  });

  test('what a room refuses is named by the field a person filled in, and keeps its cause', () => {
    class RoomError extends Refusal {}
    const refusing = (field?: string) =>
      refusal(
        sheet(
          { torque },
          () => {
            throw new RoomError('too much', field, 7);
          },
          { torqueNm: 'torque' },
        ),
        { torque: '140 in-lb' },
      );
    expect(refusing('torqueNm')).toMatchObject({ field: 'torque', message: 'too much' });
    expect(refusing('torqueNm').cause).toMatchObject({ name: 'RoomError', field: 'torqueNm', value: 7 });
    expect(refusing('speed').field).toBe('speed');
    expect(refusing().field).toBeUndefined();
  });

  test('a refusal of figures that nobody wrote has no field; other errors pass unchanged', () => {
    const throwing = (error: Error) =>
      sheet({}, () => {
        throw error;
      });
    expect(refusal(throwing(new QuantityError('out-of-range', 'too much', { text: 'x' })), {})).toMatchObject(
      { message: 'too much', field: undefined },
    );
    const own = new WorksheetError('cannot', 'torque');
    expect(refusal(throwing(own), {})).toBe(own);
    expect(() => run(throwing(new TypeError('a fault of ours')), {})).toThrow(TypeError);
  });
});
