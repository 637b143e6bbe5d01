import { type Kind, type Origin, to } from '../../quantity/index.js';
import {
  type Answer,
  oldAsk as ask,
  type Field,
  type OldGiven as Given,
  words,
} from '../../worksheet/index.js';
import { type ClassFigure, classLimit, classOrigin, notThisEngines } from '../class-figures.js';
import type { Limit } from '../decide.js';
import { type Material, materials } from '../thermal.js';

export const lengthField = (id: string, label: string, help: string, hint: string): Field =>
  ask('length', id, label, help, hint);

/** The tool's expanded uncertainty; `standard` is a trade figure and the help says so. */
export const toleranceField = (id: string, label: string, tool: string, standard: string): Field => ({
  id,
  label,
  help: `Expanded uncertainty (k = 2) of one reading, from your shop list. ${standard} stands for ${tool} in practised hands (trade judgement, no source).`,
  kind: 'length',
  standard,
  hint: standard,
});

/** Least and most allowed; both empty takes the class figure. */
export const limitFields = (figure: ClassFigure): Field[] => [
  ...(figure.minIn === undefined ? [] : [limitField('least', 'Least allowed', figure)]),
  ...(figure.maxIn === undefined ? [] : [limitField('most', 'Most allowed', figure)]),
];

export const limitField = (id: string, label: string, figure: ClassFigure): Field => ({
  id,
  label,
  help: `From the maker's sheet of this engine. Left empty, a figure ${notThisEngines} is used and marked so.`,
  kind: 'length',
  required: false,
  hint: `${figure.maxIn ?? figure.minIn} in`,
});

export interface UsedLimit {
  readonly limit: Limit;
  readonly origin: Origin;
}

/** The limits a person gave, else the class figure. One side given stands alone: sources are never mixed. */
export function usedLimit(
  given: Given,
  figure: ClassFigure,
  unit: string,
  least = 'least',
  most = 'most',
): UsedLimit {
  if (!given.has(least) && !given.has(most))
    return { limit: classLimit(figure, unit), origin: classOrigin(figure) };
  return {
    limit: {
      ...(given.has(least) && { min: given.in(least, unit) }),
      ...(given.has(most) && { max: given.in(most, unit) }),
    },
    origin: { from: "maker's sheet", detail: 'the limit you gave' },
  };
}

/** Says plainly which limit was used. */
export function limitAnswer({ limit: { min, max }, origin }: UsedLimit, unit: string): Answer {
  const side = (word: string, value: number | undefined) =>
    value === undefined ? [] : [`${word} ${Number(value.toPrecision(4))} ${unit}`];
  const text = [...side('at least', min), ...side('at most', max)].join(', ');
  const note = origin.from === 'rule of thumb' ? notThisEngines : undefined;
  return words('limit', 'Limit used', text, origin, { note });
}

/** Standard uncertainty from a field that holds an expanded one (k = 2). */
export function standardFrom(given: Given, id: string, unit: string): number {
  return given.in(id, unit) / 2;
}

/** A list field's items in a unit. */
export function listIn(given: Given, id: string, unit: string, kind: Kind = 'length'): number[] {
  return given.list(id).map((si) => to({ kind, si, unit }, unit));
}

export const materialField = (id: string, label: string, standard: Material): Field => ({
  id,
  label,
  help: `${standard} stands where nothing is chosen (common practice).`,
  kind: 'choice',
  choices: materials.map((material) => ({ id: material, label: material })),
  standard,
});
