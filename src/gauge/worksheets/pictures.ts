import { curve, type Picture, type PictureBand, picture, spaced } from '../../worksheet/index.js';
import type { Limit } from '../decide.js';
import { normalBelow } from '../normal.js';

const points = 81;

/** What is outside a limit, as bands of an axis. */
export function outsideBands(axis: 'x' | 'y', { min, max }: Limit): PictureBand[] {
  return [
    ...(min === undefined ? [] : [{ axis, to: min, label: 'too small' }]),
    ...(max === undefined ? [] : [{ axis, from: max, label: 'too large' }]),
  ];
}

/** Where the true value may lie about the reading, against the limits. Nothing to draw for an exact comparison. */
export function distributionPicture(given: {
  readonly value: number;
  readonly u: number;
  readonly limit: Limit;
  readonly unit?: string | undefined;
}): Picture | undefined {
  const { value, u, limit, unit = '' } = given;
  if (!(u > 0)) return undefined;
  const near = [limit.min, limit.max].filter(
    (x) => x !== undefined && Math.abs(x - value) < 12 * u,
  ) as number[];
  const low = Math.min(value - 4 * u, ...near.map((x) => x - u));
  const high = Math.max(value + 4 * u, ...near.map((x) => x + u));
  return picture({
    title: 'Where the true value may lie',
    says: 'The hill is how likely each size is; the part of it over a shaded stretch is the chance that it does not conform.',
    x: { label: unit ? `size, ${unit}` : 'size', unit: '' },
    y: { label: 'how likely, highest 1', unit: '' },
    curves: [curve('true size', spaced(low, high, points), (x) => Math.exp(-(((x - value) / u) ** 2) / 2))],
    marks: [{ x: value, y: 1, label: 'reading' }],
    bands: outsideBands('x', {
      ...(limit.min !== undefined && limit.min > low && { min: limit.min }),
      ...(limit.max !== undefined && limit.max < high && { max: limit.max }),
    }),
  });
}

/** How the chance of conformity moves with the tool, the value staying where it is. */
export function chancePicture(given: {
  readonly value: number;
  readonly u: number;
  readonly limit: Limit;
  readonly confidence: number;
}): Picture | undefined {
  const { value, u, limit, confidence } = given;
  if (!(u > 0)) return undefined;
  const chance = (expanded: number) => {
    const at = expanded / 2;
    const below = limit.min === undefined ? 0 : normalBelow((limit.min - value) / at);
    const above = limit.max === undefined ? 0 : normalBelow((value - limit.max) / at);
    return 100 * Math.max(0, 1 - below - above);
  };
  return picture({
    title: 'What a finer tool would say',
    says: 'To the left the tools get finer. Where the line enters a shaded stretch, it is decided, if the value stays where it is.',
    x: { label: 'uncertainty of the tool, k = 2', unit: '' },
    y: { label: 'chance that it conforms', unit: '%' },
    curves: [curve('chance', spaced(0.02 * u, 3 * u, points), chance)],
    marks: [{ x: 2 * u, y: chance(2 * u), label: 'now' }],
    bands: [
      { axis: 'y', from: 100 * confidence, to: 100, label: 'pass' },
      { axis: 'y', from: 0, to: 100 * (1 - confidence), label: 'fail' },
    ],
  });
}

/** A line over an axis with the answer marked on it and what is outside its limit shaded. */
export function linePicture(given: {
  readonly title: string;
  readonly says: string;
  readonly x: Picture['x'];
  readonly y: Picture['y'];
  readonly label: string;
  readonly from: number;
  readonly to: number;
  readonly at: (x: number) => number;
  readonly mark: { readonly x: number; readonly label: string };
  readonly limit?: Limit;
}): Picture {
  const { title, says, x, y, label, from, to, at, mark, limit = {} } = given;
  return picture({
    title,
    says,
    x,
    y,
    curves: [curve(label, spaced(from, to, 41), at)],
    marks: [{ x: mark.x, y: at(mark.x), label: mark.label }],
    bands: outsideBands('y', limit),
  });
}
