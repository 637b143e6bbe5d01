import { type Mat, type MatPaper, matOf, matPapers, type Place, stretched, type Tag } from '../mat/mat.js';
import { tagCodes } from '../mat/tag-codes.js';
import { type Gray, type Picture, reducedGray } from '../picture.js';
import { darkQuads } from './dark-quads.js';
import { across, homography } from './homography.js';

/** A tag of the mat seen in the picture: its corners, in the order of the printed ones, in pixels. */
export interface SeenTag {
  readonly tag: Tag;
  readonly corners: readonly Place[];
}

export interface SeenMat {
  readonly mat: Mat;
  readonly tags: readonly SeenTag[];
}

/** of 36; any two tags differ in 12 */
const mostWrongBits = 2;
const fewest = 6;

/** The tags of one printed sheet in the picture, at the reduced size at which most are read; undefined without a mat. */
export function findMat(picture: Picture, scale = { across: 1, along: 1 }): SeenMat | undefined {
  const longest = Math.max(picture.width, picture.height);
  const first = Math.max(1, Math.round(longest / 1500));
  const steps = [...new Set([first, Math.max(1, Math.floor(first / 2)), first * 2, first * 4])];
  let best: SeenMat | undefined;
  for (const step of steps) {
    const seen = atStep(picture, step);
    if (seen && seen.tags.length > (best?.tags.length ?? 0)) best = seen;
    if (best && best.tags.length >= 0.7 * best.mat.tags.length) break;
  }
  if (!best || best.tags.length < fewest) return undefined;
  const mat = stretched(best.mat, scale);
  return {
    mat,
    tags: best.tags.map((seen) => ({ ...seen, tag: mat.tags.find(({ id }) => id === seen.tag.id)! })),
  };
}

function atStep(picture: Picture, step: number): SeenMat | undefined {
  const gray = reducedGray(picture, step);
  const found = new Map<number, readonly Place[]>();
  for (const quad of darkQuads(gray)) {
    const read = readTag(gray, quad);
    if (read)
      found.set(
        read.id,
        read.corners.map(({ x, y }) => ({ x: x * step, y: y * step })),
      );
  }
  return matPapers.map((paper) => tagsOf(paper, found)).sort((a, b) => b.tags.length - a.tags.length)[0];
}

function tagsOf(paper: MatPaper, found: ReadonlyMap<number, readonly Place[]>): SeenMat {
  const mat = matOf(paper);
  const tags = mat.tags.flatMap((tag) => {
    const corners = found.get(tag.id);
    return corners ? [{ tag, corners }] : [];
  });
  return { mat, tags };
}

/** fewer than these are no ring of squares; without a sheet none or a few are found */
const fewestSquares = 20;

/**
 * A ring of dark squares whose tags could not be read: how short they are seen for their length, and how long in pixels,
 * both in the middle of all. Undefined where there is none.
 */
export function unreadSquares(
  picture: Picture,
): { readonly short: number; readonly long: number } | undefined {
  const step = Math.max(1, Math.round(Math.max(picture.width, picture.height) / 1500));
  const quads = darkQuads(reducedGray(picture, step));
  if (quads.length < fewestSquares) return undefined;
  const sides = quads.map((quad) => {
    const [a, b, c, d] = quad.map((p, i) => {
      const next = quad[(i + 1) % 4]!;
      return Math.hypot(p.x - next.x, p.y - next.y);
    }) as [number, number, number, number];
    return [a + c, b + d].map((both) => (step * both) / 2).sort((x, y) => x - y) as [number, number];
  });
  return {
    short: middle(sides.map(([least, most]) => least / most)),
    long: middle(sides.map(([, most]) => most)),
  };
}

const middle = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!;

const side = 8;
const unit: readonly Place[] = [
  { x: 0, y: 0 },
  { x: side, y: 0 },
  { x: side, y: side },
  { x: 0, y: side },
];

/** The tag in a dark quad (corners clockwise in the picture), with its corners turned to begin at its upper left. */
function readTag(gray: Gray, quad: readonly Place[]): { id: number; corners: readonly Place[] } | undefined {
  const h = homography(unit, quad);
  const fields = Array.from({ length: side * side }, (_, i) => {
    const x = (i % side) + 0.5;
    const y = Math.floor(i / side) + 0.5;
    let sum = 0;
    for (const dy of [-0.2, 0.2])
      for (const dx of [-0.2, 0.2]) sum += grayAt(gray, across(h, { x: x + dx, y: y + dy }));
    return sum / 4;
  });
  const isEdge = (i: number) => i % side === 0 || i % side === side - 1 || i < side || i >= side * (side - 1);
  const edge = fields.filter((_, i) => isEdge(i));
  const inner = fields.filter((_, i) => !isEdge(i));
  const dark = edge.reduce((sum, value) => sum + value, 0) / edge.length;
  const bright = [...inner].sort((a, b) => b - a)[5]!;
  const limit = (dark + bright) / 2;
  if (bright - dark < 20 || edge.some((value) => value > limit + 0.15 * (bright - dark))) return undefined;
  return identity(
    inner.map((value) => value > limit),
    quad,
  );
}

const codes = tagCodes.map((code) => Number.parseInt(code, 16).toString(2).padStart(36, '0'));

function identity(bits: readonly boolean[], quad: readonly Place[]) {
  let turned = bits;
  for (let turn = 0; turn < 4; turn += 1) {
    const id = codes.findIndex((code) => wrongBits(code, turned) <= mostWrongBits);
    if (id >= 0) return { id, corners: quad.map((_, i) => quad[(i + turn) % 4]!) };
    // a quarter turn against the clock: what stood at the upper right comes to the upper left
    turned = turned.map((_, i) => turned[(i % 6) * 6 + (5 - Math.floor(i / 6))]!);
  }
  return undefined;
}

function wrongBits(code: string, bits: readonly boolean[]): number {
  let wrong = 0;
  for (let i = 0; i < 36 && wrong <= mostWrongBits; i += 1) if ((code[i] === '1') !== bits[i]) wrong += 1;
  return wrong;
}

function grayAt({ width, height, data }: Gray, { x, y }: Place): number {
  const column = Math.min(width - 1, Math.max(0, Math.floor(x)));
  const row = Math.min(height - 1, Math.max(0, Math.floor(y)));
  return data[row * width + column]!;
}
