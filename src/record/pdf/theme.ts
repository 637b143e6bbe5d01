import type { CustomTableLayout } from 'pdfmake/interfaces.js';

/** Paper and ink: the application's own colors. The paper itself stays white, so that a printer spends no ink on it. */
export const color = {
  ink: '#20242a',
  soft: '#575e68',
  rule: '#d8d0bf',
  wash: '#f6f1e6',
  accent: '#1d5c70',
  pass: '#256339',
  fail: '#9b2c1c',
  open: '#7a5600',
} as const;

/** Points; `lead` is the height of a line as a multiple, `row` the room above and below a table's row. */
export interface Sizes {
  readonly title: number;
  readonly heading: number;
  readonly body: number;
  readonly small: number;
  readonly lead: number;
  readonly row: number;
}
export type Density = 'easy' | 'tight';
/** The tight one is still readable at arm's length; it is used where it saves a page. */
export const sizes: Readonly<Record<Density, Sizes>> = {
  easy: { title: 16.5, heading: 10, body: 8.3, small: 7.1, lead: 1.08, row: 1.3 },
  tight: { title: 15, heading: 9, body: 7.4, small: 6.5, lead: 1, row: 0.5 },
};

export const papers = {
  letter: { name: 'LETTER', width: 612, height: 792 },
  a4: { name: 'A4', width: 595.28, height: 841.89 },
} as const;
export type Paper = keyof typeof papers;

export const margin = { side: 42, top: 36, bottom: 31 } as const;
export const gutter = 20;

export function contentWidth(paper: Paper): number {
  return papers[paper].width - 2 * margin.side;
}

/** Ruled like a notebook: a line under each row, none at the sides. */
export const ruled = (row: number): CustomTableLayout => ({
  hLineWidth: (row, node) => (row === 0 || row === node.table.body.length ? 0 : 0.5),
  vLineWidth: () => 0,
  hLineColor: (row) => (row === 1 ? color.soft : color.rule),
  paddingLeft: (column) => (column === 0 ? 0 : 5),
  paddingRight: (column, node) => (column === columnCount(node.table.widths) - 1 ? 0 : 5),
  paddingTop: () => row,
  paddingBottom: () => row,
});

/** The same without a header row. */
export const ruledFacts = (row: number): CustomTableLayout => ({
  ...ruled(row),
  hLineColor: () => color.rule,
  paddingTop: () => row * 0.85,
  paddingBottom: () => row * 0.85,
});

export const bare: CustomTableLayout = {
  hLineWidth: () => 0,
  vLineWidth: () => 0,
  paddingLeft: () => 0,
  paddingRight: () => 0,
  paddingTop: () => 0,
  paddingBottom: () => 0,
};

/** Paddings and edges of a box, both sides together. */
export const boxEdges = 2 * 9 + 3.6;

/** A box with a heavy left edge in the tone's color: it is seen as a warning in black and white too. */
export function edged(tone: string, fill: string): CustomTableLayout {
  return {
    hLineWidth: () => 0.6,
    hLineColor: () => tone,
    vLineWidth: (column) => (column === 0 ? 3 : 0.6),
    vLineColor: () => tone,
    fillColor: () => fill,
    paddingLeft: () => 9,
    paddingRight: () => 9,
    paddingTop: () => 6,
    paddingBottom: () => 6,
  };
}

function columnCount(widths: unknown): number {
  return Array.isArray(widths) ? widths.length : 1;
}
