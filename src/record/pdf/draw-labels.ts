import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces.js';
import { cutShort } from '../../phrase/index.js';
import type { Label, LabelKind } from '../labels.js';
import type { Roll } from '../labels-pdf.js';
import { pageSetup } from './document.js';
import type { RecordFonts } from './fonts.js';
import { printPdf } from './print.js';
import { color, contentWidth, margin, type Paper, papers } from './theme.js';
import { type Typesetter, typesetter } from './typesetter.js';

export interface DrawLabelOptions {
  readonly fonts: RecordFonts;
  readonly paper: Paper | Roll;
  readonly printedAt: string;
  readonly tag: number;
  readonly kind: LabelKind;
}

/** Points. */
interface Room {
  readonly width: number;
  readonly height: number;
}

const pointsPerMm = 72 / 25.4;
const columnsPerPage = 2;
const rowsPerPage = 5;
const rollMargin = 2 * pointsPerMm;
const codeGap = 8;
/** A phone reads a code from a hand's breadth down to this side, half an inch. */
const codeSides = { least: 36, most: 66 };
/** A label is read at arm's length; what does not fit is counted. */
const mostLines = 4;
/** Heights of what stands on every label, and of one line more: measured on this face. */
const heights = { head: 36, line: 12 };
/** Width of an average sign of bold body type against its size. */
const signWidth = 0.55;

export async function drawLabels(labels: readonly Label[], options: DrawLabelOptions): Promise<Uint8Array> {
  const type = typesetter(options.fonts);
  const { paper } = options;
  const setup = pageSetup(typeof paper === 'object' ? 'letter' : paper, type);
  const document: TDocumentDefinitions = {
    ...setup,
    ...(typeof paper === 'object' && rollSetup(paper)),
    info: {
      title: `Labels, tag ${options.tag}`,
      creator: 'Wristpin',
      creationDate: new Date(options.printedAt),
    },
    content: labels.length > 0 ? drawn(labels, paper, type) : [noLabels(options, type)],
  };
  return printPdf(document, options.fonts, new Map());
}

const rollSetup = ({ width, length }: Roll) => ({
  pageSize: { width: width * pointsPerMm, height: length * pointsPerMm },
  pageMargins: rollMargin,
});

function drawn(labels: readonly Label[], paper: Paper | Roll, type: Typesetter): Content[] {
  if (typeof paper !== 'object') return [sheet(labels, paper, type)];
  const room = {
    width: paper.width * pointsPerMm - 2 * rollMargin,
    height: paper.length * pointsPerMm - 2 * rollMargin,
  };
  return labels.map((label, i) => ({
    stack: [labelOn(label, room, type)],
    ...(i > 0 && { pageBreak: 'before' as const }),
  }));
}

const nothingToLabel: Readonly<Record<LabelKind, string>> = {
  bag: 'no teardown step has named a bag yet, so there is nothing to label.',
  part: 'no part is ordered or waits here, so there is nothing to label.',
};

const noLabels = ({ tag, kind }: DrawLabelOptions, type: Typesetter): Content =>
  type.text(`Tag ${tag}: ${nothingToLabel[kind]}`);

function sheet(labels: readonly Label[], paper: Paper, type: Typesetter): Content {
  const height = (papers[paper].height - margin.top - margin.bottom) / rowsPerPage - 18;
  const width = contentWidth(paper) / columnsPerPage - 20;
  const cells = labels.map((label) => labelOn(label, { width, height }, type));
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

/** What does not fit is left out from below: tag and bag always stand. */
function labelOn(label: Label, room: Room, type: Typesetter): Content {
  const side = Math.min(codeSides.most, room.width * 0.36, room.height - (label.invented ? 10 : 0));
  if (side < codeSides.least) return { stack: wordsOn(label, room, type) };
  const width = room.width - side - codeGap;
  return {
    columns: [
      { width, stack: wordsOn(label, { ...room, width }, type) },
      {
        width: side,
        stack: [
          { qr: label.code, fit: side, eccLevel: 'M' },
          ...(label.invented ? [inventedMark(type)] : []),
        ],
      },
    ],
    columnGap: codeGap,
  };
}

function wordsOn(label: Label, { width, height }: Room, type: Typesetter): Content[] {
  const signs = Math.floor(width / (type.size.body * signWidth));
  const { small } = type.size;
  const called: [string, string][] = [['Tag', String(label.tag)]];
  if (label.bag !== undefined) called.push(['Bag', label.bag]);
  const cut = (words: string) => cutShort(words, signs);
  const lines = [
    ...shortened(label.what, cut).map((words) => type.text(words, { bold: true })),
    type.text(cut(label.count), { margin: [0, 2, 0, 0] }),
    ...shortened(label.contents, cut).map((words) => type.text(words, { fontSize: small })),
    type.text(cut(label.title), { color: color.soft, fontSize: small }),
  ];
  return [
    numbers(called, width, type),
    ...lines.slice(0, Math.floor((height - heights.head) / heights.line)),
  ];
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

function shortened(lines: readonly string[], cut: (words: string) => string): string[] {
  const kept = lines.slice(0, mostLines).map(cut);
  const more = lines.length > kept.length ? [`and ${lines.length - kept.length} more`] : [];
  return [...kept, ...more];
}

/** Beside each other; on a narrow roll each on a line of its own. */
function numbers(called: readonly (readonly [string, string])[], width: number, type: Typesetter): Content {
  if (width >= narrow) return { columns: called.map(([word, number]) => bigNumber(word, number, type)) };
  return {
    stack: called.map(([word, number]) => {
      const words = `${word} ${number}`;
      const fontSize = Math.max(type.size.small, Math.min(14, width / (words.length * signWidth)));
      return type.text(cutShort(words, Math.floor(width / (fontSize * signWidth))), { fontSize, bold: true });
    }),
  };
}

const narrow = 100;

function bigNumber(word: string, number: string, type: Typesetter): Content {
  const fontSize = number.length > 6 ? 11 : 19;
  return {
    stack: [
      type.text(word, { fontSize: type.size.small, color: color.soft }),
      type.text(number, { fontSize, bold: true, lineHeight: 1 }),
    ],
  };
}
