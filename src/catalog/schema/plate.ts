import { z } from 'zod';
import { origin } from './fields/origin.js';
import { ref } from './fields/reference.js';
import { architecture } from './fields/when.js';
import { id, line, words } from './fields/word.js';

const year = z.number().int().min(1900).max(2100);

/**
 * How digits stand for a day: YYYY, YY or Y the year, L a letter for the year, MM month, DD day of the month,
 * DDD day of the year, WW week. Several forms: nobody knows which one was meant, and every one is said.
 */
const dateRule = z
  .strictObject({
    forms: z
      .array(
        z
          .string()
          .regex(/^(YYYY|YY|Y|L|MM|DDD|DD|WW)+$/, 'a date form is made of YYYY, YY, Y, L, MM, DD, DDD, WW'),
      )
      .min(1),
    /** years in which the scheme was in use */
    years: z.strictObject({ from: year, to: year }),
    /** the letters in order from the first year, starting again at the end */
    letters: z
      .string()
      .regex(/^[A-Z]+$/)
      .optional(),
  })
  .refine(({ years }) => years.from <= years.to, 'the years run backwards')
  .refine(
    ({ forms, letters }) => letters !== undefined || !forms.some((form) => form.includes('L')),
    'a year letter needs "letters"',
  );

const part = z
  .strictObject({
    /** name of the group in the pattern */
    group: z.string().regex(/^[a-z][A-Za-z]*$/),
    name: line,
    /** value → meaning; a value that is not listed is said to be unknown */
    table: z.record(z.string(), line).optional(),
    /** the number itself, with what it counts: "cubic centimeters" */
    number: z.strictObject({ times: z.number().optional(), of: line }).optional(),
    date: dateRule.optional(),
    /** the same meaning whatever the value */
    words: line.optional(),
  })
  .refine(
    ({ table, number, date, words: fixed }) =>
      [table, number, date, fixed].filter((rule) => rule !== undefined).length === 1,
    'a part has one of table, number, date, words',
  );

export const plateScheme = z
  .strictObject({
    id,
    name: line,
    /** an invented maker; none for what no maker owns */
    maker: line.optional(),
    invented: z.literal(true).optional(),
    architectures: z.array(architecture).min(1).optional(),
    /** regular expression with a named group a part; matched against the text in capitals, single spaces */
    pattern: z.string().min(1),
    parts: z.array(part).min(1),
    /** readings of equal fit stand in this order: higher first */
    weight: z.number().min(0).max(1),
    examples: z.array(z.strictObject({ text: line, reads: z.record(z.string(), line) })).min(1),
    note: words.optional(),
    origin,
  })
  .superRefine((scheme, context) => {
    const groups = groupsOf(scheme.pattern);
    if (groups === undefined) {
      context.addIssue({ code: 'custom', path: ['pattern'], message: 'not a regular expression' });
      return;
    }
    for (const [index, { group }] of scheme.parts.entries()) {
      if (!groups.includes(group)) {
        context.addIssue({
          code: 'custom',
          path: ['parts', index, 'group'],
          message: `the pattern has no group "${group}"`,
        });
      }
    }
  });

/** The named groups of a pattern; undefined when it is not a regular expression. */
function groupsOf(pattern: string): string[] | undefined {
  try {
    new RegExp(pattern);
  } catch {
    return undefined;
  }
  return [...pattern.matchAll(/\(\?<([A-Za-z]+)>/g)].map((match) => match[1]!);
}

/** A place where a plate or stamping hides. */
export const platePlace = z.strictObject({
  id,
  architectures: z.array(architecture).min(1),
  where: line,
  /** component that hides it */
  under: ref('components').optional(),
  tells: line.optional(),
  origin,
});
