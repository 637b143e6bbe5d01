import { isDeepStrictEqual } from 'node:util';
import { expect, test } from 'vitest';

/**
 * How sure we are of a figure from outside the project:
 * - seen: read in a public copy or quotation of the source; "seen second-hand": in a low-grade one;
 * - from memory: recalled, not seen; recomputed: and an independent computation gives the same;
 * - calculated: only worked out, by hand or by the named program, from the formula that the source states;
 * - common practice: a fact of the trade with no published source.
 */
export type Mark = 'seen' | 'from memory' | 'from memory, recomputed' | 'calculated' | 'common practice';

/** One value of the project against one from outside. A number without `within` must be the very same. */
export interface Compared {
  readonly what: string;
  readonly got: unknown;
  readonly want?: unknown;
  /** Half of the last printed figure, or wider with its reason beside it. */
  readonly within?: number;
  /** Where the outside gives a bound instead of a value: got must not be under, or over, it. */
  readonly least?: number;
  readonly most?: number;
}

/** A value printed as a number: |got − want| ≤ within. */
export const near = (what: string, got: number, want: number, within: number): Compared => ({
  what,
  got,
  want,
  within,
});

/** A value that must be the same as printed: a whole number, a word, an order of bolts. */
export const same = (what: string, got: unknown, want: unknown): Compared => ({ what, got, want });

/** A value that the outside only bounds. */
export const between = (what: string, got: number, least: number, most: number): Compared[] => [
  { what: `${what}, at least`, got, least },
  { what: `${what}, at most`, got, most },
];

/** Half of the last place of a number as it is printed: "14.50" is 0.005. */
export function halfOfLast(printed: string): number {
  const places = /\.(\d+)/.exec(printed)?.[1]?.length ?? 0;
  return 0.5 * 10 ** -places;
}

/** A value printed with its figures, "0.0318": within half of the last of them, and a hair for binary fractions. */
export function printed(what: string, got: number, text: string, unitsOfLast = 0.5): Compared {
  const want = Number(text);
  return near(what, got, want, 2 * unitsOfLast * halfOfLast(text) + 1e-9 * Math.abs(want));
}

declare module 'vitest' {
  interface TaskMeta {
    /** Read by scripts/outside-values.mjs. */
    outside?: { readonly source: string; readonly mark: Mark; readonly values: number };
  }
}

/** Registers each comparison of test/published: `source` names the sheet, `npm test` counts what is compared with it. */
export function published(source: string) {
  return (title: string, mark: Mark, values: () => readonly Compared[]): void => {
    test(`${source}: ${title} (${mark})`, ({ task }) => {
      const all = values();
      expect(all.length, 'no value is compared').toBeGreaterThan(0);
      expect(all.filter((each) => !holds(each))).toEqual([]);
      task.meta.outside = { source, mark, values: all.length };
    });
  };
}

function holds({ got, want, within, least, most }: Compared): boolean {
  if (least !== undefined || most !== undefined)
    return typeof got === 'number' && got >= (least ?? -Infinity) && got <= (most ?? Infinity);
  if (within !== undefined)
    return typeof got === 'number' && typeof want === 'number' && Math.abs(got - want) <= within;
  return want !== undefined && isDeepStrictEqual(got, want);
}
