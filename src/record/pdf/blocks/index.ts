import type { Content } from 'pdfmake/interfaces.js';
import type { Block } from '../../service-record/index.js';
import { boreRow } from './bore.js';
import { factTable } from './facts.js';
import { jointRow } from './joint.js';
import { list, warningBox } from './list.js';
import { pictureRows } from './pictures.js';
import type { Setting } from './setting.js';
import { speedDrawing } from './speed-drawing.js';
import { ruledTable } from './table.js';
import { quote, signature, trio } from './words.js';

export type { Setting } from './setting.js';

type Drawer<T extends Block['type']> = (block: Extract<Block, { type: T }>, setting: Setting) => Content;

/** One drawing a kind of block; a new kind does not compile until it is drawn. */
const drawers: { readonly [T in Block['type']]: Drawer<T> } = {
  words: ({ words, soft }, { type }) => type.text(words, soft ? type.small : {}),
  quote: (block, setting) => quote(block, setting),
  facts: ({ facts }, setting) => factTable(facts, setting),
  list: ({ items }, setting) => list(items, setting),
  trio: (block, setting) => trio(block, setting),
  table: (table, setting) => ruledTable(table, setting),
  joint: (joint, setting) => jointRow(joint, setting),
  bore: (bore, setting) => boreRow(bore, setting),
  pictures: (block, setting) => pictureRows(block, setting),
  speeds: (block, setting) => speedDrawing(block, setting),
  box: (box, setting) => warningBox(box, setting),
  signature: (block, setting) => signature(block, setting),
};

export function drawBlock(block: Block, setting: Setting): Content {
  return (drawers[block.type] as Drawer<Block['type']>)(block, setting);
}
