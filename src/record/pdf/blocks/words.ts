import type { Content } from 'pdfmake/interfaces.js';
import type { Block } from '../../service-record/index.js';
import { bare, color } from '../theme.js';
import type { Typesetter } from '../typesetter.js';
import type { Setting } from './setting.js';
import { staysWhole } from './whole.js';

type Of<T extends Block['type']> = Extract<Block, { type: T }>;

export function quote({ words, by }: Of<'quote'>, { type, width }: Setting): Content {
  const lines = [
    type.text(`“${words.trim()}”`, { italics: true }),
    type.text(by, { ...type.small, margin: [0, 1, 0, 0] }),
  ];
  return {
    layout: {
      ...bare,
      vLineWidth: (column) => (column === 0 ? 1.5 : 0),
      vLineColor: () => color.accent,
      paddingLeft: () => 8,
    },
    table: { widths: [width - 9.5], body: [[{ stack: lines }]] },
    margin: [0, 1, 0, 4],
  };
}

/** Three short columns on a washed ground: the part that everybody reads. */
export function trio({ parts }: Of<'trio'>, { type, width }: Setting): Content {
  return {
    layout: {
      ...bare,
      fillColor: () => color.wash,
      paddingLeft: () => trioPadding,
      paddingRight: () => trioPadding,
      paddingTop: () => 7,
      paddingBottom: () => 5,
    },
    table: {
      widths: parts.map((_, i) => width * (trioShares[i] ?? 1 / parts.length) - 2 * trioPadding),
      dontBreakRows: parts.every((part) => staysWhole(part.lines)),
      body: [parts.map((part) => trioCell(part, type))],
    },
  };
}

/** What to do next is the longest, and the one that must be read. */
const trioShares = [0.3, 0.33, 0.37];
const trioPadding = 10;

function trioCell({ title, lines }: Of<'trio'>['parts'][number], type: Typesetter): { stack: Content[] } {
  return {
    stack: [
      type.text(title, {
        bold: true,
        color: color.accent,
        fontSize: type.size.heading,
        margin: [0, 0, 0, 2],
      }),
      ...lines.map((line) => type.text(line, { margin: [0, 0, 0, 2] })),
    ],
  };
}

const signatureGap = 14;

export function signature({ lines, words }: Of<'signature'>, { type, width }: Setting): Content {
  const lineWidth = (width - signatureGap * (lines.length - 1)) / lines.length;
  const places = lines.map((line) => ({
    stack: [
      {
        canvas: [
          {
            type: 'line' as const,
            x1: 0,
            y1: 0,
            x2: lineWidth,
            y2: 0,
            lineWidth: 0.6,
            lineColor: color.soft,
          },
        ],
      },
      type.text(line, { ...type.small, margin: [0, 2, 0, 0] }),
    ],
  }));
  return {
    unbreakable: true,
    stack: [
      { columns: places, columnGap: signatureGap, margin: [0, 21, 0, 4] },
      type.text(words, type.small),
    ],
  };
}
