/** One record of a CSV text and the line of the text on which it begins, counted from 1. */
export interface CsvRow {
  readonly line: number;
  readonly fields: readonly string[];
}

/** A quote that is never closed: the line on which it opens. */
export class OpenQuote extends Error {
  constructor(readonly line: number) {
    super(`line ${line}: a quote opens and never closes`);
    this.name = 'OpenQuote';
  }
}

/**
 * The records of a CSV text by RFC 4180; a line break of either kind, and a semicolon or a tab where the first line
 * has more of them than commas, as spreadsheets of some countries write. Blank lines are left out.
 *
 * Own: papaparse 5.7.1 takes one kind of line break for the whole text and a quote after a blank for a letter, so that
 * two of six tried files were read wrongly, and does not say on which line a record begins.
 * @throws OpenQuote
 */
export function csvRows(text: string): CsvRow[] {
  const source = text.replace(/^\uFEFF/, '');
  const separator = separatorOf(source);
  const rows: CsvRow[] = [];
  let fields: string[] = [];
  let field = '';
  let line = 1;
  let begin = 1;
  let opened = 0;
  const endField = () => {
    fields.push(field);
    field = '';
  };
  const endRow = () => {
    endField();
    if (fields.some((f) => f.trim() !== '')) rows.push({ line: begin, fields: fields.map((f) => f.trim()) });
    fields = [];
    begin = line;
  };
  for (let i = 0; i < source.length; i += 1) {
    const sign = source[i]!;
    if (sign === '\n') line += 1;
    if (opened > 0) {
      if (sign !== '"') field += sign;
      else if (source[i + 1] === '"') {
        field += '"';
        i += 1;
      } else opened = 0;
    } else if (sign === '"' && field.trim() === '') {
      field = '';
      opened = line;
    } else if (sign === separator) endField();
    else if (sign === '\n') endRow();
    else if (sign !== '\r') field += sign;
  }
  if (opened > 0) throw new OpenQuote(opened);
  endRow();
  return rows;
}

function separatorOf(text: string): string {
  const first = text.slice(0, text.search(/\r|\n|$/));
  const count = (sign: string) => first.split(sign).length;
  return [',', ';', '\t'].reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}
