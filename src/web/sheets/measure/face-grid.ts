import { type Cell, cellKey } from './grid-entry.js';

/** One place of a face, millimeters, with the cell it is typed into; gaps also name the straightedge's line. */
export interface Spot {
  readonly cell: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly line?: string;
}

export interface FaceGrid {
  readonly rows: readonly string[];
  readonly columns: readonly string[];
  readonly spots: readonly Spot[];
}

const ends = ['left', 'middle', 'right'] as const;
const sides = ['far edge', 'middle', 'near edge'] as const;

/** Heights under an indicator: a grid over the face, seen from above, far edge first. */
export function heightGrid(lengthMm: number, widthMm: number, across: number, deep: number): FaceGrid {
  const columns = names(across, ends, 'column');
  const rows = names(deep, sides, 'row');
  const spots = rows.flatMap((row, r) =>
    columns.map((column, c) => ({
      cell: cellKey({ row, column }),
      xMm: (lengthMm * c) / (across - 1),
      yMm: widthMm - (widthMm * r) / (deep - 1),
    })),
  );
  return { rows, columns, spots };
}

/** Three have names of their own; more are numbered. */
function names(count: number, three: readonly string[], word: string): string[] {
  return count === 3 ? [...three] : Array.from({ length: count }, (_, i) => `${word} ${i + 1}`);
}

/**
 * Gaps under a straightedge laid along, across and on both diagonals of three by three places: eight lines of three.
 * Without the diagonals twist stays unseen.
 */
export function gapGrid(lengthMm: number, widthMm: number): FaceGrid {
  const x = [0, lengthMm / 2, lengthMm];
  const y = [widthMm, widthMm / 2, 0];
  const lines: readonly { name: string; at: readonly (readonly [number, number])[] }[] = [
    ...sides.map((side, i) => ({ name: `along, ${side}`, at: x.map((one) => [one, y[i]!] as const) })),
    ...ends.map((end, i) => ({ name: `across, ${end}`, at: y.map((one) => [x[i]!, one] as const) })),
    { name: 'diagonal, left far to right near', at: [0, 1, 2].map((i) => [x[i]!, y[i]!] as const) },
    { name: 'diagonal, left near to right far', at: [0, 1, 2].map((i) => [x[i]!, y[2 - i]!] as const) },
  ];
  const columns = ['one end', 'middle', 'other end'];
  const spots = lines.flatMap(({ name, at }) =>
    at.map(([xMm, yMm], i) => ({
      cell: cellKey({ row: name, column: columns[i]! } satisfies Cell),
      xMm,
      yMm,
      line: name,
    })),
  );
  return { rows: lines.map(({ name }) => name), columns, spots };
}
