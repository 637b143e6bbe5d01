import { findUnit, type Quantity, show, to } from '../../src/quantity/index.js';
import {
  type Answer,
  type AnswerValue,
  type Example,
  type Expected,
  printJson,
  run,
  toldTo,
  type Worksheet,
  WorksheetError,
} from '../../src/worksheet/index.js';

/** One expected figure of an example beside what the worksheet gives. */
export interface Check {
  /** answer id; of a refusal the field id */
  readonly answer: string;
  readonly expected: string;
  readonly got: string;
  readonly ok: boolean;
}

/**
 * Every expectation of an example against what the worksheet answers. Never throws for a wrong answer or a refusal:
 * each becomes a check that is not ok.
 */
export function checkExample(worksheet: Worksheet, example: Example): readonly Check[] {
  const outcome = attempt(worksheet, example);
  return Object.entries(example.expect).map(([id, expected]) => check(id, expected, outcome));
}

type Outcome = readonly Answer[] | WorksheetError;

function attempt(worksheet: Worksheet, { given }: Example): Outcome {
  try {
    return run(worksheet, given);
  } catch (error) {
    if (error instanceof WorksheetError) return error;
    throw error;
  }
}

function check(id: string, expected: Expected, outcome: Outcome): Check {
  if ('refused' in expected) return checkRefusal(id, expected.refused, outcome);
  const wanted = expectedText(expected);
  if (outcome instanceof Error)
    return { answer: id, expected: wanted, got: `refused: ${outcome.message}`, ok: false };
  const answer = outcome.find((each) => each.id === id);
  if (!answer) return { answer: id, expected: wanted, got: 'no such answer', ok: false };
  return 'text' in expected
    ? checkText(answer, expected.text)
    : checkValue(answer, wanted, expected.value, expected.tolerance, expected.unit);
}

function checkRefusal(field: string, words: string, outcome: Outcome): Check {
  const refusal = outcome instanceof Error ? outcome : undefined;
  return {
    answer: field,
    expected: `refused: ${words}`,
    got: refusal ? `${refusal.field ?? 'no field'} refused: ${refusal.message}` : 'answered',
    ok: refusal !== undefined && refusal.field === field && refusal.message.includes(words),
  };
}

function checkText(answer: Answer, text: string): Check {
  const got = textsOf(answer);
  return { answer: answer.id, expected: text, got: got[0] ?? '', ok: got.includes(text) };
}

/** A verdict may be expected by its word alone or by its text. */
function textsOf(answer: Answer): readonly string[] {
  const printed = printJson([answer]).map(({ text }) => text);
  return answer.value.type === 'verdict'
    ? [...printed, answer.value.verdict, toldTo(answer.value.text, 'metric')]
    : printed;
}

function checkValue(
  answer: Answer,
  expected: string,
  value: number,
  tolerance: number,
  unit?: string,
): Check {
  const got = figureOf(answer.value, unit);
  if (got === undefined) return { answer: answer.id, expected, got: `a ${kindOf(answer.value)}`, ok: false };
  return {
    answer: answer.id,
    expected,
    got: gotText(answer.value, got, unit),
    ok: Math.abs(got - value) <= tolerance,
  };
}

function figureOf(value: AnswerValue, unit: string | undefined): number | undefined {
  if (value.type === 'quantity') return inUnit(value.quantity, unit ?? value.quantity.unit);
  return value.type === 'number' && unit === undefined ? value.number : undefined;
}

function kindOf(value: AnswerValue): string {
  return value.type === 'quantity' ? value.quantity.kind : value.type;
}

function inUnit(quantity: Quantity, unit: string): number | undefined {
  return findUnit(unit).kind === quantity.kind ? to(quantity, unit) : undefined;
}

function gotText(value: AnswerValue, figure: number, unit: string | undefined): string {
  if (value.type === 'quantity')
    return show(value.quantity, undefined, { unit: unit ?? value.quantity.unit, digits: 6 });
  return String(Number(figure.toPrecision(6)));
}

function expectedText(expected: Exclude<Expected, { refused: string }>): string {
  if ('text' in expected) return expected.text;
  return `${expected.value}${expected.unit ? ` ${expected.unit}` : ''} ± ${expected.tolerance}`;
}
