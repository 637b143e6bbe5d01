import {
  type Kind,
  type Origin,
  of,
  type Quantity,
  type UnitSystem,
  withUncertainty,
} from '../quantity/index.js';
import type { Picture } from './picture.js';

export type AnswerValue =
  /** printed in the reader's system, or in `inUnit` whatever the system */
  | { readonly type: 'quantity'; readonly quantity: Quantity; readonly inUnit?: string }
  /** `digits` after the decimal point; four significant ones when left out */
  | { readonly type: 'number'; readonly number: number; readonly digits?: number }
  | { readonly type: 'text'; readonly text: string }
  | {
      readonly type: 'verdict';
      readonly verdict: 'pass' | 'fail' | 'cannot-decide';
      readonly text: string | ForEach;
    }
  | { readonly type: 'list'; readonly items: readonly string[] };

/** Words that name figures, as readers of each system are told them. */
export type ForEach = Readonly<Record<UnitSystem, string>>;

export interface Answer {
  readonly id: string;
  readonly label: string;
  readonly value: AnswerValue;
  /** where the number comes from: formula with source, table, rule of thumb */
  readonly origin: Origin;
  readonly note?: string;
  /** curves that show this answer among its neighbors, where a person would rather look */
  readonly picture?: Picture;
}

/** What an answer may carry beside its value. */
export interface Extra {
  /** standard uncertainty, in the unit of the value */
  readonly u?: number;
  readonly note?: string | undefined;
  readonly picture?: Picture | undefined;
  /** print in this unit whatever the reader's system: jets in mm, leaks in mm² */
  readonly keepUnit?: true;
}

function answer(
  id: string,
  label: string,
  value: AnswerValue,
  origin: Origin,
  { note, picture }: Extra,
): Answer {
  return {
    ...{ id, label, value, origin },
    ...(note !== undefined && { note }),
    ...(picture && { picture }),
  };
}

/** A quantity, printed with ± U (k = 2) where it has an uncertainty. */
export function amount(
  id: string,
  label: string,
  value: number,
  unit: string,
  origin: Origin,
  extra: Extra = {},
): Answer {
  const plain = of<Kind>(value, unit, origin);
  const quantity = extra.u === undefined ? plain : withUncertainty(plain, extra.u);
  const shown: AnswerValue = { type: 'quantity', quantity, ...(extra.keepUnit && { inUnit: unit }) };
  return answer(id, label, shown, origin, extra);
}

/** `digits` after the decimal point; four significant ones when undefined. */
export function number(
  id: string,
  label: string,
  value: number,
  digits: number | undefined,
  origin: Origin,
  extra: Extra = {},
): Answer {
  const shown: AnswerValue = { type: 'number', number: value, ...(digits !== undefined && { digits }) };
  return answer(id, label, shown, origin, extra);
}

export function words(id: string, label: string, text: string, origin: Origin, extra: Extra = {}): Answer {
  return answer(id, label, { type: 'text', text }, origin, extra);
}

export function lines(
  id: string,
  label: string,
  items: readonly string[],
  origin: Origin,
  extra: Extra = {},
): Answer {
  return answer(id, label, { type: 'list', items }, origin, extra);
}

export function verdict(
  id: string,
  label: string,
  decided: 'pass' | 'fail' | 'cannot-decide',
  text: string | ForEach,
  origin: Origin,
  extra: Extra = {},
): Answer {
  return answer(id, label, { type: 'verdict', verdict: decided, text }, origin, extra);
}

export const computed = (detail: string): Origin => ({ from: 'computed', detail });
export const standard = (detail: string): Origin => ({ from: 'standard', detail });
export const ruleOfThumb = (detail: string): Origin => ({ from: 'rule of thumb', detail });
export const practice = ruleOfThumb('common practice');
export const judgement = ruleOfThumb('trade judgement, no source');
