import type { Content, TableCell } from 'pdfmake/interfaces.js';
import type { Cell, Table, Verdict } from '../../service-record/index.js';
import { color, ruled } from '../theme.js';
import type { Typesetter } from '../typesetter.js';
import type { Setting } from './setting.js';
import { explanation } from './small-print.js';
import { verdictLine } from './verdict.js';
import { staysWhole } from './whole.js';

/** Points between two columns. */
const columnSpace = 10;

export function ruledTable({ columns, rows, inline = false }: Table, { type, width }: Setting): Content {
  const shares = columns.reduce((sum, column) => sum + column.share, 0);
  const room = width - columnSpace * (columns.length - 1);
  const whole = rows.every((row) => staysWhole(row.flatMap((cell) => [cell.text, cell.sub])));
  const widths = columns.map((column) => (room * column.share) / shares);
  return {
    layout: ruled(type.size.row),
    table: {
      headerRows: 1,
      keepWithHeaderRows: whole ? 1 : 0,
      dontBreakRows: whole,
      widths,
      body: [
        columns.map((column) => type.text(column.title, { ...type.small, bold: true })),
        ...rows.map((row) =>
          row.map((cell, i) =>
            tableCell(cell, type, { figures: columns[i]?.figures ?? false, inline, width: widths[i]! }),
          ),
        ),
      ],
    },
  };
}

interface CellStyle {
  readonly figures: boolean;
  /** the verdict beside the number, where both have room */
  readonly inline: boolean;
  /** points */
  readonly width: number;
}

/** Columns of figures are set in figures of equal width. What explains the text follows it in small type. */
function tableCell(cell: Cell, type: Typesetter, style: CellStyle): TableCell {
  const stack: Content[] = cell.verdict
    ? judged(cell, cell.verdict, type, style)
    : [plainText(cell, type, style)];
  if (cell.care) {
    stack.push(type.text(`! ${cell.care}`, { bold: true, color: color.open, fontSize: type.size.small }));
  }
  return { stack };
}

function plainText(cell: Cell, type: Typesetter, style: CellStyle): Content {
  if (!cell.text) return type.text(cell.sub ?? '', type.small);
  return { text: [...mainRuns(cell, type, style), ...explanation(cell.sub, type)] };
}

function mainRuns(cell: Cell, type: Typesetter, { figures }: CellStyle): Content[] {
  const features = figures ? { fontFeatures: ['tnum' as const] } : {};
  return type.runs(cell.text).map((run) => ({ ...run, ...features, bold: cell.strong ?? false }));
}

/** A verdict belongs to the number, so it comes before the explanation. */
function judged(cell: Cell, verdict: Verdict, type: Typesetter, style: CellStyle): Content[] {
  const number = { text: mainRuns(cell, type, style) };
  const sub = cell.sub ? [type.text(cell.sub, type.small)] : [];
  const beside = style.width - verdictWidth(verdict, type) - verdictGap;
  const width = (cell.text.length + 1) * type.size.body * widestSign;
  const hasRoom = style.inline && width <= beside;
  if (!hasRoom) return [number, verdictLine(verdict, type), ...sub];
  return [{ columns: [{ width, ...number }, verdictLine(verdict, type)], columnGap: verdictGap }, ...sub];
}

const verdictGap = 6;
/** Against the size of the type: figures of equal width, bold. */
const widestSign = 0.58;

function verdictWidth({ word }: Verdict, type: Typesetter): number {
  return 10 + word.length * type.size.small * widestSign;
}
