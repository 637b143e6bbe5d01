import { type CsvRow, csvRows, OpenQuote } from './csv-rows.js';

/** An offer as a line of a file tells it. Parts and suppliers are named as the shop names them, by name or handle. */
export interface CsvOffer {
  readonly line: number;
  readonly supplier: string;
  readonly name: string;
  readonly price: number;
  readonly contains: readonly { readonly part: string; readonly name: string; readonly count: number }[];
  readonly breaks: readonly { readonly from: number; readonly price: number }[];
  readonly days?: number;
  readonly number?: string;
  readonly fit: 'sure' | 'likely' | 'unsure';
}

/** A line that cannot be taken, with its column where it is one, and why. */
export interface CsvProblem {
  readonly line: number;
  readonly column?: string;
  readonly words: string;
}

interface Named {
  readonly id: string;
  readonly name: string;
}

export interface Known {
  readonly suppliers: readonly Named[];
  /** the parts on the list */
  readonly parts: readonly Named[];
  readonly currency: string;
}

const columns = ['supplier', 'offer', 'contains', 'price', 'days', 'number', 'fit', 'breaks'] as const;
type Column = (typeof columns)[number];
const needed: readonly Column[] = ['supplier', 'offer', 'price'];

export const offersSample = [
  columns.join(','),
  'Northside Parts,Head gasket,,6.50,2,HG-21,sure,',
  'Northside Parts,Carburetor gasket kit,bowl ring + 2 x intake gaskets + inlet needle,11.90,2,,likely,',
  'Harbor Supply,Piston pin clips,,0.80,6,,likely,5 at 0.60; 10 at 0.45',
  '',
].join('\r\n');

/**
 * Offers from a CSV text: all of them, or the list of what is wrong and none.
 *
 * Columns by name in any order: `supplier`, `offer` and `price` are needed. `contains` lists what a kit holds, parts
 * parted by "+", each with its number before it ("2 x intake gaskets"); left empty, the offer is the part. `days`
 * until it is here, `number` of the seller, `fit` (sure, likely, unsure; likely when empty), `breaks` as
 * "5 at 0.60; 10 at 0.45".
 */
export function readOffersCsv(
  text: string,
  known: Known,
): { readonly offers: readonly CsvOffer[] } | { readonly problems: readonly CsvProblem[] } {
  const rows = rowsOf(text);
  if (!Array.isArray(rows)) return { problems: [rows as CsvProblem] };
  const [head, ...rest] = rows as CsvRow[];
  if (!head || rest.length === 0)
    return { problems: [{ line: 1, words: 'there is no offer under the column names' }] };
  const at = columnsOf(head);
  if ('problems' in at) return at;
  const read = rest.map((row) => readRow(row, at.places, head.fields.length, known));
  const problems = [...read.flatMap((r) => r.problems), ...twice(read.flatMap((r) => r.offer ?? []))];
  return problems.length > 0 ? { problems } : { offers: read.flatMap((r) => r.offer ?? []) };
}

function rowsOf(text: string): CsvRow[] | CsvProblem {
  try {
    return csvRows(text);
  } catch (error) {
    if (error instanceof OpenQuote) return { line: error.line, words: 'a quote opens here and never closes' };
    throw error;
  }
}

type Places = ReadonlyMap<Column, number>;

function columnsOf({ line, fields }: CsvRow): { places: Places } | { problems: CsvProblem[] } {
  const names = fields.map((f) => f.toLowerCase());
  const strange = names.filter((name) => !(columns as readonly string[]).includes(name));
  const missing = needed.filter((name) => !names.includes(name));
  const doubled = columns.filter((name) => names.filter((n) => n === name).length > 1);
  const problems = [
    ...missing.map((name) => ({ line, words: `the column “${name}” is missing` })),
    ...doubled.map((name) => ({ line, words: `the column “${name}” is there twice` })),
    ...strange.map((name) => ({
      line,
      words: name === '' ? 'a column has no name' : `there is no column “${name}”: ${columns.join(', ')}`,
    })),
  ];
  if (problems.length > 0) return { problems };
  return { places: new Map(names.map((name, i) => [name as Column, i])) };
}

interface Read {
  readonly offer?: CsvOffer;
  readonly problems: readonly CsvProblem[];
}

function readRow(row: CsvRow, places: Places, width: number, known: Known): Read {
  const { line } = row;
  if (row.fields.length > width)
    return {
      problems: [
        {
          line,
          words: `${row.fields.length} fields under ${width} columns: is a comma inside a field not in quotes?`,
        },
      ],
    };
  const problems: CsvProblem[] = [];
  const refuse = (column: Column, words: string) => {
    problems.push({ line, column, words });
    return undefined;
  };
  const field = (column: Column) => row.fields[places.get(column) ?? -1] ?? '';
  const supplier = supplierOf(field('supplier'), known, refuse);
  const name = field('offer') || refuse('offer', 'the offer has no name');
  const price = amountOf('price', field('price'), known, refuse);
  const contains = name && containsOf(field('contains'), name, known, refuse);
  const days = daysOf(field('days'), refuse);
  const fit = fitOf(field('fit'), refuse);
  const breaks = breaksOf(field('breaks'), known, refuse);
  if (problems.length > 0) return { problems };
  const number = field('number');
  return {
    problems,
    offer: {
      line,
      supplier: supplier!,
      name: name!,
      price: price!,
      contains: contains as CsvOffer['contains'],
      breaks: breaks!,
      fit: fit!,
      ...(days !== undefined && { days }),
      ...(number && { number }),
    },
  };
}

type Refuse = (column: Column, words: string) => undefined;

const same = (a: string, b: string) => plain(a) === plain(b);
const plain = (text: string) =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();

function supplierOf(text: string, { suppliers }: Known, refuse: Refuse): string | undefined {
  if (text === '') return refuse('supplier', 'nobody is named as the supplier');
  const found = suppliers.find(({ id, name }) => same(name, text) || same(id, text));
  return (
    found?.id ?? refuse('supplier', `the shop has no supplier “${text}”; add it with its shipping first`)
  );
}

function amountOf(column: Column, text: string, { currency }: Known, refuse: Refuse): number | undefined {
  const bare = text.replace(currency, '').trim();
  if (!/^\d{1,7}(\.\d{1,4})?$/.test(bare))
    return refuse(column, text === '' ? 'the price is missing' : `“${text}” is no price, as 12.50 is one`);
  return Number(bare);
}

function daysOf(text: string, refuse: Refuse): number | undefined {
  if (text === '') return undefined;
  const days = Number(text);
  return Number.isInteger(days) && days >= 0 && days <= 1000
    ? days
    : refuse('days', `“${text}” is no whole number of days`);
}

const fits = ['sure', 'likely', 'unsure'] as const;

function fitOf(text: string, refuse: Refuse): CsvOffer['fit'] | undefined {
  if (text === '') return 'likely';
  return (
    fits.find((fit) => fit === text.toLowerCase()) ?? refuse('fit', `“${text}” is none of ${fits.join(', ')}`)
  );
}

function breaksOf(text: string, known: Known, refuse: Refuse): CsvOffer['breaks'] | undefined {
  const items = text
    .split(';')
    .map((item) => item.trim())
    .filter(Boolean);
  const read = items.map((item) => {
    const found = /^(\d{1,4})\s*(?:at|:)\s*(.+)$/i.exec(item);
    const from = Number(found?.[1]);
    if (!found || from < 2) return refuse('breaks', `“${item}” is no price break, as “5 at 0.60” is one`);
    const price = amountOf('breaks', found[2]!, known, refuse);
    return price === undefined ? undefined : { from, price };
  });
  if (new Set(read.map((item) => item?.from)).size < read.length)
    return refuse('breaks', 'two price breaks begin at the same number');
  return read.every((item) => item !== undefined) ? read : undefined;
}

function containsOf(
  text: string,
  offer: string,
  known: Known,
  refuse: Refuse,
): CsvOffer['contains'] | undefined {
  const items = (text === '' ? offer : text)
    .split('+')
    .map((item) => item.trim())
    .filter(Boolean);
  const read = items.map((item) => {
    const [, count = '1', name = ''] = /^(?:(\d{1,3})\s*[x×]\s+)?(.+)$/i.exec(item) ?? [];
    const part = known.parts.find((p) => same(p.name, name) || same(p.id, name));
    return {
      part: part?.id ?? handle(name),
      name: part?.name ?? name,
      count: Number(count),
      listed: part !== undefined,
    };
  });
  if (read.some(({ part, count }) => part === '' || count < 1))
    return refuse('contains', `“${text}” cannot be read, as “bowl ring + 2 x intake gaskets” can`);
  if (!read.some(({ listed }) => listed))
    return refuse(text === '' ? 'offer' : 'contains', `no part of the list is in it: “${text || offer}”`);
  if (new Set(read.map(({ part }) => part)).size < read.length)
    return refuse('contains', 'a part is named twice; write its number before it instead');
  return read.map(({ part, name, count }) => ({ part, name, count }));
}

const handle = (name: string) => plain(name).replaceAll(' ', '-').slice(0, 80);

/** The same offer of the same supplier twice would be bought from whichever is cheaper; one of them is a slip. */
function twice(offers: readonly CsvOffer[]): CsvProblem[] {
  return offers.flatMap((offer, i) => {
    const before = offers.slice(0, i).find((o) => o.supplier === offer.supplier && same(o.name, offer.name));
    return before
      ? [
          {
            line: offer.line,
            words: `“${offer.name}” of this supplier stands on line ${before.line} already`,
          },
        ]
      : [];
  });
}
