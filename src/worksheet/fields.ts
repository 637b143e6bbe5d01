import type { Kind } from '../quantity/index.js';
import type { Field } from './worksheet.js';

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
