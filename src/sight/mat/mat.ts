import { tagCodes } from './tag-codes.js';

/** Everything in millimetres; the origin is the middle of the sheet, x to the right, y up, as the sheet is read. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** `x`, `y` is the corner with the least of both. */
export interface Rectangle extends Place {
  readonly width: number;
  readonly height: number;
}

export const matPapers = ['letter', 'a4'] as const;
export type MatPaper = (typeof matPapers)[number];

/** ISO 216 and ANSI/ASME Y14.1. */
const sheets: Readonly<Record<MatPaper, { width: number; height: number; firstTag: number }>> = {
  letter: { width: 215.9, height: 279.4, firstTag: 0 },
  a4: { width: 210, height: 297, firstTag: 66 },
};

const columns = 16;
const rows = 21;
const ring = 2;
export const square = 12;
const tagSide = 9;
/** the side of one of the 8 × 8 fields of a tag, its black edge counted */
const field = tagSide / 8;
/** as printed; a caliper takes hold of their ends */
export const bars = { across: 100, along: 200, thick: 2 } as const;
const barGap = 2;

export interface Tag {
  readonly id: number;
  readonly middle: Place;
  /** in the order of the library: from the upper left, clockwise as the sheet is read */
  readonly corners: readonly Place[];
  /** the white fields of its inner 6 × 6 */
  readonly white: readonly Rectangle[];
}

/** A point where two black and two white squares meet. */
export interface Crossing extends Place {
  /** whether the square to its upper right is white */
  readonly whiteUpperRight: boolean;
}

/** The printed sheet, from which the paper, the picture file and the reader are made alike. */
export interface Mat {
  readonly paper: MatPaper;
  readonly width: number;
  readonly height: number;
  /** the white middle, where parts lie */
  readonly middle: Rectangle;
  readonly black: readonly Rectangle[];
  readonly tags: readonly Tag[];
  readonly crossings: readonly Crossing[];
  readonly barAcross: Rectangle;
  readonly barAlong: Rectangle;
}

const left = (-columns * square) / 2;
const top = (rows * square) / 2;
const inRing = (column: number, row: number) =>
  column < ring || row < ring || column >= columns - ring || row >= rows - ring;
const isBlack = (column: number, row: number) => (column + row) % 2 === 0;

/** The mat as a printer made it: everything stretched by how its two bars came out. */
export function stretched(mat: Mat, { across, along }: { across: number; along: number }): Mat {
  const place = <P extends Place>(p: P): P => ({ ...p, x: p.x * across, y: p.y * along });
  const box = (r: Rectangle): Rectangle => ({
    ...place(r),
    width: r.width * across,
    height: r.height * along,
  });
  return {
    ...mat,
    middle: box(mat.middle),
    black: mat.black.map(box),
    tags: mat.tags.map((tag) => ({
      ...tag,
      middle: place(tag.middle),
      corners: tag.corners.map(place),
      white: tag.white.map(box),
    })),
    crossings: mat.crossings.map(place),
    barAcross: box(mat.barAcross),
    barAlong: box(mat.barAlong),
  };
}

/** The mat of one paper. Its tags are its own, so that a picture tells which sheet was printed. */
export function matOf(paper: MatPaper): Mat {
  const { width, height, firstTag } = sheets[paper];
  const cells = Array.from({ length: rows * columns }, (_, i) => ({
    column: i % columns,
    row: Math.floor(i / columns),
  })).filter(({ column, row }) => inRing(column, row));
  const white = cells.filter(({ column, row }) => !isBlack(column, row));
  return {
    paper,
    width,
    height,
    middle: around({ x: 0, y: 0 }, (columns - 2 * ring) * square, (rows - 2 * ring) * square),
    black: cells
      .filter(({ column, row }) => isBlack(column, row))
      .map((cell) => around(middleOf(cell), square)),
    tags: white.map((cell, i) => tagAt(firstTag + i, middleOf(cell))),
    crossings: crossings(),
    barAcross: around({ x: 0, y: -top - barGap - bars.thick / 2 }, bars.across, bars.thick),
    barAlong: around({ x: -left + barGap + bars.thick / 2, y: 0 }, bars.thick, bars.along),
  };
}

const middleOf = ({ column, row }: { column: number; row: number }): Place => ({
  x: left + (column + 0.5) * square,
  y: top - (row + 0.5) * square,
});

const around = ({ x, y }: Place, width: number, height = width): Rectangle => ({
  x: x - width / 2,
  y: y - height / 2,
  width,
  height,
});

function tagAt(id: number, middle: Place): Tag {
  const { x, y, width: side } = around(middle, tagSide);
  const corners = [
    { x, y: y + side },
    { x: x + side, y: y + side },
    { x: x + side, y },
    { x, y },
  ];
  const bits = tagBits(id);
  const white = [...bits].flatMap((bit, i) =>
    bit === '1'
      ? [
          {
            x: x + ((i % 6) + 1) * field,
            y: y + (6 - Math.floor(i / 6)) * field,
            width: field,
            height: field,
          },
        ]
      : [],
  );
  return { id, middle, corners, white };
}

/** The 36 inner bits of a tag, row by row from its upper left; 1 is white. */
export function tagBits(id: number): string {
  const code = tagCodes[id];
  if (code === undefined) throw new RangeError(`no tag ${id}: there are 0 to ${tagCodes.length - 1}`);
  return Number.parseInt(code, 16).toString(2).padStart(36, '0');
}

/** Where all four squares round a corner belong to the ring: along its middle line. */
function crossings(): Crossing[] {
  const found: Crossing[] = [];
  for (let row = 1; row < rows; row += 1)
    for (let column = 1; column < columns; column += 1) {
      const allInRing = [column - 1, column].every((c) => [row - 1, row].every((r) => inRing(c, r)));
      if (allInRing)
        found.push({
          x: left + column * square,
          y: top - row * square,
          whiteUpperRight: !isBlack(column, row - 1),
        });
    }
  return found;
}
