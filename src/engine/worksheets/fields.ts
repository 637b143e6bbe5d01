import type { Kind } from '../../quantity/index.js';
import type { Field, Given } from '../../worksheet/index.js';

/** A field that asks for a quantity of a kind. */
export const ask = (kind: Kind, id: string, label: string, help: string, hint: string): Field => ({
  ...{ id, label, help, kind, hint },
});

export const optional = (field: Field): Field => ({ ...field, required: false });

/** The same field with a figure that stands when nothing is written; the help must say where it comes from. */
export const standing = (field: Field, standard: string): Field => ({ ...field, standard });

export const choice = (
  id: string,
  label: string,
  help: string,
  choices: readonly (readonly [id: string, label: string])[],
  standard?: string,
): Field => ({
  ...{ id, label, help, kind: 'choice' as const },
  choices: choices.map(([each, words]) => ({ id: each, label: words })),
  ...(standard !== undefined && { standard }),
});

export const bore = ask('length', 'bore', 'Bore', 'Diameter of the cylinder.', '2.5625 in');
export const stroke = ask(
  'length',
  'stroke',
  'Stroke',
  'Travel of the piston from top to bottom.',
  '2.4375 in',
);
export const rod = optional(
  ask(
    'length',
    'rod',
    'Connecting rod',
    'Center to center. Left empty, 1.75 strokes stands (trade judgement, no source).',
    '108 mm',
  ),
);
export const altitude = ask(
  'length',
  'altitude',
  'Altitude',
  'Above sea level, as a map gives it.',
  '1500 m',
);

/** A length field in millimeters, if it is given. */
export const optionalMm = (given: Given, id: string): number | undefined =>
  given.has(id) ? given.in(id, 'mm') : undefined;
