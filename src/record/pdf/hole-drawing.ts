import type { Content } from 'pdfmake/interfaces.js';
import type { Hole, JointBlock } from '../service-record/index.js';
import { color } from './theme.js';
import type { Typesetter } from './typesetter.js';

interface DrawingSize {
  readonly width: number;
  readonly height: number;
}

/** Points. */
export const drawingSizes: Readonly<Record<'whole' | 'half', DrawingSize>> = {
  whole: { width: 140, height: 88 },
  half: { width: 92, height: 60 },
};
/** A hole is drawn smaller where many lie close. */
const largestHole = 7.5;
const smallestHole = 3.2;

/**
 * The holes as they lie on the face, y upward, each with its place in the tightening order. A hole that clicked in
 * every pass is filled, one that did not is an empty dashed ring, a failed one is crossed: shape before color.
 */
export function holeDrawing(joint: JointBlock, type: Typesetter): Content {
  const drawing = drawingSizes[joint.half ? 'half' : 'whole'];
  const places = layout(joint.holes, drawing);
  const radius = holeRadius(places);
  const shapes = [
    outline(places),
    orderPath(joint, places),
    ...joint.holes.map((hole, i) => holeShape(hole, places[i]!, radius)),
  ];
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${drawing.width}" height="${drawing.height}" viewBox="0 0 ${drawing.width} ${drawing.height}">${shapes.join('')}</svg>`;
  const numbers = joint.holes.map((hole, i) =>
    holeNumber(hole, { ...places[i]!, below: drawing.height }, radius, type),
  );
  const edge = joint.bottomEdge
    ? [type.text(joint.bottomEdge, { fontSize: type.size.small, color: color.soft, alignment: 'center' })]
    : [];
  return { stack: [{ svg, width: drawing.width }, ...numbers, ...edge] };
}

interface Place {
  readonly x: number;
  readonly y: number;
}

/** Scaled to fit and centered, keeping proportions; a single hole or a straight row stays in the middle. */
function layout(holes: readonly Hole[], drawing: DrawingSize): Place[] {
  const xs = holes.map((h) => h.xMm);
  const ys = holes.map((h) => h.yMm);
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const room = 2 * largestHole + 10;
  const scale = Math.min(
    (drawing.width - room) / (right - left || 1),
    (drawing.height - room) / (high - low || 1),
  );
  return holes.map((h) => ({
    x: drawing.width / 2 + (h.xMm - (left + right) / 2) * scale,
    y: drawing.height / 2 - (h.yMm - (low + high) / 2) * scale,
  }));
}

/** Neighbors must not cover each other, as far as a number can still be read. */
function holeRadius(places: readonly Place[]): number {
  const gaps = places.flatMap((a, i) => places.slice(i + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y)));
  const nearest = Math.min(...gaps, Number.POSITIVE_INFINITY);
  return Math.max(smallestHole, Math.min(largestHole, 0.46 * nearest));
}

function outline(places: readonly Place[]): string {
  const pad = largestHole + 4;
  const x = Math.min(...places.map((p) => p.x)) - pad;
  const y = Math.min(...places.map((p) => p.y)) - pad;
  const width = Math.max(...places.map((p) => p.x)) + pad - x;
  const height = Math.max(...places.map((p) => p.y)) + pad - y;
  return `<rect x="${n(x)}" y="${n(y)}" width="${n(width)}" height="${n(height)}" rx="14" fill="none" stroke="${color.soft}" stroke-width="0.8"/>`;
}

function orderPath(joint: JointBlock, places: readonly Place[]): string {
  const visits = joint.holes
    .flatMap((hole, i) => hole.turns.map((turn) => ({ turn, place: places[i]! })))
    .sort((a, b) => a.turn - b.turn);
  const points = visits.map(({ place }) => `${n(place.x)},${n(place.y)}`).join(' ');
  return `<polyline points="${points}" fill="none" stroke="${color.rule}" stroke-width="0.9" stroke-dasharray="2 2"/>`;
}

function holeShape(hole: Hole, { x, y }: Place, radius: number): string {
  const ring = `cx="${n(x)}" cy="${n(y)}" r="${n(radius)}"`;
  if (hole.state === 'clicked') return `<circle ${ring} fill="${color.accent}"/>`;
  if (hole.state === 'not-complete')
    return `<circle ${ring} fill="#ffffff" stroke="${color.open}" stroke-width="1" stroke-dasharray="2.5 1.8"/>`;
  const arm = radius + 2;
  const cross = `M${n(x - arm)} ${n(y - arm)} L${n(x + arm)} ${n(y + arm)} M${n(x + arm)} ${n(y - arm)} L${n(x - arm)} ${n(y + arm)}`;
  return `<path d="${cross}" stroke="${color.fail}" stroke-width="1.2" fill="none"/><circle ${ring} fill="#ffffff" stroke="${color.fail}" stroke-width="1.4"/>`;
}

/** Text of the document over the drawing: the drawing's own text could not use a font from memory. */
function holeNumber(
  hole: Hole,
  { x, y, below }: Place & { readonly below: number },
  radius: number,
  type: Typesetter,
): Content {
  const clicked = hole.state === 'clicked';
  const fontSize = radius * (hole.turns.length > 1 ? 0.8 : 1.07);
  const width = 4 * largestHole;
  return {
    relativePosition: { x: x - width / 2, y: y - below - fontSize * 0.62 },
    columns: [
      {
        width,
        ...type.text(hole.turns.join('·') || '–', {
          fontSize,
          bold: true,
          alignment: 'center',
          color: clicked ? '#ffffff' : color.ink,
        }),
      },
    ],
  };
}

const n = (value: number) => value.toFixed(2);
