import { amountOf } from '../../../job/index.js';
import { joined } from '../../../phrase/index.js';
import { instrumentsUsed, type MeasurementRow, measurementRows, type Reading } from '../measurement-rows.js';
import { sayOrigin, sayQuantity } from '../numbers.js';
import type { Block, Cell, Column, Section } from '../section.js';
import type { Sheet } from '../sheet.js';

export function measurements(sheet: Sheet): Section | undefined {
  const rows = measurementRows(sheet);
  if (rows.length === 0) return undefined;
  const table = sheet.detail === 'brief' ? briefTable(rows, sheet) : fullTable(rows);
  const blocks = [...table, ...bores(sheet)];
  return { id: 'measurements', title: 'Measurements against their limits', place: 'full', blocks };
}

/** The bore as it was read; after the work only, when it was read again then. */
function bores(sheet: Sheet): Block[] {
  const bore = sheet.answers.bores.at(-1);
  if (!bore?.map || !bore.standard) return [];
  const { map, heights, directions, standard, unit, phase } = bore;
  const reject = bore.figures.find((f) => f.measure === bore.groups[0]!.last.measure);
  const max = reject?.limit?.max;
  const bound = max === undefined ? undefined : reject?.title === 'Wear' ? max : max - standard.size;
  const said = (value: number) => sayQuantity(amountOf(value, unit), sheet.system);
  const shown = said(standard.size).split('\u00a0')[1] ?? unit;
  return [
    {
      type: 'bore',
      half: sheet.detail === 'brief',
      name: phase === 'after' ? 'Bore after the work' : 'Bore as found',
      unit: shown,
      standard: standard.size,
      ...(bound !== undefined && { bound }),
      panels: directions.map((direction) => ({
        direction,
        walls: map.cells
          .filter((cell) => cell.direction === direction)
          .map((cell) => ({
            height: heights[cell.depth - 1]!,
            text: said(cell.diameter).split('\u00a0')[0]!,
            growth: cell.growth,
          })),
      })),
      facts: [
        {
          label: standard.guessed ? 'Counted from' : 'Standard',
          value: said(standard.size),
          origin: sayOrigin(standard.origin),
        },
        { label: 'Read from the top', value: heights.join(', ') },
      ],
    },
  ];
}

function fullTable(rows: readonly MeasurementRow[]): Block[] {
  const columns = [
    { title: 'Measured', share: 24 },
    { title: 'As found', share: 19, figures: true },
    { title: 'After', share: 19, figures: true },
    { title: 'Limit and where it is from', share: 21, figures: true },
    { title: 'Instrument', share: 17 },
  ];
  const marks = !allAsRead(rows);
  const limitCell = (row: MeasurementRow): Cell => ({ text: limitText(row), sub: row.limitOrigin });
  return [
    { type: 'table', columns, rows: rows.map((row) => cells(row, limitCell, marks)) },
    ...notes(rows, [], []),
  ];
}

/** Where a limit is from stands below, by number; verdicts stand beside their numbers. */
function briefTable(rows: readonly MeasurementRow[], sheet: Sheet): Block[] {
  const columns: Column[] = [
    { title: 'Measured', share: 23 },
    { title: 'As found', share: 26, figures: true },
    { title: 'After', share: 19, figures: true },
    { title: 'Limit', share: 18, figures: true },
    { title: 'Instrument', share: 14 },
  ];
  const marks = !allAsRead(rows);
  const origins = [...new Set(rows.map((row) => row.limitOrigin).filter(Boolean))];
  const limitCell = (row: MeasurementRow): Cell => ({
    text: limitText(row),
    sub: originMark(origins, row.limitOrigin),
  });
  return [
    {
      type: 'table',
      columns,
      rows: rows.map((row) => briefCells(cells(row, limitCell, marks))),
      inline: true,
    },
    ...notes(rows, origins, instrumentsUsed(sheet)),
  ];
}

function originMark(origins: readonly string[], origin: string): string {
  const index = origins.indexOf(origin);
  return index < 0 ? '' : `(${index + 1})`;
}

function notes(
  rows: readonly MeasurementRow[],
  origins: readonly string[],
  instruments: readonly string[],
): Block[] {
  const marked = origins.map((origin) => `${originMark(origins, origin)} ${origin}`);
  const asRead = rows.some((row) => row.asRead) ? [asReadWords(rows)] : [];
  const words = [...marked, ...instruments, ...asRead].join('; ');
  return words ? [{ type: 'words', words: `${words}.`, soft: true }] : [];
}

function asReadWords(rows: readonly MeasurementRow[]): string {
  return allAsRead(rows)
    ? 'all compared as read, without an uncertainty, because none is known for the instruments'
    : 'as read: compared without an uncertainty, because none is known for the instrument';
}

/** Then a mark in every row would say nothing. */
function allAsRead(rows: readonly MeasurementRow[]): boolean {
  const limited = rows.filter((row) => row.limit);
  return limited.length > 1 && limited.every((row) => row.asRead);
}

function limitText(row: MeasurementRow): string {
  return row.limit || 'no limit given';
}

function cells(row: MeasurementRow, limitCell: (row: MeasurementRow) => Cell, marks: boolean): Cell[] {
  return [
    { text: row.title, sub: row.place },
    readingCell(row.asFound),
    readingCell(row.after),
    limitCell(row),
    { text: row.instrument, ...(row.asRead && marks && { sub: 'as read' }) },
  ];
}

/** The instrument in small type: its name is long and its column narrow. */
function briefCells(row: readonly Cell[]): Cell[] {
  const instrument = row.at(-1)!;
  return [...row.slice(0, -1), { text: '', sub: joined([instrument.text, instrument.sub], ', ') }];
}

function readingCell(reading: Reading | undefined): Cell {
  if (!reading) return { text: '–' };
  return {
    text: reading.text,
    strong: true,
    sub: reading.sub,
    ...(reading.verdict && { verdict: reading.verdict }),
  };
}
