import type { Spot } from '../camera/camera.js';
import { leastSquares } from '../least-squares.js';
import type { Place } from '../mat/mat.js';
import { type BoltShape, type HeadForm, offSilhouette, silhouette } from './silhouette.js';

export interface FittedBolt {
  readonly shape: BoltShape;
  readonly form: HeadForm;
  /** of the edge from the fitted outline, millimetres */
  readonly rms: number;
  readonly worst: number;
  /** standard uncertainty from the fit alone */
  readonly uLength: number;
  readonly uDiameter: number;
}

/** The bolt whose silhouette lies nearest to an outline seen on the mat; either end may be the head, of either form. */
export function fitBolt(outline: readonly Place[], eye: Spot): FittedBolt | undefined {
  const starts = bothWays(outline);
  const fits = starts.flatMap((start) =>
    (['hexagon', 'round'] as const).map((form) => fitted(outline, start, form, eye)),
  );
  return fits.filter(isBolt).sort((a, b) => a.rms - b.rms)[0];
}

const isBolt = ({ shape }: FittedBolt) =>
  shape.d > 1.5 && shape.length > 2 && shape.head > 1.15 * shape.d && shape.headHeight > 0.15 * shape.d;

/** Direction of the most spread, the widths along it, and from those a rough bolt with its head at either end. */
function bothWays(outline: readonly Place[]): BoltShape[] {
  const n = outline.length;
  const mx = outline.reduce((sum, { x }) => sum + x, 0) / n;
  const my = outline.reduce((sum, { y }) => sum + y, 0) / n;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const { x, y } of outline) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
    yy += (y - my) ** 2;
  }
  const main = 0.5 * Math.atan2(2 * xy, xx - yy);
  return [main, main + Math.PI, main + Math.PI / 2, main - Math.PI / 2].flatMap((turn) => {
    const start = roughly(outline, { x: mx, y: my }, turn);
    return start ? [start] : [];
  });
}

interface Along {
  readonly along: number;
  readonly side: number;
}

const seenAlong = (outline: readonly Place[], middle: Place, turn: number): Along[] => {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  return outline.map(({ x, y }) => ({
    along: c * (x - middle.x) + s * (y - middle.y),
    side: -s * (x - middle.x) + c * (y - middle.y),
  }));
};

/** The two long edges of the shank, supposed in the further part, tell the direction; where the outline steps in, the head ends. */
function roughly(outline: readonly Place[], middle: Place, main: number): BoltShape | undefined {
  let turn = main;
  let shank: { center: number; slope: number; d: number } | undefined;
  for (let round = 0; round < 3; round += 1) {
    shank = shankOf(seenAlong(outline, middle, turn));
    if (!shank) return undefined;
    turn += Math.atan(shank.slope);
  }
  const { center, d } = shank!;
  const own = seenAlong(outline, middle, turn).map(({ along, side }) => ({ along, side: side - center }));
  const from = Math.min(...own.map(({ along }) => along));
  const to = Math.max(...own.map(({ along }) => along));
  const wide = own.filter(
    ({ side, along }) => Math.abs(side) > 0.5 * d + 0.6 && along < from + 0.7 * (to - from),
  );
  if (wide.length < 6) return undefined;
  const step = Math.max(...wide.map(({ along }) => along));
  const head = Math.max(...wide.map(({ side }) => side)) - Math.min(...wide.map(({ side }) => side));
  if (head < 1.1 * d || to - step < 0.4 * d) return undefined;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  return {
    x: middle.x + c * step - s * center,
    y: middle.y + s * step + c * center,
    turn,
    length: to - step,
    d,
    head: 0.9 * head,
    headHeight: Math.max(0.3 * d, 0.8 * (step - from)),
  };
}

function shankOf(own: readonly Along[]) {
  const from = Math.min(...own.map(({ along }) => along));
  const whole = Math.max(...own.map(({ along }) => along)) - from;
  const part = own.filter(({ along }) => along > from + 0.55 * whole && along < from + 0.93 * whole);
  if (part.length < 6) return undefined;
  const sides = part.map(({ side }) => side).sort((a, b) => a - b);
  const between = (sides[0]! + sides.at(-1)!) / 2;
  const upper = lineThrough(part.filter(({ side }) => side > between));
  const lower = lineThrough(part.filter(({ side }) => side <= between));
  if (!upper || !lower) return undefined;
  const at = (upper.along + lower.along) / 2;
  const up = upper.side + upper.slope * (at - upper.along);
  const down = lower.side + lower.slope * (at - lower.along);
  const slope = (upper.slope + lower.slope) / 2;
  return { center: (up + down) / 2 - slope * at, slope, d: up - down };
}

function lineThrough(points: readonly Along[]) {
  const n = points.length;
  if (n < 3) return undefined;
  const along = points.reduce((sum, point) => sum + point.along, 0) / n;
  const side = points.reduce((sum, point) => sum + point.side, 0) / n;
  let xx = 0;
  let xy = 0;
  for (const point of points) {
    xx += (point.along - along) ** 2;
    xy += (point.along - along) * (point.side - side);
  }
  return { along, side, slope: xx > 1e-6 ? xy / xx : 0 };
}

function fitted(outline: readonly Place[], start: BoltShape, form: HeadForm, eye: Spot): FittedBolt {
  const shapeOf = ([x, y, turn, length, d, head, headHeight]: readonly number[]): BoltShape => ({
    x: x!,
    y: y!,
    turn: turn!,
    length: length!,
    d: d!,
    head: head!,
    headHeight: headHeight!,
  });
  let weights = outline.map(() => 1);
  const first: readonly number[] = [
    start.x,
    start.y,
    start.turn,
    start.length,
    start.d,
    start.head,
    start.headHeight,
  ];
  let values = first;
  let off = new Float64Array(outline.length);
  const steps = [0.01, 0.01, 0.0005, 0.01, 0.01, 0.01, 0.01];
  let cofactors = [0, 0];
  for (let round = 0; round < 3; round += 1) {
    const fit = leastSquares(
      (v) => {
        const parts = silhouette(shapeOf(v), form, eye);
        const out = new Float64Array(outline.length + first.length);
        for (const [i, place] of outline.entries()) out[i] = weights[i]! * offSilhouette(parts, place);
        // once a tip is far beyond the outline nothing draws it back, so the start holds everything by a thread
        for (const [k, value] of first.entries()) out[outline.length + k] = 0.02 * (v[k]! - value);
        return out;
      },
      values,
      { steps, most: 12 },
    );
    values = fit.values;
    cofactors = [fit.cofactors.get(3, 3), fit.cofactors.get(4, 4)];
    const parts = silhouette(shapeOf(values), form, eye);
    off = Float64Array.from(outline, (place) => Math.abs(offSilhouette(parts, place)));
    const usual = Math.max(0.03, [...off].sort((a, b) => a - b)[off.length >> 1]!);
    weights = [...off].map((miss) => (miss < 3 * usual ? 1 : Math.sqrt((3 * usual) / miss)));
  }
  const rms = Math.sqrt(off.reduce((sum, miss) => sum + miss * miss, 0) / off.length);
  return {
    shape: shapeOf(values),
    form,
    rms,
    worst: off.reduce((a, b) => Math.max(a, b), 0),
    uLength: rms * Math.sqrt(3 * Math.max(0, cofactors[0]!)),
    uDiameter: rms * Math.sqrt(3 * Math.max(0, cofactors[1]!)),
  };
}
