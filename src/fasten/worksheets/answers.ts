import { type Kind, type Origin, of } from '../../quantity/index.js';
import type { Answer, AnswerValue } from '../../worksheet/index.js';

const answer = (id: string, label: string, value: AnswerValue, origin: Origin, note?: string): Answer => ({
  id,
  label,
  value,
  origin,
  ...(note && { note }),
});

/** A number with its unit. */
export function amount(
  id: string,
  label: string,
  value: number,
  unit: string,
  origin: Origin,
  note?: string,
): Answer {
  return answer(id, label, { type: 'quantity', quantity: of<Kind>(value, unit, origin) }, origin, note);
}

export function number(
  id: string,
  label: string,
  value: number,
  digits: number,
  origin: Origin,
  note?: string,
): Answer {
  return answer(id, label, { type: 'number', number: value, digits }, origin, note);
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

export type Verdict = 'pass' | 'fail' | 'cannot-decide';
export function verdict(
  id: string,
  label: string,
  decided: Verdict,
  text: string,
  origin: Origin,
  note?: string,
): Answer {
  return answer(id, label, { type: 'verdict', verdict: decided, text }, origin, note);
}

export const computed = (detail: string): Origin => ({ from: 'computed', detail });
export const standard = (detail: string): Origin => ({ from: 'standard', detail });
export const ruleOfThumb = (detail: string): Origin => ({ from: 'rule of thumb', detail });
