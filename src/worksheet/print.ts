import { type Origin, type Quantity, readerUnit, show, to, type UnitSystem } from '../quantity/index.js';
import type { Answer, AnswerValue, ForEach } from './answer.js';
import type { Picture } from './picture.js';

/** An answer as plain data: the text a person reads and the figures behind it, unrounded. */
export interface PrintedAnswer {
  readonly id: string;
  readonly label: string;
  readonly text: string;
  /** a quantity's value in `unit`; a number; the items of a list */
  readonly value?: number | readonly string[];
  readonly unit?: string;
  readonly si?: number;
  /** the quantity's kind, or number, text, verdict, list */
  readonly kind: string;
  readonly verdict?: 'pass' | 'fail' | 'cannot-decide';
  readonly origin: Origin;
  readonly note?: string;
  readonly picture?: Picture;
}

/** Answers as plain data, in the reader's system; in the units of the answers when none is named. */
export function printJson(answers: readonly Answer[], system?: UnitSystem): PrintedAnswer[] {
  return answers.map((answer) => printOne(answer, system));
}

/** Answers as lines of text, one an answer, its note in parentheses: "Torque: 140 in-lb (lubricated)". */
export function printText(answers: readonly Answer[], system?: UnitSystem): string[] {
  return printJson(answers, system).map(
    ({ label, text, note }) => `${label}: ${text}${note === undefined ? '' : ` (${note})`}`,
  );
}

type Printed = Pick<PrintedAnswer, 'text' | 'kind' | 'value' | 'unit' | 'si' | 'verdict'>;

function printOne(answer: Answer, system: UnitSystem | undefined): PrintedAnswer {
  const { id, label, value, origin, note, picture } = answer;
  return {
    ...{ id, label, ...printValue(value, system), origin },
    ...(note !== undefined && { note }),
    ...(picture && { picture }),
  };
}

function printValue(value: AnswerValue, system: UnitSystem | undefined): Printed {
  switch (value.type) {
    case 'quantity':
      return printQuantity(value.quantity, unitFor(value, system));
    case 'number':
      return { text: numberText(value.number, value.digits), value: value.number, kind: 'number' };
    case 'text':
      return { text: value.text, kind: 'text' };
    case 'verdict':
      return {
        text: `${verdictWords[value.verdict]}: ${toldTo(value.text, system)}`,
        kind: 'verdict',
        verdict: value.verdict,
      };
    case 'list':
      return { text: value.items.join('; '), value: value.items, kind: 'list' };
  }
}

/** Words as readers of a system are told them; in metric where none is named. */
export const toldTo = (text: string | ForEach, system: UnitSystem | undefined): string =>
  typeof text === 'string' ? text : text[system ?? 'metric'];

const verdictWords = { pass: 'pass', fail: 'fail', 'cannot-decide': 'cannot decide' } as const;

type QuantityValue = Extract<AnswerValue, { type: 'quantity' }>;

function unitFor({ quantity, inUnit }: QuantityValue, system: UnitSystem | undefined): string {
  return inUnit ?? (system ? readerUnit(quantity, system) : quantity.unit);
}

function printQuantity(quantity: Quantity, unit: string): Printed {
  const text = show(quantity, undefined, { unit, uncertainty: true });
  return { text, value: to(quantity, unit), unit, si: quantity.si, kind: quantity.kind };
}

/** Four significant digits without closing zeros; whole figures are never rounded away. */
function numberText(value: number, digits: number | undefined): string {
  if (digits !== undefined) return value.toFixed(digits);
  return Math.abs(value) >= 1000 ? String(Math.round(value)) : String(Number(value.toPrecision(4)));
}
