import type { Content } from 'pdfmake/interfaces.js';
import { boreDrawing } from '../../../draw/index.js';
import type { BoreBlock } from '../../service-record/index.js';
import { onPaper } from '../on-paper.js';
import { color } from '../theme.js';
import type { Typesetter } from '../typesetter.js';

/** Points. */
const rooms = { whole: { panel: 112, tall: 74 }, half: { panel: 92, tall: 52 } };
const wall = { wall: 7, reach: 11, gap: 4, head: 0, foot: 0 };

const roomOf = ({ half }: BoreBlock) => rooms[half ? 'half' : 'whole'];

export const boreDrawingWidth = (bore: BoreBlock): number => roomOf(bore).panel * bore.panels.length;

/** The cuts side by side, under each its direction, under all what is drawn and how many times too large. */
export function borePicture(bore: BoreBlock, type: Typesetter): Content {
  const { panel, tall } = roomOf(bore);
  const levels = Math.max(...bore.panels.map(({ walls }) => walls.length));
  const panels = bore.panels.map(({ direction, walls }) => ({
    direction,
    walls: walls.map(({ growth, text }) => ({ growth, text })),
  }));
  const drawing = boreDrawing(
    { ...bore, panels },
    { ...wall, panel, level: tall / levels, perRow: bore.panels.length },
  );
  const small = { fontSize: type.size.small, color: color.soft, alignment: 'center' } as const;
  const directions = bore.panels.map(({ direction }) => ({
    width: panel,
    ...type.text(direction.replace('crankshaft', 'crank'), small),
  }));
  const limit = bore.bound === undefined ? '' : ', dotted limit';
  const legend = `${bore.unit}; growth × ${drawing.times}; dashed standard${limit}`;
  return { stack: [...onPaper(drawing, type), { columns: directions }, type.text(legend, small)] };
}
