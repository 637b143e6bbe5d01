/**
 * What a picture is made of, as plain data in the units of its own view box. A shape carries a look, never a color:
 * the screen dresses it by its style sheet, the paper by its theme.
 */
export type Shape = { readonly look: string } & (
  | { readonly is: 'path'; readonly d: string }
  | { readonly is: 'circle'; readonly x: number; readonly y: number; readonly r: number }
  | ({ readonly is: 'rect'; readonly round?: number } & Box)
  | Text
);

export interface Text {
  readonly is: 'text';
  readonly x: number;
  /** the middle of its line */
  readonly y: number;
  readonly words: string;
  readonly anchor?: 'start' | 'end';
  /** where the look does not say it */
  readonly size?: number;
}

export interface Place {
  readonly x: number;
  readonly y: number;
}

export interface Box extends Place {
  readonly width: number;
  readonly height: number;
}

export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
  /** the picture in words, for whoever cannot see it */
  readonly says: string;
}

/** A line through places. */
export const line = (look: string, places: readonly Place[]): Shape => ({
  is: 'path',
  d: along(places),
  look,
});

/** A closed outline through places. */
export const area = (look: string, places: readonly Place[]): Shape => ({
  is: 'path',
  d: `${along(places)}Z`,
  look,
});

export const upright = (look: string, x: number, from: number, to: number): Shape =>
  line(look, [
    { x, y: from },
    { x, y: to },
  ]);

export const level = (look: string, y: number, from: number, to: number): Shape =>
  line(look, [
    { x: from, y },
    { x: to, y },
  ]);

export const circle = (look: string, { x, y }: Place, r: number): Shape => ({ is: 'circle', x, y, r, look });

export const rect = (look: string, box: Box, round?: number): Shape => ({
  is: 'rect',
  ...box,
  ...(round !== undefined && { round }),
  look,
});

export const text = (
  look: string,
  { x, y }: Place,
  words: string,
  more: Pick<Text, 'anchor' | 'size'> = {},
): Shape => ({ is: 'text', x, y, words, look, ...more });

const along = (places: readonly Place[]): string =>
  places.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`).join('');

/** A hundredth of a unit is finer than any screen or printer shows. */
export const short = (value: number): number => Math.round(value * 100) / 100;
