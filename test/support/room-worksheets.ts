import { expect, test } from 'vitest';
import type { Worksheet } from '../../src/worksheet/index.js';
import { checkExample } from './check-example.js';

/** What holds for the worksheets of every room: their examples, and what each says of itself. */
export function worksheetsOfRoom(worksheets: readonly Worksheet[]): void {
  const examples = worksheets.flatMap((worksheet) =>
    worksheet.examples.map((example) => [worksheet.id, example.title, worksheet, example] as const),
  );

  test.each(examples)('%s: %s', (_id, _title, worksheet, example) => {
    const checks = checkExample(worksheet, example);
    expect(checks.length).toBeGreaterThan(0);
    expect(checks.filter(({ ok }) => !ok)).toEqual([]);
  });

  test('each has a question, a purpose, cautions, sources and an example, and an id of its own', () => {
    expect(new Set(worksheets.map(({ id }) => id)).size).toBe(worksheets.length);
    for (const { id, question, purpose, cautions, sources, examples: own, fields } of worksheets) {
      expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(question, id).toMatch(/\?$/);
      expect(purpose.length, id).toBeGreaterThan(20);
      expect(cautions.length, id).toBeGreaterThan(0);
      expect(sources.length, id).toBeGreaterThan(0);
      expect(own.length, id).toBeGreaterThan(0);
      for (const field of fields) expect(field.help.length, `${id}.${field.id}`).toBeGreaterThan(10);
    }
  });
}
