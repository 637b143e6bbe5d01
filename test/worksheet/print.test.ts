import { describe, expect, test } from 'vitest';
import { type Origin, of, parse, withUncertainty } from '../../src/quantity/index.js';
import {
  type Answer,
  type AnswerValue,
  describe as describeSheet,
  printJson,
  printText,
  quantityWorksheets,
} from '../../src/worksheet/index.js';

const origin: Origin = { from: 'computed', detail: 'T = K·d·F' };
const answer = (value: AnswerValue, note?: string): Answer => ({
  id: 'it',
  label: 'It',
  value,
  origin,
  ...(note !== undefined && { note }),
});
const text = (value: AnswerValue, system?: 'inch' | 'metric') => printText([answer(value)], system)[0];
const torque = of(140, 'in-lb');

describe('answers as lines', () => {
  test("a quantity stands in the reader's system, or in its own unit", () => {
    expect(text({ type: 'quantity', quantity: torque })).toBe('It: 140 in-lb');
    expect(text({ type: 'quantity', quantity: torque }, 'metric')).toBe('It: 15.8 N·m');
  });

  test('a unit fixed by the worksheet stands whatever the system', () => {
    expect(text({ type: 'quantity', quantity: torque, inUnit: 'kgf·m' }, 'inch')).toBe('It: 1.61 kgf·m');
  });

  test('an uncertainty is never left out', () => {
    expect(text({ type: 'quantity', quantity: withUncertainty(torque, 2.8) })).toBe('It: 140.0 ± 5.6 in-lb');
  });

  test('numbers, words, lists', () => {
    expect(text({ type: 'number', number: 0.123456 })).toBe('It: 0.1235');
    expect(text({ type: 'number', number: 123456.7 })).toBe('It: 123457');
    expect(text({ type: 'number', number: 8 })).toBe('It: 8');
    expect(text({ type: 'number', number: 8, digits: 2 })).toBe('It: 8.00');
    expect(text({ type: 'text', text: 'as it is' })).toBe('It: as it is');
    expect(text({ type: 'list', items: ['1-3-2-4', 'then round'] })).toBe('It: 1-3-2-4; then round');
  });

  test('a verdict says its word first', () => {
    expect(text({ type: 'verdict', verdict: 'cannot-decide', text: 'measure again' })).toBe(
      'It: cannot decide: measure again',
    );
  });

  test('a note follows in parentheses, one line an answer', () => {
    expect(
      printText([answer({ type: 'text', text: 'yes' }, 'oiled'), answer({ type: 'text', text: 'no' })]),
    ).toEqual(['It: yes (oiled)', 'It: no']);
  });
});

describe('answers as data', () => {
  test('a quantity carries text, figure, unit, SI value, kind and origin, unrounded', () => {
    const [printed] = printJson(
      [answer({ type: 'quantity', quantity: parse('180 in-lb') }, 'dry')],
      'metric',
    );
    expect(printed).toEqual({
      id: 'it',
      label: 'It',
      text: '20.3 N·m',
      value: parse('180 in-lb').si,
      unit: 'N·m',
      si: parse('180 in-lb').si,
      kind: 'torque',
      origin,
      note: 'dry',
    });
  });

  test('the others carry their kind and no unit', () => {
    const values: AnswerValue[] = [
      { type: 'number', number: 3 },
      { type: 'text', text: 'x' },
      { type: 'verdict', verdict: 'pass', text: 'x' },
      { type: 'list', items: ['a'] },
    ];
    const printed = printJson(values.map((value) => answer(value)));
    expect(printed.map(({ kind }) => kind)).toEqual(['number', 'text', 'verdict', 'list']);
    expect(printed.map(({ value }) => value)).toEqual([3, undefined, undefined, ['a']]);
    expect(printed[2]?.verdict).toBe('pass');
    for (const each of printed) expect(each).not.toHaveProperty('unit');
  });

  test('answers survive JSON unchanged', () => {
    const printed = printJson([
      answer({ type: 'quantity', quantity: torque }),
      answer({ type: 'list', items: ['a'] }),
    ]);
    expect(JSON.parse(JSON.stringify(printed))).toEqual(printed);
  });
});

test('a described worksheet is the worksheet without its computing, as plain data', () => {
  for (const worksheet of quantityWorksheets) {
    const described = describeSheet(worksheet);
    expect(described).not.toHaveProperty('compute');
    expect(JSON.parse(JSON.stringify(described))).toEqual(described);
    expect({
      ...described,
      fields: described.fields.map((field, i) => ({ ...field, read: worksheet.fields[i]!.read })),
      compute: worksheet.compute,
      names: worksheet.names,
      oneOf: worksheet.oneOf,
    }).toEqual(worksheet);
  }
});
