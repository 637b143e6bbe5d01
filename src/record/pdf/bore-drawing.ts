import type { Content } from 'pdfmake/interfaces.js';
import type { BoreBlock } from '../service-record/index.js';
import { color } from './theme.js';
import type { Typesetter } from './typesetter.js';

/** Points. */
const panelWidth = { whole: 112, half: 92 } as const;
const heightOf = { whole: 74, half: 52 } as const;
const wall = 7;
const reach = 11;

const sizeOf = ({ half }: BoreBlock) => (half ? 'half' : 'whole');

export function boreDrawingWidth(bore: BoreBlock): number {
  return panelWidth[sizeOf(bore)] * bore.panels.length;
}

/**
 * Each direction as a cut through the bore: the two walls moved out by the growth at each height, the standard size
 * dashed, the limit dotted. How many times the growth is drawn stands below.
 */
export function boreDrawing(bore: BoreBlock, type: Typesetter): Content {
  const [wide, tall] = [panelWidth[sizeOf(bore)], heightOf[sizeOf(bore)]];
  const width = boreDrawingWidth(bore);
  const half = wide / 2 - wall - reach - 4;
  const growths = bore.panels.flatMap((panel) => panel.walls.map((w) => Math.abs(w.growth)));
  const most = Math.max(...growths, bore.bound ?? 0);
  const times = most === 0 ? 100 : roundedDown((reach / (most / 2)) * (bore.standard / (2 * half)));
  const shift = (growth: number) => (growth / 2) * ((times * 2 * half) / bore.standard);
  const shapes = bore.panels.map((panel, i) =>
    panelShape({ bore, panel, shift, half, wide, tall, left: i * wide }),
  );
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${tall}" viewBox="0 0 ${width} ${tall}">${shapes.join('')}</svg>`;
  const words = bore.panels.flatMap((panel, i) => panelWords(panel, { wide, tall, left: i * wide }, type));
  const legend = `${bore.unit}; growth × ${times}; dashed standard${bore.bound === undefined ? '' : ', dotted limit'}`;
  const small = { fontSize: type.size.small, color: color.soft, alignment: 'center' } as const;
  const directions = {
    columns: bore.panels.map((panel) => ({
      width: wide,
      ...type.text(panel.direction.replace('crankshaft', 'crank'), small),
    })),
  };
  return { stack: [{ svg, width }, ...words, directions, type.text(legend, small)] };
}

interface Panel {
  readonly bore: BoreBlock;
  readonly panel: BoreBlock['panels'][number];
  readonly shift: (growth: number) => number;
  readonly half: number;
  readonly wide: number;
  readonly tall: number;
  readonly left: number;
}

function panelShape({ bore, panel, shift, half, wide, tall, left }: Panel): string {
  const middle = left + wide / 2;
  const step = tall / panel.walls.length;
  const at = panel.walls.map((w, i) => [shift(w.growth), step * (i + 0.5)] as const);
  const inner = [[at[0]![0], 0] as const, ...at, [at.at(-1)![0], tall] as const];
  return [1, -1]
    .map((side) => {
      const outer = middle + side * (half + reach + wall);
      const points = [
        ...inner.map(([dx, y]) => `${n(middle + side * (half + dx))},${n(y)}`),
        `${n(outer)},${n(tall)}`,
        `${n(outer)},0`,
      ].join(' ');
      const upright = (dx: number, dash: string, stroke: string) =>
        `<line x1="${n(middle + side * (half + dx))}" x2="${n(middle + side * (half + dx))}" y1="0" y2="${tall}" stroke="${stroke}" stroke-width="0.9" stroke-dasharray="${dash}"/>`;
      const limit = bore.bound === undefined ? '' : upright(shift(bore.bound), '0.8 2', color.fail);
      return `<polygon points="${points}" fill="${color.rule}" stroke="${color.ink}" stroke-width="0.7"/>${upright(0, '3 2', color.accent)}${limit}`;
    })
    .join('');
}

/** Text of the document over the drawing: the drawing's own text could not use a font from memory. */
function panelWords(
  { walls }: BoreBlock['panels'][number],
  { wide, tall, left }: Pick<Panel, 'wide' | 'tall' | 'left'>,
  type: Typesetter,
): Content[] {
  const step = tall / walls.length;
  return walls.map((w, i) => ({
    relativePosition: { x: left, y: step * (i + 0.5) - type.size.body * 0.6 - tall },
    columns: [{ width: wide, ...type.text(w.text, { bold: true, alignment: 'center', color: color.ink }) }],
  }));
}

/** A round number not above x. */
function roundedDown(x: number): number {
  const power = 10 ** Math.floor(Math.log10(x));
  return Math.max(1, [8, 6, 5, 4, 3, 2, 1.5, 1].find((step) => step * power <= x)! * power);
}

const n = (value: number) => value.toFixed(2);
