import { type Origin, type Quantity, to } from '../../quantity/index.js';
import { type Answer, ask, words } from '../../worksheet/index.js';
import { type ClassFigure, classLimit, classOrigin, notThisEngines } from '../class-figures.js';
import type { Limit } from '../decide.js';
import { type Material, materials } from '../thermal.js';

type Length = Quantity<'length'>;

/** What can be meant of a small engine's parts. */
export const diameterSpan = ['1 mm', '300 mm'] as const;
export const gapSpan = ['0 mm', '10 mm'] as const;
export const toolSpan = ['0 mm', '1 mm'] as const;
/** Readings over a plate or from a zero, which may go either way. */
export const heightSpan = ['-25 mm', '25 mm'] as const;

/** The tool's expanded uncertainty; `standard` is a trade figure and the help says so. */
export const toleranceField = (label: string, tool: string, standard: string) =>
  ask.quantity(
    'length',
    label,
    `Expanded uncertainty (k = 2) of one reading, from your shop list. ${standard} stands for ${tool} in practised hands (trade judgement, no source).`,
    { standard, hint: standard, within: toolSpan },
  );

export const feelers = toleranceField('Feelers, k = 2', 'a feeler set', '0.001 in');

export const limitField = (label: string, figure: ClassFigure) =>
  ask.quantity(
    'length',
    label,
    `From the maker's sheet of this engine. Left empty, a figure ${notThisEngines} is used and marked so.`,
    { hint: `${figure.maxIn ?? figure.minIn} in`, optional: true, within: gapSpan },
  );

/** Least and most allowed; both empty takes the class figure. */
export const limitFields = (figure: ClassFigure) => ({
  least: limitField('Least allowed', figure),
  most: limitField('Most allowed', figure),
});

export interface UsedLimit {
  readonly limit: Limit;
  readonly origin: Origin;
}

/** The limits a person gave, else the class figure. One side given stands alone: sources are never mixed. */
export function usedLimit(
  figure: ClassFigure,
  unit: string,
  { least, most }: { readonly least?: Length | undefined; readonly most?: Length | undefined },
): UsedLimit {
  if (!least && !most) return { limit: classLimit(figure, unit), origin: classOrigin(figure) };
  return {
    limit: { ...(least && { min: to(least, unit) }), ...(most && { max: to(most, unit) }) },
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

/** Standard uncertainty from an expanded one (k = 2). */
export const standardIn = (expanded: Length, unit: string): number => to(expanded, unit) / 2;

export const listIn = (list: readonly Length[], unit: string): number[] => list.map((each) => to(each, unit));

export const materialField = (label: string, standard: Material) =>
  ask.choice(label, `${standard} stands where nothing is chosen (common practice).`, materials, standard);

/** The limits that were given, as plain numbers. */
export const limitOf = (min: number | undefined, max: number | undefined): Limit => ({
  ...(min !== undefined && { min }),
  ...(max !== undefined && { max }),
});
