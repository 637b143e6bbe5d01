import { describe, expect, test } from 'vitest';
import { desk } from '../../src/desk/index.js';
import {
  describe as describeWorksheet,
  type Example,
  printJson,
  run,
  type Worksheet,
} from '../../src/worksheet/index.js';
import { cliWithFolder } from '../support/built-cli.js';
import { call } from '../support/command.js';

const { cli } = cliWithFolder();

const work = (...args: string[]) => call(['work', ...args]);
const pairs = (given: Example['given']) => Object.entries(given).map(([key, value]) => `${key}=${value}`);

/** The first example that is answered; one that must be refused has nothing to print. */
function answered({ id, examples }: Worksheet): Example {
  const example = examples.find(({ expect }) => Object.values(expect).every((each) => !('refused' in each)));
  if (!example) throw new Error(`${id} has no example that is answered`);
  return example;
}

test('alone it lists every worksheet by its question', async () => {
  const { code, out } = await work();
  expect(code).toBe(0);
  const lines = out.split('\n').map((line) => line.trim());
  for (const { id, question } of desk) {
    expect(lines.find((line) => line.startsWith(question))).toMatch(new RegExp(` ${id}$`));
  }
  expect(JSON.parse((await work('--json')).out)).toEqual({ worksheets: desk.map(describeWorksheet) });
});

describe.each(desk.map((worksheet) => [worksheet.id, worksheet] as const))('%s', (id, worksheet) => {
  test('with --json it gives what the worksheet computes', async () => {
    const { given } = answered(worksheet);
    const { code, out, err } = await work(id, ...pairs(given), '--json');
    expect(code, err).toBe(0);
    const expected = printJson(run(worksheet, given));
    expect(JSON.parse(out)).toEqual({ worksheet: id, answers: JSON.parse(JSON.stringify(expected)) });
  });

  test('with its name alone it is explained', async () => {
    const { code, out } = await work(id);
    expect(code).toBe(0);
    expect(out).toContain(worksheet.question);
    for (const field of worksheet.fields) expect(out).toContain(`  ${field.id}  ${field.label}`);
    for (const source of worksheet.sources) expect(out).toContain(source);
    expect((await work(id, '--help')).out).toBe(out);
    expect(JSON.parse((await work(id, '--json')).out)).toEqual(describeWorksheet(worksheet));
  });
});

test('the program that is started says the same, and ends as it says', async () => {
  for (const args of [
    ['torque-from-clamp'],
    ['convert', 'quantity=15 ft-lb', 'unit=in-lb'],
    ['convert', 'quantity=15 ft-lb', 'unit=in-lb', '--json'],
    ['convert', 'quantity=tight'],
    ['convret', 'quantity=1 in'],
  ])
    expect(await cli.run(['work', ...args])).toEqual(await work(...args));
});

test('as text, cautions stand before the answers and origins after them', async () => {
  const { code, out } = await work('convert', 'quantity=15 ft-lb', 'unit=in-lb');
  expect(code).toBe(0);
  const lines = out.trimEnd().split('\n');
  const answer = lines.findIndex((line) => /180 in-lb/.test(line));
  expect(lines.findLastIndex((line) => line.startsWith('Caution: '))).toBeLessThan(answer);
  expect(lines.findIndex((line) => line.startsWith('  from: '))).toBeGreaterThan(answer);
});

test('--units chooses the reader’s system', async () => {
  const torque = ['thread=5/16-18', 'clamp=1500 lbf'];
  const sheet = desk.find(({ id }) => id === 'torque-from-clamp')!;
  const given = pairs(answered(sheet).given);
  const inch = JSON.parse((await work(sheet.id, ...given, '--json', '--units', 'inch')).out);
  const metric = JSON.parse((await work(sheet.id, ...given, '--json', '--units', 'metric')).out);
  const units = (answers: { kind: string; unit?: string }[]) =>
    answers.filter((a) => a.kind === 'torque').map((a) => a.unit);
  expect(units(metric.answers)).not.toEqual(units(inch.answers));
  expect(units(metric.answers)).toContain('N·m');
  expect((await work(sheet.id, ...torque, '--units', 'imperial')).code).toBe(2);
});

describe('what cannot be done', () => {
  const cases: readonly [string, string[], number, RegExp][] = [
    ['a worksheet that does not exist', ['convret', 'quantity=1 in'], 2, /Did you mean “convert”/],
    [
      'a field that does not exist',
      ['convert', 'quantty=1 in'],
      2,
      /no field “quantty”.*Did you mean “quantity”/,
    ],
    ['a field far from any', ['convert', 'bore=1 in'], 2, /no field “bore”.*quantity, unit/],
    ['a word that is no pair', ['convert', '15', 'ft-lb'], 2, /“15” is not of the form key=value/],
    ['a pair without its key', ['convert', '=1 in'], 2, /not of the form key=value/],
    ['a field twice', ['convert', 'quantity=1 in', 'quantity=2 in'], 2, /given twice/],
    ['a missing field', ['convert', 'unit=mm'], 1, /^wristpin: quantity: .*missing/],
    ['an empty field', ['convert', 'quantity='], 1, /^wristpin: quantity: .*missing/],
    ['a value that is no quantity', ['convert', 'quantity=tight'], 1, /^wristpin: quantity: /],
    ['a torque in length units', ['convert', 'quantity=15 ft-lb', 'unit=mm'], 1, /torque/],
  ];
  test.each(cases)('%s', async (_title, args, exit, message) => {
    const { code, out, err } = await work(...args);
    expect(code).toBe(exit);
    expect(out).toBe('');
    expect(err).toMatch(message);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
  });
});

test('a value may hold an equals sign, spaces and signs of any kind', async () => {
  const { code, err } = await work('convert', 'quantity=a=b');
  expect(code).toBe(1);
  expect(err).toContain('a=b');
});
