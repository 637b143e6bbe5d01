import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces.js';
import { counted, cutShort } from '../../phrase/index.js';
import type { BagLabel } from '../bag-labels.js';
import { pageSetup } from './document.js';
import type { RecordFonts } from './fonts.js';
import { printPdf } from './print.js';
import { color, contentWidth, margin, type Paper, papers } from './theme.js';
import { type Typesetter, typesetter } from './typesetter.js';

export interface DrawLabelOptions {
  readonly fonts: RecordFonts;
  readonly paper: Paper;
  readonly printedAt: string;
  readonly tag: number;
}

const columnsPerPage = 2;
const rowsPerPage = 5;
const codeSide = 66;
const codeGap = 8;
/** A bag label is read at arm's length; what does not fit is counted. */
const linesPerLabel = 4;
const signsPerLine = 44;

export async function drawBagLabels(
  labels: readonly BagLabel[],
  options: DrawLabelOptions,
): Promise<Uint8Array> {
  const type = typesetter(options.fonts);
  const document: TDocumentDefinitions = {
    ...pageSetup(options.paper, type),
    info: {
      title: `Bag labels, tag ${options.tag}`,
      creator: 'Wristpin',
      creationDate: new Date(options.printedAt),
    },
    content: labels.length > 0 ? [sheet(labels, options.paper, type)] : [noLabels(options.tag, type)],
  };
  return printPdf(document, options.fonts, new Map());
}

function noLabels(tag: number, type: Typesetter): Content {
  return type.text(`Tag ${tag}: no teardown step has named a bag yet, so there is nothing to label.`);
}

function sheet(labels: readonly BagLabel[], paper: Paper, type: Typesetter): Content {
  const height = (papers[paper].height - margin.top - margin.bottom) / rowsPerPage - 18;
  const width = contentWidth(paper) / columnsPerPage - 20;
  const cells = labels.map((label) => labelCell(label, width, type));
  const rows: TableCell[][] = [];
  for (let at = 0; at < cells.length; at += columnsPerPage) {
    rows.push(Array.from({ length: columnsPerPage }, (_, i) => cells[at + i] ?? { text: '' }));
  }
  return {
    layout: cutLines,
    table: {
      widths: Array.from({ length: columnsPerPage }, () => width),
      heights: height,
      dontBreakRows: true,
      body: rows,
    },
  };
}

const cutLines = {
  hLineWidth: () => 0.5,
  vLineWidth: () => 0.5,
  hLineColor: () => color.rule,
  vLineColor: () => color.rule,
  hLineStyle: () => ({ dash: { length: 3 } }),
  vLineStyle: () => ({ dash: { length: 3 } }),
  paddingLeft: () => 10,
  paddingRight: () => 10,
  paddingTop: () => 8,
  paddingBottom: () => 8,
};

function labelCell(label: BagLabel, width: number, type: Typesetter): TableCell {
  const count = label.count > 0 ? counted(label.count, 'piece') : 'no fasteners counted';
  return {
    columns: [
      {
        width: width - codeSide - codeGap,
        stack: [
          { columns: [bigNumber('Tag', String(label.tag), type), bigNumber('Bag', label.bag, type)] },
          type.text(cutShort(label.title, signsPerLine), { color: color.soft, fontSize: type.size.small }),
          ...shortened(label.steps).map((step) => type.text(step, { bold: true })),
          type.text(count, { margin: [0, 2, 0, 0] }),
          ...shortened(label.contents).map((line) => type.text(line, { fontSize: type.size.small })),
        ],
      },
      {
        width: codeSide,
        stack: [
          { qr: label.code, fit: codeSide, eccLevel: 'M' },
          ...(label.invented ? [inventedMark(type)] : []),
        ],
      },
    ],
    columnGap: codeGap,
  };
}

function inventedMark(type: Typesetter): Content {
  return type.text('INVENTED', {
    bold: true,
    color: color.fail,
    fontSize: 6,
    alignment: 'center',
    margin: [0, 2, 0, 0],
  });
}

function shortened(lines: readonly string[]): string[] {
  const kept = lines.slice(0, linesPerLabel).map((line) => cutShort(line, signsPerLine));
  const more = lines.length > kept.length ? [`and ${lines.length - kept.length} more`] : [];
  return [...kept, ...more];
}

function bigNumber(word: string, number: string, type: Typesetter): Content {
  const fontSize = number.length > 6 ? 11 : 19;
  return {
    stack: [
      type.text(word, { fontSize: type.size.small, color: color.soft }),
      type.text(number, { fontSize, bold: true, lineHeight: 1 }),
    ],
  };
}
