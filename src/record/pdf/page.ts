import type { Content, ContentText } from 'pdfmake/interfaces.js';
import type { Fact, Foot, Head, RecordContent } from '../service-record/index.js';
import { bare, color, margin } from './theme.js';
import type { Typesetter } from './typesetter.js';

/** Points. */
const tagWidth = 74;
const shopWidth = 150;
const headGap = 12;

/** The head of the first page: the tag as it hangs on the machine, what it is, whose record. */
export function drawHead(head: Head, type: Typesetter, width: number): Content[] {
  const titleWidth = width - tagWidth - shopWidth - 2 * headGap;
  return [
    {
      columns: [
        { width: tagWidth, stack: [tagDrawing(head.tag, type)] },
        {
          width: titleWidth,
          stack: [
            type.text(head.title, { fontSize: titleSize(head.title, type), bold: true, lineHeight: 1.05 }),
            type.text(head.machine, { color: color.soft }),
          ],
        },
        {
          width: shopWidth,
          stack: [
            type.text('Service record', {
              fontSize: type.size.heading,
              bold: true,
              color: color.accent,
              alignment: 'right',
            }),
            type.text(head.shopName, { bold: true, alignment: 'right' }),
            type.text(head.shopAddress, { color: color.soft, fontSize: type.size.small, alignment: 'right' }),
          ],
        },
      ],
      columnGap: headGap,
      margin: [0, 0, 0, 6],
    },
    headFacts(head.facts, type, width),
  ];
}

/** A long title is set smaller rather than over three lines. */
function titleSize(title: string, type: Typesetter): number {
  return title.length <= 32 ? type.size.title : type.size.title * 0.8;
}

/** A tag with its hole, drawn; the number is text and can be searched for. */
function tagDrawing(tag: number, type: Typesetter): Content {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="70" height="32" viewBox="0 0 70 32"><rect x="0.7" y="0.7" width="68.6" height="30.6" rx="11" fill="#ffffff" stroke="${color.ink}" stroke-width="1.2"/><circle cx="12" cy="16" r="4" fill="none" stroke="${color.ink}" stroke-width="1.2"/></svg>`;
  const text = String(tag);
  const fontSize = text.length > 4 ? 11 : 17;
  return {
    stack: [
      { svg, width: 70 },
      {
        relativePosition: { x: 18, y: -16 - fontSize * 0.62 },
        columns: [{ width: 50, ...type.text(text, { fontSize, bold: true, alignment: 'center' }) }],
      },
    ],
  };
}

/** Received, handed over, owner, worked on by. */
const factShares = [0.2, 0.2, 0.36, 0.24];

function headFacts(facts: readonly Fact[], type: Typesetter, width: number): Content {
  return {
    layout: {
      ...bare,
      hLineWidth: () => 0.6,
      hLineColor: () => color.rule,
      paddingTop: () => 3,
      paddingBottom: () => 2,
      paddingRight: () => 8,
    },
    table: {
      widths: factShares.map((share) => width * share - 8),
      body: [
        facts.map(({ label, value }) => ({
          stack: [type.text(label, { fontSize: type.size.small, color: color.soft }), type.text(value)],
        })),
      ],
    },
    margin: [0, 0, 0, 4],
  };
}

/** Nobody may take an invented job for a real engine: a band says so on every page. */
export function drawBand(
  { head, foot }: RecordContent,
  type: Typesetter,
  width: number,
): (page: number) => Content {
  return (page) => ({
    // the library drops header text for which the margin has no room below the band
    margin: [margin.side, 12, margin.side, 0],
    stack: [
      ...(head.invented ? [inventedBand(type, width)] : []),
      ...(page > 1 ? [runningHead(foot.tag, head.invented, type)] : []),
    ],
  });
}

const bandHeight = 11;

function inventedBand(type: Typesetter, width: number): Content {
  return {
    stack: [
      { canvas: [{ type: 'rect', x: 0, y: 0, w: width, h: bandHeight, color: '#f7dfd9' }] },
      type.text('INVENTED — demonstration', {
        bold: true,
        color: color.fail,
        fontSize: type.size.small,
        characterSpacing: 0.6,
        relativePosition: { x: 6, y: -bandHeight + 1.5 },
      }),
    ],
  };
}

function runningHead(tag: string, inBand: boolean, type: Typesetter): Content {
  return {
    ...type.text(`Service record · ${tag}`, {
      color: color.soft,
      fontSize: type.size.small,
      alignment: 'right',
    }),
    relativePosition: { x: -6, y: inBand ? -bandHeight + 1.5 : 0 },
  };
}

export function drawFoot(foot: Foot, type: Typesetter): (page: number, pages: number) => Content {
  const style = { color: color.soft, fontSize: type.size.small };
  const part = (text: string, alignment: ContentText['alignment']) => ({
    width: '*' as const,
    ...type.text(text, { ...style, alignment: alignment ?? 'left' }),
  });
  return (page, pages) => ({
    margin: [margin.side, 10, margin.side, 0],
    columns: [
      part(foot.tag, 'left'),
      part(foot.printed, 'center'),
      part(`page ${page} of ${pages}`, 'right'),
    ],
  });
}
