import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces.js';
import { encode } from 'uqr';
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
/** Beside a code, or above it, tag and bag are still to be read. */
const leastForWords = 50;
/** An inch is read from a hand's breadth. */
const largestCode = 72;
/** A phone reads the squares of a code down to a third of a millimeter. Common practice. */
const smallestSquare = 0.33 * pointsPerMm;
/** A label is read at arm's length; what does not fit is counted. */
const mostLines = 4;
/** Height of a line against its size, and the room above the count: measured on this face. */
const lineHeight = 1.41;
const aboveCount = 2;
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
  const contentHeight = papers[paper].height - margin.top - margin.bottom;
  const { width, height } = {
    width: shareOf(contentWidth(paper), columnsPerPage) - 2 * padding.side,
    height: shareOf(contentHeight, rowsPerPage) - 2 * padding.above,
  };
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

/** Of a length that is cut into equal parts, with a line at each end of each; a hair less, so that the last one has room. */
const shareOf = (length: number, parts: number) => (length - (parts + 1) * cutLine) / parts - 0.1;

const padding = { side: 10, above: 8 };
const cutLine = 0.5;
const cutLines = {
  hLineWidth: () => cutLine,
  vLineWidth: () => cutLine,
  hLineColor: () => color.rule,
  vLineColor: () => color.rule,
  hLineStyle: () => ({ dash: { length: 3 } }),
  vLineStyle: () => ({ dash: { length: 3 } }),
  paddingLeft: () => padding.side,
  paddingRight: () => padding.side,
  paddingTop: () => padding.above,
  paddingBottom: () => padding.above,
};

/** What does not fit is left out from below: tag and bag always stand. On a narrow roll the code stands under the words. */
function labelOn(label: Label, room: Room, type: Typesetter): Content {
  const mark = label.invented ? markHeight : 0;
  const beside = Math.min(room.width * 0.36, room.height - mark - hair);
  const isBeside = room.width - beside - codeGap >= leastForWords;
  const side = Math.min(largestCode, isBeside ? beside : Math.min(room.width, room.height * 0.4));
  const height = room.height - side - codeGap - mark - hair;
  const code = isBeside || height >= leastForWords ? codeOn(label, side, type) : undefined;
  if (!code) return { stack: wordsOn(label, room, type) };
  if (!isBeside) {
    return { stack: [...wordsOn(label, { ...room, height }, type), { ...code, margin: [0, codeGap, 0, 0] }] };
  }
  const width = room.width - side - codeGap;
  return {
    columns: [
      { width, stack: wordsOn(label, { ...room, width }, type) },
      { ...code, width: side },
    ],
    columnGap: codeGap,
  };
}

/** None where its squares would be too small. */
function codeOn(label: Label, side: number, type: Typesetter) {
  const { size, data } = encode(label.code, { ecc: 'M', border: 0 });
  if (side / size < smallestSquare) return undefined;
  const code: Content = { svg: codeSvg(data), width: side };
  return { stack: [code, ...(label.invented ? [inventedMark(type)] : [])] };
}

/** Square by square, each row in as few pieces as it has. */
function codeSvg(dark: readonly (readonly boolean[])[]): string {
  const pieces = dark.flatMap((row, y) =>
    [
      ...row
        .map((on) => (on ? '1' : '0'))
        .join('')
        .matchAll(/1+/g),
    ].map(({ index, 0: { length } }) => `M${index} ${y}h${length}v1h-${length}z`),
  );
  const { length } = dark;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${length} ${length}"><path d="${pieces.join('')}"/></svg>`;
}

function wordsOn(label: Label, { width, height }: Room, type: Typesetter): Content[] {
  const signs = Math.floor(width / (type.size.body * signWidth));
  const called: [string, string][] = [['Tag', String(label.tag)]];
  if (label.bag !== undefined) called.push(['Bag', label.bag]);
  const cut = (words: string) => cutShort(words, signs);
  const { small, body } = type.size;
  const lines: Line[] = [
    ...shortened(label.what, cut).map((words): Line => [type.text(words, { bold: true }), body]),
    [type.text(cut(label.count), { margin: [0, aboveCount, 0, 0] }), body],
    ...shortened(label.contents, cut).map((words): Line => [type.text(words, { fontSize: small }), small]),
    [type.text(cut(label.title), { color: color.soft, fontSize: small }), small],
  ];
  const head = numbers(called, width, type);
  return [head.content, ...fitting(lines, height - head.height)];
}

/** What stands on a line, and the size of its type. */
type Line = readonly [content: Content, size: number];

/** As many lines as there is room for, from above. */
function fitting(lines: readonly Line[], height: number): Content[] {
  let left = height - aboveCount;
  const first = lines.findIndex(([, size]) => {
    left -= size * lineHeight;
    return left < 0;
  });
  return lines.slice(0, first < 0 ? lines.length : first).map(([content]) => content);
}

const markHeight = 11;
/** What just fits does not, by the last binary place. */
const hair = 0.5;

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
function numbers(
  called: readonly (readonly [string, string])[],
  width: number,
  type: Typesetter,
): { readonly content: Content; readonly height: number } {
  if (width >= narrow) {
    const columns = called.map(([word, number]) => bigNumber(word, number, type));
    return { content: { columns }, height: (type.size.small + bigSize) * lineHeight };
  }
  const lines = called.map(([word, number]) => {
    const words = `${word} ${number}`;
    const size = Math.max(type.size.small, Math.min(14, width / (words.length * signWidth)));
    return { words: cutShort(words, Math.floor(width / (size * signWidth))), size };
  });
  return {
    content: { stack: lines.map(({ words, size }) => type.text(words, { fontSize: size, bold: true })) },
    height: lines.reduce((sum, { size }) => sum + size * lineHeight, 0),
  };
}

const narrow = 100;
const bigSize = 19;

function bigNumber(word: string, number: string, type: Typesetter): Content {
  const fontSize = number.length > 6 ? 11 : bigSize;
  return {
    stack: [
      type.text(word, { fontSize: type.size.small, color: color.soft }),
      type.text(number, { fontSize, bold: true, lineHeight: 1 }),
    ],
  };
}
