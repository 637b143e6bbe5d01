import { bars, type Mat, type Place, type Rectangle } from './mat.js';

export interface MatDrawing {
  /** the size of the drawing as a whole, in whatever its reader counts by; millimetres when left out */
  readonly size?: { readonly width: string; readonly height: string };
  /** the face of the words; without it they are left to the caller */
  readonly font?: string;
}

/** Words of the sheet: millimetres from its upper left, `y` the line on which they stand. */
export interface Label extends Place {
  readonly words: string;
}
export const labelSize = 2.8;

/** The mat as SVG in millimetres, y downward from the upper edge of the sheet. */
export function matSvg(mat: Mat, { size, font }: MatDrawing): string {
  const { width, height } = size ?? { width: `${mat.width}mm`, height: `${mat.height}mm` };
  const black = [...mat.black, ...mat.tags.map(wholeOf), mat.barAcross, mat.barAlong];
  const white = mat.tags.flatMap((tag) => tag.white);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${mat.width} ${mat.height}" preserveAspectRatio="none">`,
    `<rect x="0" y="0" width="${mat.width}" height="${mat.height}" fill="#ffffff"/>`,
    `<path fill="#000000" d="${onePath(mat, black)}"/>`,
    `<path fill="#ffffff" d="${onePath(mat, white)}"/>`,
    ...(font === undefined ? [] : matLabels(mat).map((label) => written(label, font))),
    '</svg>',
  ].join('');
}

const wholeOf = ({ corners }: { readonly corners: readonly Place[] }): Rectangle => {
  const upperLeft = corners[0]!;
  const lowerRight = corners[2]!;
  return {
    x: upperLeft.x,
    y: lowerRight.y,
    width: lowerRight.x - upperLeft.x,
    height: upperLeft.y - lowerRight.y,
  };
};

/** One path for all: rectangles that touch, drawn one by one, would show a seam between them. */
const onePath = (mat: Mat, rectangles: readonly Rectangle[]): string =>
  rectangles
    .map(({ x, y, width, height }) => {
      const at = onSheet(mat, { x, y: y + height });
      return `M${at.x} ${at.y}h${round(width)}v${round(height)}h${round(-width)}z`;
    })
    .join('');

const round = (value: number) => Math.round(value * 1e4) / 1e4;
const onSheet = (mat: Mat, { x, y }: Place): Place => ({
  x: round(mat.width / 2 + x),
  y: round(mat.height / 2 - y),
});

const written = ({ x, y, words }: Label, font: string) =>
  `<text x="${x}" y="${y}" font-family="${font}" font-size="${labelSize}" fill="#000000">${words}</text>`;

export function matLabels(mat: Mat): Label[] {
  const { x, y } = onSheet(mat, { x: -96, y: 126 + 5.6 });
  const across = onSheet(mat, mat.barAcross);
  const along = onSheet(mat, mat.barAlong);
  const paper = mat.paper === 'a4' ? 'A4' : 'Letter';
  return [
    { x, y, words: `Wristpin mat, ${paper} paper. Print at 100 %, not fitted to the page.` },
    {
      x,
      y: round(y + 3.6),
      words: 'Lay it flat and the part in the white middle. Measure both bars once, from end to end.',
    },
    { x: round(across.x + bars.across + 2), y: across.y, words: `${bars.across} mm` },
    { x: round(along.x - 1.6), y: round(along.y + 4), words: `${bars.along}` },
    { x: round(along.x - 1.6), y: round(along.y + 7.2), words: 'mm' },
  ];
}
