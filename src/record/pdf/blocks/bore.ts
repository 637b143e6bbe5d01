import type { Content } from 'pdfmake/interfaces.js';
import type { BoreBlock } from '../../service-record/index.js';
import { boreDrawingWidth, borePicture } from './bore-drawing.js';
import { factTable } from './facts.js';
import type { Setting } from './setting.js';
import { explanation } from './small-print.js';

const drawingGap = 14;

/** The drawing left, what the figures are held against right. Never torn over two pages. */
export function boreRow(bore: BoreBlock, setting: Setting): Content {
  const { type } = setting;
  const drawn = boreDrawingWidth(bore);
  const width = setting.width - drawn - drawingGap;
  const facts = bore.half
    ? bore.facts.map(({ label, value, origin }) => ({
        text: [...type.runs(`${label}: `), ...type.runs(value), ...explanation(origin, type)],
      }))
    : [factTable(bore.facts, { ...setting, width })];
  return {
    unbreakable: true,
    margin: [0, 2, 0, 4],
    columns: [
      { width: drawn, stack: [borePicture(bore, type)] },
      { width, stack: [type.text(bore.name, { bold: true, fontSize: type.size.body + 0.6 }), ...facts] },
    ],
    columnGap: drawingGap,
  };
}
