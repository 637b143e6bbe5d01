import fc from 'fast-check';
import { builtInCatalog } from '../../src/catalog/index.js';
import { bodies, type EntryKind } from '../../src/job/entry.js';
import { written } from '../../src/job/index.js';
import { kinds, unitsOf } from '../../src/quantity/index.js';

/** The part of a schema that tells how a value of it is made. */
interface Def {
  readonly type: string;
  readonly shape?: Readonly<Record<string, Schema>>;
  readonly innerType?: Schema;
  readonly element?: Schema;
  readonly options?: readonly Schema[];
  readonly entries?: Readonly<Record<string, string>>;
  readonly values?: readonly unknown[];
  readonly keyType?: Schema;
  readonly valueType?: Schema;
  readonly checks?: readonly unknown[];
}
interface Schema {
  readonly def: Def;
  readonly format?: string | null;
  readonly minValue?: number | null;
  readonly maxValue?: number | null;
  readonly isInt?: boolean;
}

const catalog = builtInCatalog();
const ids = (list: readonly { readonly id: string }[]): string[] => list.map(({ id }) => id);

/** Handles that meet each other, the catalog's ids, and names that every object has. */
const handles = [
  ...[
    'head',
    'head',
    'gasket',
    'head-gasket',
    'cylinder-head',
    'spark-plug',
    'carburetor',
    'carburetor-back',
  ],
  ...['repair', 'renew', 'repaired', 'declined', 'provisional', 'scrap', 'none', 'reuse', 'ask-owner'],
  ...[
    'constructor',
    'tostring',
    'valueof',
    'hasownproperty',
    '0',
    'x'.repeat(80),
    'gate-head-on',
    'gates-signed',
  ],
  ...['bore-diameter', 'piston-skirt-diameter', 'head-flatness.height', 'head-flatness.gap', 'compression'],
  ...[
    'bore-standard',
    'bore-reject',
    'stroke',
    'compression-ratio',
    'head-bolt-torque',
    'governed-top-speed',
  ],
];
const handle = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...handles) },
  fc.constantFrom(
    ...ids(catalog.components),
    ...ids(catalog.checks),
    ...ids(catalog.faults),
    ...ids(catalog.measurements),
    ...ids(catalog.specs),
    ...ids(catalog.runUp),
    ...ids(catalog.agents),
    ...ids(catalog.materials),
    ...ids(catalog.complaints),
    ...ids(catalog.variants),
  ),
);

const words = fc.oneof(
  fc.constantFrom(
    '',
    ' ',
    'spark returns',
    'none',
    '5/16-18',
    'M8x1.25',
    'exhaust',
    'intake',
    'top',
    'along',
  ),
  fc.constantFrom(
    'constructor',
    '__proto__',
    'Two\nlines',
    '☃ 𝄞',
    '=HYPERLINK("x")',
    '\u001b[31m',
    '2026-11-25',
  ),
  fc.constantFrom(...catalog.checks.flatMap((c) => c.outcomes.map((o) => o.words))),
  fc.string({ maxLength: 12 }),
);

const numbers = [
  '0',
  '1',
  '2.5',
  '140',
  '-3',
  '1/3',
  '99999',
  `0.${'3'.repeat(60)}`,
  `1${'0'.repeat(30)}`,
  '0.0000001',
];
const quantity = fc
  .tuple(fc.constantFrom(...numbers), fc.constantFrom(...kinds), fc.nat())
  .map(([number, kind, n]) => {
    const units = unitsOf(kind);
    const text = `${number} ${units[n % units.length]!.id}`;
    try {
      return written(text.slice(0, 80), kind);
    } catch {
      return written('1/4 in', 'length');
    }
  });

function number({ minValue, maxValue, isInt }: Schema): fc.Arbitrary<number> {
  const least = Math.max(minValue ?? -1e9, -1e15);
  const most = Math.min(maxValue ?? 1e9, 1e15);
  const small = Math.min(most, Math.max(least, 0) + 12);
  if (isInt)
    return fc.oneof(
      fc.integer({ min: Math.ceil(Math.max(least, -5)), max: Math.floor(small) }),
      fc.integer({ min: Math.ceil(least), max: Math.floor(most) }),
    );
  return fc.oneof(
    fc.constantFrom(least, most, 1e-12, 0.1 + 0.2),
    fc.integer({ min: Math.ceil(Math.max(least, -5)), max: Math.floor(small) }),
    fc.double({ min: least, max: most, noNaN: true }),
  );
}

const makers: Readonly<Record<string, (schema: Schema) => fc.Arbitrary<unknown>>> = {
  string: ({ format }) =>
    format === 'regex'
      ? handle
      : format === 'date'
        ? fc.constantFrom('2026-11-25', '0001-01-01', '9999-12-31')
        : words,
  number,
  boolean: () => fc.boolean(),
  enum: ({ def }) => fc.constantFrom(...Object.values(def.entries!)),
  literal: ({ def }) => fc.constantFrom(...def.values!),
  optional: ({ def }) => fc.option(any(def.innerType!), { nil: undefined, freq: 2 }),
  array: ({ def }) => fc.array(any(def.element!), { maxLength: 4 }),
  union: ({ def }) => fc.oneof(...def.options!.map(any)),
  record: ({ def }) =>
    fc.dictionary(any(def.keyType!) as fc.Arbitrary<string>, any(def.valueType!), { maxKeys: 3 }),
  object: ({ def: { shape = {} } }) =>
    'written' in shape && 'si' in shape
      ? quantity
      : fc.record(Object.fromEntries(Object.entries(shape).map(([name, field]) => [name, any(field)]))),
};

/** Anything that a schema may take, and a little that it does not. */
function any(schema: Schema): fc.Arbitrary<unknown> {
  const maker = makers[schema.def.type];
  if (!maker) throw new Error(`no way to make a ${schema.def.type}`);
  return maker(schema);
}

/** A joint whose orders name its holes, so that more than a chance few pass. */
const joint = fc
  .tuple(any(bodies.joint as unknown as Schema), fc.integer({ min: 1, max: 8 }))
  .map(([body, n]) => {
    const order = Array.from({ length: n }, (_, i) => i + 1);
    const holes = order.map((i) => ({ xMm: i * 10, yMm: (i % 2) * 30 }));
    const target = written('140 in-lb', 'torque');
    return { ...(body as object), holes, order, around: undefined, passes: [0.5, 1], target };
  });

const fromSchema = new Map(
  (Object.keys(bodies) as EntryKind[]).map((kind) => [kind, any(bodies[kind] as unknown as Schema)] as const),
);
/** A body of a kind. */
export const anyBody = (kind: EntryKind): fc.Arbitrary<unknown> =>
  kind === 'joint' ? fc.oneof(joint, fromSchema.get(kind)!) : fromSchema.get(kind)!;
