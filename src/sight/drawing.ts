import type { Place } from './mat/mat.js';
import type { Plate } from './plate/read-plate.js';

/** The line to check a print by, under the part. */
const check = { length: 50, gap: 8, words: '50 mm' } as const;
const margin = 5;

interface Extent {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

function extentOf({ outline }: Plate): Extent {
  const xs = outline.map(({ x }) => x);
  const ys = outline.map(({ y }) => y);
  const left = Math.min(...xs);
  return {
    left,
    right: Math.max(left + check.length, ...xs),
    low: Math.min(...ys) - check.gap,
    high: Math.max(...ys),
  };
}

const short = (value: number) => String(Math.round(value * 1000) / 1000);

/** The part at 1:1, to print and cut by: millimetres, y turned down as a page has it. */
export function toSvg(plate: Plate): string {
  const { left, right, low, high } = extentOf(plate);
  const width = right - left + 2 * margin;
  const height = high - low + 2 * margin;
  const at = ({ x, y }: Place) => `${short(x - left + margin)} ${short(high - y + margin)}`;
  const closed = (line: readonly Place[]) => `M${line.map(at).join('L')}Z`;
  const holes = plate.holes.map(({ x, y, d }) => {
    const [cx, cy] = at({ x, y }).split(' ');
    return `<circle cx="${cx}" cy="${cy}" r="${short(d / 2)}"/>`;
  });
  const paths = [plate.outline, ...plate.cutouts].map((line) => `<path d="${closed(line)}"/>`);
  const from = { x: left, y: low };
  const to = { x: left + check.length, y: low };
  const ticks = [from, to]
    .map((end) => `M${at({ ...end, y: low - 1.5 })}L${at({ ...end, y: low + 1.5 })}`)
    .join('');
  const label = at({ x: left + check.length / 2, y: low + 1.5 }).split(' ');
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${short(width)}mm" height="${short(height)}mm" viewBox="0 0 ${short(width)} ${short(height)}">`,
    `<g fill="none" stroke="#000000" stroke-width="0.2">${paths.join('')}${holes.join('')}`,
    `<path id="check" d="M${at(from)}L${at(to)}${ticks}"/></g>`,
    `<text x="${label[0]}" y="${label[1]}" font-family="sans-serif" font-size="3" text-anchor="middle">${check.words}</text>`,
    '</svg>',
    '',
  ].join('\n');
}

type Pair = readonly [code: number, value: string | number];

/**
 * The part as DXF R12 (AC1009), which every reader takes: outline and openings as closed polylines, holes as circles,
 * millimetres, in three layers. R12 has no field for the unit; the check line tells it.
 */
export function toDxf(plate: Plate): string {
  const { left, low } = extentOf(plate);
  const pairs: Pair[] = [
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$ACADVER'],
    [1, 'AC1009'],
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...[plate.outline, ...plate.cutouts].flatMap((line) => polyline(line)),
    ...plate.holes.flatMap(({ x, y, d }): Pair[] => [
      [0, 'CIRCLE'],
      [8, 'HOLES'],
      ...point({ x, y }),
      [40, short(d / 2)],
    ]),
    [0, 'LINE'],
    [8, 'CHECK'],
    ...point({ x: left, y: low }),
    [11, short(left + check.length)],
    [21, short(low)],
    [31, 0],
    [0, 'TEXT'],
    [8, 'CHECK'],
    ...point({ x: left, y: low + 1.5 }),
    [40, 3],
    [1, check.words],
    [0, 'ENDSEC'],
    [0, 'EOF'],
  ];
  return pairs.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join('');
}

const point = ({ x, y }: Place): Pair[] => [
  [10, short(x)],
  [20, short(y)],
  [30, 0],
];

const polyline = (line: readonly Place[]): Pair[] => [
  [0, 'POLYLINE'],
  [8, 'OUTLINE'],
  [66, 1],
  [70, 1],
  ...point({ x: 0, y: 0 }),
  ...line.flatMap((place): Pair[] => [[0, 'VERTEX'], [8, 'OUTLINE'], ...point(place)]),
  [0, 'SEQEND'],
  [8, 'OUTLINE'],
];
