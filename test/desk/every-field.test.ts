import { expect, test } from 'vitest';
import { desk } from '../../src/desk/index.js';
import { type Field, run, type Worksheet, WorksheetError } from '../../src/worksheet/index.js';

/**
 * What a slip of the pen writes into any field of any sheet. Before a field knew what can be meant there, a billion of
 * anything, negative gaps, lengths, powers and plays were computed with.
 */

const numeric = ({ kind }: Field) => !['thread', 'choice', 'text', 'points'].includes(kind);

/** The field's first example filled in, or its hints. */
function givenOf(worksheet: Worksheet): Record<string, string> {
  const example = worksheet.examples.find(({ expect: wanted }) =>
    Object.values(wanted).every((each) => !('refused' in each)),
  );
  return { ...example!.given };
}

/** The same words with another number in them: "2.5625 in" with 0 is "0 in". */
const unitOf = (words: string) => /[^\d.,;:\s+−-].*$/.exec(words.split(/[;,]/).at(-1)!.trim())?.[0] ?? '';

function wordsWith(field: Field, given: Record<string, string>, figure: string): string {
  const words = given[field.id] ?? field.hint ?? field.standard ?? '';
  const unit = /:/.test(words) ? ':1' : ` ${unitOf(words)}`;
  const one = `${figure}${unit}`.trim();
  if (field.kind !== 'list') return one;
  const items = words.split(/[;,]/).length;
  return [...Array.from({ length: items - 1 }, () => figure), one].join('; ');
}

function outcome(worksheet: Worksheet, field: Field, figure: string) {
  const given = givenOf(worksheet);
  for (const { ids } of worksheet.oneOf) if (ids.includes(field.id)) for (const id of ids) delete given[id];
  const written = { ...given, [field.id]: wordsWith(field, given, figure) };
  try {
    return { written, answers: run(worksheet, written) };
  } catch (error) {
    if (error instanceof WorksheetError) return { written, refused: error };
    throw error;
  }
}

const fields = desk.flatMap((worksheet) =>
  worksheet.fields.filter(numeric).map((field) => [`${worksheet.id}.${field.id}`, worksheet, field] as const),
);

test.each(fields)('%s: a billion is refused, in the words of the field', (_name, worksheet, field) => {
  const { refused, written } = outcome(worksheet, field, '1000000000');
  expect(refused?.message ?? 'answered', JSON.stringify(written)).toMatch(
    /above what can be meant|whole number/,
  );
  expect(refused!.field).toBe(field.id);
  expect(refused!.message).toContain(field.label);
});

/** Where a figure may lie on either side of zero. */
const eitherWay = new Set([
  ...['compression-ratio.deck', 'compression-ratio.crown', 'piston-position.angle', 'flatness.heights'],
  ...[
    'wrench-adapter.adapter',
    'wrench-adapter.angle',
    'uncertainty-budget.repeats',
    'pooled-readings.readings',
  ],
  ...['pooled-readings.zero', 'pooled-readings.least', 'pooled-readings.most'],
  ...['decide-limit', 'settle-reading'].flatMap((id) =>
    ['value', 'least', 'most'].map((field) => `${id}.${field}`),
  ),
]);
const mayBeNegative = (name: string, { kind, within }: Field) =>
  eitherWay.has(name) || kind === 'temperature' || String(within?.[0]).startsWith('-');

test.each(fields)('%s: a negative figure is refused where it makes no sense', (name, worksheet, field) => {
  const { refused, answers } = outcome(worksheet, field, '-1');
  if (mayBeNegative(name, field)) return expect(refused ?? answers).toBeDefined();
  expect(refused?.message ?? 'answered').toMatch(/below what can be meant|not a count|begin with a number/);
  expect(refused!.field).toBe(field.id);
});

test.each(fields)(
  '%s: zero is refused by its field or gives figures that are figures',
  (_name, worksheet, field) => {
    const { refused, answers } = outcome(worksheet, field, '0');
    if (refused) return expect(refused.field, refused.message).toBeDefined();
    for (const { id, value } of answers!) {
      if (value.type === 'quantity') expect(Number.isFinite(value.quantity.si), id).toBe(true);
      if (value.type === 'number') expect(Number.isFinite(value.number), id).toBe(true);
      if (value.type === 'text' || value.type === 'verdict')
        expect(JSON.stringify(value.text), id).not.toMatch(/NaN|Infinity/);
    }
  },
);

test('every figure says what can be meant there', () => {
  for (const [name, , field] of fields) expect(field.within, name).toHaveLength(2);
});
