import fc from 'fast-check';
import { expect, test } from 'vitest';
import { csv } from '../../src/record/csv.js';
import { tables } from '../../src/record/index.js';
import { ordinaryJob } from './ordinary-job.js';

/** A reader of its own: RFC 4180 read sign by sign. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let field = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i]!;
    if (quoted && sign === '"' && text[i + 1] === '"') field += text[++i];
    else if (sign === '"') quoted = !quoted;
    else if (!quoted && sign === ',') {
      row.push(field);
      field = '';
    } else if (!quoted && sign === '\r' && text[i + 1] === '\n') {
      rows.push([...row, field]);
      row = [];
      field = '';
      i++;
    } else field += sign;
  }
  return rows;
}

const { job } = await ordinaryJob();
const read = Object.fromEntries(Object.entries(tables(job)).map(([name, text]) => [name, readCsv(text)]));
const column = (name: string, title: string) => {
  const [head, ...rows] = read[name]!;
  return rows.map((row) => row[head!.indexOf(title)]);
};

test('a table read back is the table', () => {
  const cell = fc.string({ unit: 'grapheme', maxLength: 12 });
  fc.assert(
    fc.property(fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 6 }), ([head, ...rows]) => {
      const kept = [head!, ...rows].map((row) => row.map((text) => (computes(text) ? `'${text}` : text)));
      expect(readCsv(csv(head!, rows))).toEqual(kept);
    }),
    { seed: 7, numRuns: 300 },
  );
});

/** Common practice: what a spreadsheet takes for a formula, also behind blanks that it leaves out. */
const computes = (text: string) =>
  ['=', '+', '-', '@'].includes(text.trimStart().charAt(0)) || /^[\t\r]/.test(text);

test('a text never computes in a spreadsheet, and a number below nought stays a number', () => {
  const hostile = [
    '=HYPERLINK("http://x","y")',
    '+1',
    '-0.5 in',
    '@SUM(A1)',
    ' =1',
    '\t=1',
    '\r=1',
    '\n-1',
    '=a,"b',
  ];
  const [, ...rows] = readCsv(
    csv(
      ['cell'],
      hostile.map((text) => [text]),
    ),
  );
  expect(rows).toEqual(hostile.map((text) => [`'${text}`]));
  expect(
    csv(
      ['n', 'text'],
      [
        [-0.5, '0.5 in'],
        [undefined, 'a=b'],
      ],
    ),
  ).toBe('n,text\r\n-0.5,0.5 in\r\n,a=b\r\n');
});

test('every standing reading, torque and part is one row, and every row has all columns', () => {
  expect([read.measurements!.length, read.torques!.length, read.parts!.length]).toEqual([
    job.measurements.length + 1,
    job.torques.length + 1,
    job.parts.size + 1,
  ]);
  for (const rows of Object.values(read)) expect(new Set(rows.map((row) => row.length)).size).toBe(1);
});

test('a number stands as written, as a value in its unit and in SI, with the origin of its limit', () => {
  expect(column('measurements', 'value written')[1]).toBe('2.5990 in');
  expect(column('measurements', 'value')[1]).toBe('2.599');
  expect(Number(column('measurements', 'value SI')[1])).toBeCloseTo(2.599 * 0.0254, 15);
  expect(column('measurements', 'limit origin detail')[1]).toBe('page 18');
  expect(column('torques', 'target written')[0]).toBe('140 in-lb');
  expect(Number(column('torques', 'target SI')[0])).toBeCloseTo(140 * 0.1129848290276167, 12);
});
