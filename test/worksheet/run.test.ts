import { describe, expect, test } from 'vitest';
import { of, QuantityError, requirePlausible } from '../../src/quantity/index.js';
import { type Given, run, type Worksheet, WorksheetError } from '../../src/worksheet/index.js';
import { field, sheet } from './sheet.js';

function refusal(worksheet: Worksheet, given: Record<string, string>): WorksheetError {
  try {
    run(worksheet, given);
  } catch (error) {
    if (error instanceof WorksheetError) return error;
    throw error;
  }
  return expect.fail('answered where a refusal was due');
}

/** What a worksheet is given for these texts. */
function given(fields: Parameters<typeof sheet>[0], written: Record<string, string>): Given {
  let seen: Given | undefined;
  run(
    sheet(fields, (each) => {
      seen = each;
      return [];
    }),
    written,
  );
  return seen ?? expect.fail('the worksheet did not compute');
}

const everyKind = [
  field('torque', 'torque'),
  field('thread', 'thread'),
  field('grade', 'choice', {
    choices: [
      { id: 'sae-5', label: 'SAE grade 5' },
      { id: 'unknown', label: 'Not known' },
    ],
  }),
  field('factor', 'number'),
  field('bolts', 'count'),
  field('name', 'text'),
  field('holes', 'points'),
  field('readings', 'list', { of: 'pressure' }),
  field('weights', 'list'),
];
const everyKindWritten = {
  torque: '140 in-lb',
  thread: '5/16-18',
  grade: 'sae-5',
  factor: '0.18',
  bolts: '8',
  name: 'head bolts',
  holes: '0,0 60,0 60,40 0,40',
  readings: '60, 62, 61 psi',
  weights: '1; 2,5; 3/4',
};

describe('every field is read by its kind', () => {
  const each = given(everyKind, everyKindWritten);

  test('quantities, in SI or in a named unit', () => {
    expect(each.quantity('torque')).toMatchObject({ kind: 'torque', unit: 'in-lb', written: '140 in-lb' });
    expect(each.si('torque')).toBeCloseTo(15.818, 3);
    expect(each.in('torque', 'ft-lb')).toBeCloseTo(140 / 12, 12);
  });

  test('threads, choices, numbers, counts, words', () => {
    expect(each.thread('thread').name).toBe('5/16-18');
    expect(each.choice('grade')).toBe('sae-5');
    expect(each.number('factor')).toBe(0.18);
    expect(each.number('bolts')).toBe(8);
    expect(each.text('name')).toBe('head bolts');
  });

  test('places and lists', () => {
    expect(each.points('holes')).toHaveLength(4);
    expect(each.points('holes')[2]).toEqual({ xMm: 60, yMm: 40 });
    expect(each.list('readings')).toEqual([60, 62, 61].map((psi) => of(psi, 'psi').si));
    expect(each.list('weights')).toEqual([1, 2.5, 0.75]);
  });

  test('what was written stays at hand', () => {
    for (const [id, text] of Object.entries(everyKindWritten)) expect(each.written(id)).toBe(text);
  });

  test('a getter of another kind, or of a field that is not there, names the field', () => {
    expect(() => each.number('torque')).toThrow(
      new WorksheetError('torque is a quantity, asked for as a number', 'torque'),
    );
    expect(() => each.text('nothing')).toThrow(new WorksheetError('nothing is not given', 'nothing'));
    expect(() => each.written('nothing')).toThrow(WorksheetError);
    expect(() => each.in('torque', 'psi')).toThrow(QuantityError);
  });

  test('a choice may be said by its label', () => {
    expect(given(everyKind, { ...everyKindWritten, grade: 'Not Known' }).choice('grade')).toBe('unknown');
  });
});

describe('what is missing', () => {
  test('a required field left empty is refused with how to write it', () => {
    const worksheet = sheet([field('torque', 'torque', { hint: '140 in-lb' })]);
    for (const written of [{}, { torque: '' }, { torque: '  ' }]) {
      expect(refusal(worksheet, written)).toMatchObject({
        field: 'torque',
        message: 'TORQUE is missing; write it like 140 in-lb',
      });
    }
  });

  test('an optional field left empty is not there', () => {
    expect(given([field('torque', 'torque', { required: false })], { torque: ' ' }).has('torque')).toBe(
      false,
    );
  });

  test('a standard stands where nothing is written, and gives way to what is', () => {
    const fields = [
      field('factor', 'number', { standard: '0.20' }),
      field('share', 'ratio', { standard: '75 %', required: false }),
    ];
    expect(given(fields, {}).number('factor')).toBe(0.2);
    expect(given(fields, {}).si('share')).toBe(0.75);
    expect(given(fields, { factor: '0.18' }).number('factor')).toBe(0.18);
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
    const error = refusal(sheet([field('torque', 'torque')]), { torque: '140 in-lb', toque: '15' });
    expect(error).toMatchObject({ field: 'toque' });
    expect(error.message).toContain('its fields are torque');
    expect(refusal(sheet([]), { constructor: '1' }).field).toBe('constructor');
  });

  test('a quantity refused while computing is named by the field its words stand in', () => {
    const bounds = {
      low: of(1, 'N·m'),
      high: of(30, 'N·m'),
      because: 'a small bolt',
      likelyUnits: ['in-lb'],
    };
    const worksheet = sheet([field('torque', 'torque')], (each) => {
      requirePlausible(each.quantity('torque'), bounds);
      return [];
    });
    const error = refusal(worksheet, { torque: '140 ft-lb' });
    expect(error.field).toBe('torque');
    expect(error.message).toContain('140 in-lb would be plausible');
    expect(run(worksheet, { torque: '140 in-lb' })).toEqual([]);
  });

  test('a refusal of figures that nobody wrote has no field; other errors pass unchanged', () => {
    const throwing = (error: Error) =>
      sheet([], () => {
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
