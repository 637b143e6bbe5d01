import type { Answer } from './answer.js';
import type { Example } from './example.js';
import type { Ask, Field } from './field.js';
import type { Group } from './group.js';

/** What a worksheet says of itself: plain data that survives JSON unchanged. */
export interface WorksheetDescription {
  /** word-with-hyphens, unique over all rooms */
  readonly id: string;
  readonly group: Group;
  /** what a person wants to know, as they would ask it: "What torque gives this clamp load?" */
  readonly question: string;
  readonly title: string;
  readonly purpose: string;
  readonly fields: readonly Field[];
  /** shown before the form */
  readonly cautions: readonly string[];
  readonly sources: readonly string[];
  /** worked examples, each marked by where it comes from; the test suite runs all of them */
  readonly examples: readonly Example[];
}

/**
 * A calculation defined once and run anywhere: command, web form, HTTP endpoint, help text and tests come from
 * this one definition, which `worksheet` makes.
 */
export interface Worksheet extends WorksheetDescription {
  readonly fields: readonly (Ask<unknown> & { readonly id: string })[];
  readonly compute: (given: Readonly<Record<string, unknown>>) => readonly Answer[];
  readonly names: Readonly<Record<string, string>>;
  readonly oneOf: readonly OneOf[];
}

/** Fields that say the same thing in two ways: at most one is written, and where it is wanted, exactly one. */
interface OneOf<Id extends string = string> {
  readonly ids: readonly Id[];
  readonly wanted: boolean;
}

type Asks = Readonly<Record<string, Ask<unknown>>>;

/** What `compute` gets: each field under its id as that field reads it. */
export type Given<F extends Asks> = { readonly [Id in keyof F]: F[Id] extends Ask<infer T> ? T : never };

interface Definition<F extends Asks> extends Omit<WorksheetDescription, 'fields' | 'examples'> {
  /** by id, in the order in which they are asked */
  readonly fields: F;
  /** Pure. Throws a Refusal naming the field, the value and the bound when it cannot answer. */
  readonly compute: (given: Given<NoInfer<F>>) => readonly Answer[];
  /** what the room calls a value in its refusals, where that is not the id of the field a person filled in */
  readonly names?: Readonly<Record<string, NoInfer<keyof F & string>>>;
  /** fields of which two would say the same thing twice */
  readonly oneOf?: readonly OneOf<NoInfer<keyof F & string>>[];
  readonly examples: readonly (Omit<Example, 'given'> & {
    readonly given: { readonly [Id in NoInfer<keyof F>]?: string };
  })[];
}

/** A worksheet whose field ids and kinds the compiler follows into `compute`, `names` and the examples. */
export function worksheet<F extends Asks>(made: Definition<F>): Worksheet {
  const { fields, compute, names = {}, oneOf = [], examples, ...told } = made;
  return {
    ...told,
    fields: Object.entries(fields).map(([id, field]) => ({ id, ...field })),
    // `run` reads every field of `fields` before it computes
    compute: (given) => compute(given as Given<F>),
    names,
    oneOf,
    examples: examples as readonly Example[],
  };
}

/** A worksheet as plain data, for the wire. */
export function describe({ compute: _, names: __, oneOf: ___, ...told }: Worksheet): WorksheetDescription {
  return { ...told, fields: told.fields.map(({ read: ____, ...field }) => field) };
}
