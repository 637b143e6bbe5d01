import { type Box, circle, type Drawing, line, type Place, rect, type Shape, short, text } from './shape.js';

/** A hole of a face, y upward, and how it is shown. */
export interface HoleMark {
  readonly xMm: number;
  readonly yMm: number;
  /** what stands in it */
  readonly words: string;
  readonly state: string;
  /** over others of its kind */
  readonly times?: number;
  /** a second sign, so that color alone never tells */
  readonly sign?: string;
  readonly crossed?: boolean;
}

/** The room that a picture of holes has. */
export interface HoleRoom {
  readonly width: number;
  readonly height: number;
  readonly largest: number;
  /** where many lie close; a number must still be readable */
  readonly smallest: number;
  /** from the outermost centers to the edge of the face */
  readonly rim: number;
  /** from the outermost centers to the edge of the picture */
  readonly margin: number;
  readonly corner: number;
}

export interface HoleDrawing extends Drawing {
  readonly places: readonly Place[];
  readonly radius: number;
}

/** The room for a face at its own proportions, as wide or as high as the span allows. */
export function roomFor(holes: readonly { xMm: number; yMm: number }[], span: number): HoleRoom {
  const { width, height } = boxOf(holes.map(({ xMm, yMm }) => ({ x: xMm, y: yMm })));
  const scale = (span * 0.62) / Math.max(width, height, 1);
  const margin = span * 0.19;
  return {
    width: width * scale + 2 * margin,
    height: height * scale + 2 * margin,
    largest: span * 0.085,
    smallest: span * 0.03,
    rim: span * 0.12,
    margin,
    corner: span * 0.12,
  };
}

/**
 * The holes as they lie on the face, y upward, in proportion and centered, with the edge of the face round them; where
 * asked, a line through them in the tightening order, or a bow from the last one to the next.
 */
export function holesDrawing(
  holes: readonly HoleMark[],
  room: HoleRoom,
  {
    path = [],
    bow,
    says = '',
  }: { path?: readonly number[]; bow?: readonly [number, number] | undefined; says?: string } = {},
): HoleDrawing {
  const places = layOut(holes, room);
  const radius = radiusIn(places, room);
  const face = boxOf(places);
  const edge = {
    x: face.x - room.rim,
    y: face.y - room.rim,
    width: face.width + 2 * room.rim,
    height: face.height + 2 * room.rim,
  };
  const order = path.map((i) => places[i]!);
  return {
    width: room.width,
    height: room.height,
    says,
    places,
    radius,
    shapes: [
      rect('face', edge, room.corner),
      ...(order.length > 1 ? [line('order', order)] : []),
      ...(bow ? [bowShape(places[bow[0]]!, places[bow[1]]!, radius)] : []),
      ...holes.flatMap((hole, i) => holeShapes(hole, places[i]!, radius)),
    ],
  };
}

/** A single hole or a straight row stays in the middle. */
function layOut(holes: readonly HoleMark[], { width, height, margin }: HoleRoom): Place[] {
  const box = boxOf(holes.map(({ xMm, yMm }) => ({ x: xMm, y: yMm })));
  const scales = [
    [width - 2 * margin, box.width],
    [height - 2 * margin, box.height],
  ].flatMap(([room, span]) => (span! > 0 ? [room! / span!] : []));
  const scale = Math.min(...scales, Number.MAX_VALUE);
  return holes.map((h) => ({
    x: width / 2 + (h.xMm - (box.x + box.width / 2)) * scale,
    y: height / 2 - (h.yMm - (box.y + box.height / 2)) * scale,
  }));
}

function boxOf(places: readonly Place[]): Box {
  const [xs, ys] = [places.map((p) => p.x), places.map((p) => p.y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** Neighbors must not cover each other. */
function radiusIn(places: readonly Place[], { largest, smallest }: HoleRoom): number {
  const gaps = places.flatMap((a, i) => places.slice(i + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y)));
  return Math.max(smallest, Math.min(largest, 0.46 * Math.min(...gaps, Number.MAX_VALUE)));
}

function holeShapes(
  { words, state, times = 1, sign, crossed }: HoleMark,
  at: Place,
  radius: number,
): Shape[] {
  const r = radius * times;
  const size = r * (words.length > 2 ? 0.8 : 1);
  return [
    ...(crossed ? [crossOver(state, at, r * 1.27)] : []),
    circle(`hole ${state}`, at, r),
    text(`hole-turn ${state}`, at, words, { size }),
    ...(sign
      ? [text(`sign ${state}`, { x: at.x + r * 0.95, y: at.y - r * 0.9 }, sign, { size: r * 0.8 })]
      : []),
  ];
}

function crossOver(state: string, { x, y }: Place, arm: number): Shape {
  const [left, right, top, bottom] = [x - arm, x + arm, y - arm, y + arm].map(short);
  return {
    is: 'path',
    d: `M${left} ${top}L${right} ${bottom}M${right} ${top}L${left} ${bottom}`,
    look: `cross ${state}`,
  };
}

/** From the rim of one hole to the rim of the next, bent aside so that it crosses no hole between on a straight row. */
function bowShape(from: Place, to: Place, r: number): Shape {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.hypot(dx, dy) || 1;
  const off = (p: Place, by: number): Place => ({ x: p.x + (dx * by) / length, y: p.y + (dy * by) / length });
  const [a, b] = [off(from, r), off(to, -1.5 * r)];
  const mid = { x: (a.x + b.x) / 2 - dy * 0.12, y: (a.y + b.y) / 2 + dx * 0.12 };
  const [p, q, s] = [a, mid, b].map(({ x, y }) => `${short(x)} ${short(y)}`);
  return { is: 'path', d: `M${p}Q${q} ${s}`, look: 'bow' };
}
