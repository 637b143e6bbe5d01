import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { between, halfOfLast, near, printed } from './published.js';

describe('checks against published values', () => {
  const folder = resolve(import.meta.dirname, '../published');
  const files = readdirSync(folder).filter((name) => name.endsWith('.test.ts'));

  test.each(files)(
    '%s compares by test/support/published.ts alone, so that each value is counted',
    (name) => {
      const text = readFileSync(resolve(folder, name), 'utf8');
      expect(text).toContain("from '../support/published.js'");
      expect(text).not.toMatch(/from 'vitest'/);
      // the outside stands against the project, never the project against itself
      expect(text).toMatch(/from '\.\.\/\.\.\/(src|bench)\//);
    },
  );

  test('the last place is read from the print, trailing zeros too', () => {
    expect(halfOfLast('14.50')).toBeCloseTo(0.005, 12);
    expect(halfOfLast('2')).toBe(0.5);
    expect(printed('x', 14.504, '14.50').within).toBeCloseTo(0.005, 6);
    expect(printed('x', 14.504, '14.50', 1.5).within).toBeCloseTo(0.015, 6);
  });

  test('a bound is two comparisons', () => {
    expect(between('x', 1, 0, 2)).toHaveLength(2);
    expect(near('x', 1, 2, 0.5)).toEqual({ what: 'x', got: 1, want: 2, within: 0.5 });
  });
});
