import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces.js';
import type { Block, RecordContent, Section } from '../service-record/index.js';
import { balanced } from './balance.js';
import { drawBlock, type Setting } from './blocks/index.js';
import { drawBand, drawFoot, drawHead } from './page.js';
import { color, contentWidth, gutter, margin, type Paper, papers } from './theme.js';
import { faceName, missingMark, type Typesetter } from './typesetter.js';

interface PageOptions {
  readonly paper: Paper;
  readonly printedAt: string;
  /** told how many pages it became, once for each of them */
  readonly onPages: (count: number) => void;
}

/** The pages of a service record. */
export function recordDocument(
  record: RecordContent,
  setting: Omit<Setting, 'width'>,
  { paper, printedAt, onPages }: PageOptions,
): TDocumentDefinitions {
  const foot = drawFoot(record.foot, setting.type);
  const { type } = setting;
  const width = contentWidth(paper);
  const body = spreads(record.sections).map((spread) => drawSpread(spread, setting, width));
  return {
    ...pageSetup(paper, type),
    info: documentInfo(record, printedAt),
    content: [...drawHead(record.head, type, width), ...body, ...missingNote(type)],
    pageBreakBefore: ({ headlineLevel, startPosition }) =>
      headlineLevel !== undefined && startPosition.top + headlineLevel > papers[paper].height - margin.bottom,
    header: drawBand(record, type, width),
    footer: (page, pages) => {
      onPages(pages);
      return foot(page, pages);
    },
  };
}

/** What every document of the shop has in common. */
export function pageSetup(paper: Paper, type: Typesetter): Omit<TDocumentDefinitions, 'content'> {
  return {
    pageSize: papers[paper].name,
    pageMargins: [margin.side, margin.top, margin.side, margin.bottom],
    language: 'en-US',
    displayTitle: true,
    defaultStyle: {
      font: faceName(0),
      fontSize: type.size.body,
      color: color.ink,
      lineHeight: type.size.lead,
    },
  };
}

function documentInfo({ head }: RecordContent, printedAt: string): NonNullable<TDocumentDefinitions['info']> {
  return {
    title: `Service record, tag ${head.tag}: ${head.title}`,
    subject: head.invented ? 'Invented, for demonstration' : 'Service record',
    ...(head.shopName && { author: head.shopName }),
    creator: 'Wristpin',
    creationDate: new Date(printedAt),
  };
}

/** A whole section alone, or the sections between two whole ones, in two columns. */
function spreads(sections: readonly Section[]): Section[][] {
  const rows: Section[][] = [];
  for (const section of sections) {
    const last = rows.at(-1);
    if (section.place === 'column' && last?.[0]?.place === 'column') last.push(section);
    else rows.push([section]);
  }
  return rows;
}

/** Width of an average sign against the size of its type: measured on this face. */
const signWidth = 0.5;

function drawSpread(spread: readonly Section[], setting: Omit<Setting, 'width'>, width: number): Content {
  const [first] = spread;
  if (first?.place === 'full') {
    return { headlineLevel: roomWanted(first), stack: drawSection(first, { ...setting, width }) };
  }
  const half = (width - gutter) / 2;
  const columns = balanced(spread, half / (setting.type.size.body * signWidth)).filter(
    (column) => column.length > 0,
  );
  return {
    headlineLevel: Math.max(...columns.map((column) => roomWanted(column[0]!))),
    columns: columns.map((column) => ({
      width: half,
      stack: column.flatMap((section) => drawSection(section, { ...setting, width: half })),
    })),
    columnGap: gutter,
  };
}

/** Points that a section needs under its heading, so that no heading is left alone at the foot of a page. */
function roomWanted(section: Section): number {
  const [first] = section.blocks;
  return 24 + (first ? firstBlockRoom[first.type] : 0);
}

const firstBlockRoom: Readonly<Record<Block['type'], number>> = {
  words: 12,
  quote: 30,
  facts: 26,
  list: 36,
  trio: 90,
  table: 44,
  joint: 100,
  speeds: 90,
  bore: 100,
  pictures: 125,
  box: 40,
  signature: 60,
};

/** These say by themselves what they are; a heading over them would only push the rest down. */
const withoutHeading: ReadonlySet<Section['id']> = new Set(['summary', 'open']);

function drawSection(section: Section, setting: Setting): Content[] {
  const blocks = drawBlocks(section.blocks, setting);
  return withoutHeading.has(section.id) ? blocks : [...heading(section.title, setting), ...blocks];
}

function heading(title: string, { type, width }: Setting): Content[] {
  return [
    type.text(title, { bold: true, fontSize: type.size.heading, margin: [0, 6, 0, 1] }),
    {
      canvas: [{ type: 'line', x1: 0, y1: 0, x2: width, y2: 0, lineWidth: 0.8, lineColor: color.accent }],
      margin: [0, 0, 0, 3],
    },
  ];
}

/** Two warnings, and joints drawn for half a page, stand side by side. */
function drawBlocks(blocks: readonly Block[], setting: Setting): Content[] {
  const boxes = blocks.filter((block) => block.type === 'box').length;
  const isHalf = (block: Block) =>
    (block.type === 'box' && boxes > 1) || (block.type === 'joint' && block.half);
  const rows: Block[][] = [];
  for (const block of blocks) {
    const last = rows.at(-1);
    if (isHalf(block) && last?.length === 1 && isHalf(last[0]!)) last.push(block);
    else rows.push([block]);
  }
  return rows.map((row) => (row.some(isHalf) ? halves(row, setting) : drawBlock(row[0]!, setting)));
}

function halves(row: readonly Block[], setting: Setting): Content {
  const width = (setting.width - halfGap) / 2;
  return {
    columns: row.map((block) => ({ width, stack: [drawBlock(block, { ...setting, width })] })),
    columnGap: halfGap,
  };
}

const halfGap = 10;

/** Called after everything is set: only then is it known whether a sign was missing. */
function missingNote(type: Typesetter): Content[] {
  if (!type.missed()) return [];
  const words = `Signs that this document’s type does not hold are printed as ${missingMark}; the shop’s log has them.`;
  return [type.text(words, { color: color.soft, fontSize: type.size.small, margin: [0, 4, 0, 0] })];
}
