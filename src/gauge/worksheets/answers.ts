import { type Kind, type Origin, of, withUncertainty } from '../../quantity/index.js';
import { type Answer, type AnswerValue, type Given, WorksheetError } from '../../worksheet/index.js';
import { notThisEngines } from '../class-figures.js';
import type { Decision } from '../decide.js';
import { GaugeError } from '../error.js';

function answer(id: string, label: string, value: AnswerValue, origin: Origin, note?: string): Answer {
  return { id, label, value, origin, ...(note && { note }) };
}

export interface Extra {
  /** standard uncertainty in the same unit */
  readonly u?: number;
  readonly note?: string;
}

/** A quantity, printed with ± U (k = 2) where it has an uncertainty. */
export function amount(
  id: string,
  label: string,
  value: number,
  unit: string,
  origin: Origin,
  { u, note }: Extra = {},
): Answer {
  const plain = of<Kind>(value, unit, origin);
  const quantity = u === undefined ? plain : withUncertainty(plain, u);
  return answer(id, label, { type: 'quantity', quantity }, origin, note);
}

export function number(
  id: string,
  label: string,
  value: number,
  origin: Origin,
  { digits, note }: { readonly digits?: number; readonly note?: string | undefined } = {},
): Answer {
  return answer(
    id,
    label,
    { type: 'number', number: value, ...(digits !== undefined && { digits }) },
    origin,
    note,
  );
}

export function words(id: string, label: string, text: string, origin: Origin, note?: string): Answer {
  return answer(id, label, { type: 'text', text }, origin, note);
}

export function lines(
  id: string,
  label: string,
  items: readonly string[],
  origin: Origin,
  note?: string,
): Answer {
  return answer(id, label, { type: 'list', items }, origin, note);
}

/** A verdict with its reason; the origin says whose limit it was, and a class limit is marked in plain sight. */
export function verdict(
  id: string,
  label: string,
  { verdict: decided, why }: Decision,
  origin: Origin,
): Answer {
  const note = origin.from === 'rule of thumb' ? `the limit is ${notThisEngines}` : undefined;
  return answer(id, label, { type: 'verdict', verdict: decided, text: why }, origin, note);
}

export const computed = (detail: string): Origin => ({ from: 'computed', detail });

/** Turns what the room refuses into what a worksheet refuses, named by the field a person filled in. */
export function refusing(
  fieldOf: Readonly<Record<string, string>>,
  compute: (given: Given) => readonly Answer[],
): (given: Given) => readonly Answer[] {
  return (given) => {
    try {
      return compute(given);
    } catch (error) {
      if (!(error instanceof GaugeError)) throw error;
      const refusal = new WorksheetError(error.message, fieldOf[error.field] ?? error.field);
      refusal.cause = error;
      throw refusal;
    }
  };
}
