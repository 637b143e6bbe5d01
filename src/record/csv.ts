/**
 * Rows as CSV by RFC 4180: CRLF after every record, a field in quotes when it holds a comma, a quote or a line break,
 * quotes inside doubled. The first row names the columns. A text that a spreadsheet would run as a formula gets an
 * apostrophe before it, which makes it plain text there; numbers stay numbers.
 *
 * Own: a library's writer (papaparse 5.7.1, 352 kB installed) would replace these twelve lines and no rule.
 */
export function csv(columns: readonly string[], rows: readonly (readonly CsvValue[])[]): string {
  return [columns, ...rows].map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

export type CsvValue = string | number | undefined;

function field(value: CsvValue): string {
  const plain = value === undefined ? '' : String(value);
  const text = typeof value === 'string' && opensFormula.test(plain) ? `'${plain}` : plain;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The signs on which spreadsheets begin to compute, and the blanks that some leave out before them. */
const opensFormula = /^\s*[=+\-@]|^[\t\r]/;
