import { WorksheetError } from './error.js';

/**
 * A picture of an answer as plain data: curves over two axes with the operating point marked. It says nothing about how
 * it is drawn, survives JSON unchanged, and is computed by the worksheet that owns the answer.
 */
export interface Picture {
  readonly title: string;
  /** what the picture shows, in one sentence, for a reader who cannot see it */
  readonly says: string;
  readonly x: PictureAxis;
  readonly y: PictureAxis;
  /** at least one; the points of each run along x in rising order */
  readonly curves: readonly PictureCurve[];
  /** where the answer stands: usually one */
  readonly marks?: readonly PictureMark[];
  /** stretches of an axis that mean something: "healthy", "over the limit" */
  readonly bands?: readonly PictureBand[];
}

export interface PictureAxis {
  readonly label: string;
  /** an id of the unit table ("psi", "mm", "°C"), or "" for a plain number; every figure on this axis is in it */
  readonly unit: string;
  /** spread by its logarithm; then every figure on this axis is above 0 */
  readonly logarithmic?: true;
}

export interface PictureCurve {
  readonly label: string;
  readonly points: readonly (readonly [x: number, y: number])[];
}

export interface PictureMark {
  readonly x: number;
  readonly y: number;
  readonly label: string;
}

/** `from` and `to` on the named axis; one of them may be left open. */
export interface PictureBand {
  readonly axis: 'x' | 'y';
  readonly from?: number;
  readonly to?: number;
  readonly label: string;
}

/**
 * The picture itself when it can be drawn. Throws WorksheetError for what a drawing would silently leave out: a figure
 * that is not finite or not above 0 on a logarithmic axis, a curve of fewer than two points, points that run backward.
 */
export function picture(drawn: Picture): Picture {
  if (drawn.curves.length === 0) throw new WorksheetError(`the picture “${drawn.title}” has no curve`);
  for (const curve of drawn.curves) checkCurve(curve, drawn);
  for (const { x, y, label } of drawn.marks ?? []) checkPoint(x, y, label, drawn);
  for (const band of drawn.bands ?? []) checkBand(band, drawn);
  return drawn;
}

/** `count` figures from `from` to `to`, both included, evenly spaced (by ratio when `logarithmic`). */
export function spaced(from: number, to: number, count: number, logarithmic = false): readonly number[] {
  const part = (i: number) => i / (count - 1);
  return Array.from({ length: count }, (_, i) =>
    logarithmic ? from * (to / from) ** part(i) : from + (to - from) * part(i),
  );
}

/** A curve from a function and the places where it is drawn. */
export function curve(label: string, xs: readonly number[], y: (x: number) => number): PictureCurve {
  return { label, points: xs.map((x) => [x, y(x)] as const) };
}

function checkCurve({ label, points }: PictureCurve, drawn: Picture): void {
  if (points.length < 2) throw new WorksheetError(`curve “${label}” has ${points.length} points; at least 2`);
  points.forEach(([x, y], i) => {
    checkPoint(x, y, label, drawn);
    if (i > 0 && x < points[i - 1]![0])
      throw new WorksheetError(`curve “${label}” runs backward at ${drawn.x.label} ${x}`);
  });
}

function checkPoint(x: number, y: number, label: string, drawn: Picture): void {
  checkFigure(x, drawn.x, label);
  checkFigure(y, drawn.y, label);
}

function checkBand({ axis, from, to, label }: PictureBand, drawn: Picture): void {
  if (from === undefined && to === undefined) throw new WorksheetError(`band “${label}” has no end`);
  for (const end of [from, to]) if (end !== undefined) checkFigure(end, drawn[axis], label);
}

function checkFigure(value: number, { label, logarithmic }: PictureAxis, of: string): void {
  if (!Number.isFinite(value)) throw new WorksheetError(`“${of}” has ${value} on the axis ${label}`);
  if (logarithmic && value <= 0)
    throw new WorksheetError(`“${of}” has ${value} on the axis ${label}, which is logarithmic: above 0`);
}
