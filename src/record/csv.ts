/**
 * Rows as CSV by RFC 4180: CRLF after every record, a field in quotes when it holds a comma, a quote or a line break,
 * quotes inside doubled. The first row names the columns.
 */
export function csv(columns: readonly string[], rows: readonly (readonly CsvValue[])[]): string {
  return [columns, ...rows].map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

export type CsvValue = string | number | undefined;

function field(value: CsvValue): string {
  const text = value === undefined ? '' : String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
