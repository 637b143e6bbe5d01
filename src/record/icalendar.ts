/** One content line of iCalendar: a name with its parameters, and a value that is already in its type's form. */
export interface ContentLine {
  readonly name: string;
  readonly value: string;
}

/**
 * Content lines as iCalendar text: CRLF after each, folded (RFC 5545, 3.1) so that no line is longer than 75 octets
 * without its break. A character of several octets is never cut.
 */
export function contentLines(lines: readonly ContentLine[]): string {
  return lines.map(({ name, value }) => `${folded(`${name}:${value}`)}\r\n`).join('');
}

/** A text value (RFC 5545, 3.3.11): backslash, semicolon, comma and line break escaped, other controls left out. */
export function textValue(text: string): string {
  const escaped = text
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replaceAll(/\r\n|\r|\n/g, '\\n');
  return escaped.replaceAll(/(?!\t)\p{Cc}/gu, '');
}

/** "2026-04-15" → "20260415" (RFC 5545, 3.3.4) */
export function dateValue(isoDate: string): string {
  return isoDate.replaceAll('-', '');
}

/** An instant in UTC, "20251125T193100Z" (RFC 5545, 3.3.5, form 2) */
export function utcValue(instant: Date): string {
  return instant.toISOString().replaceAll(/[-:]|\.\d{3}/g, '');
}

const lineOctets = 75;

function folded(line: string): string {
  const rows: string[] = [];
  let row = '';
  let octets = 0;
  for (const sign of line) {
    const more = octetsOf(sign);
    if (octets + more > lineOctets) {
      rows.push(row);
      row = ' '; // the space that marks a continuation counts too
      octets = 1;
    }
    row += sign;
    octets += more;
  }
  return [...rows, row].join('\r\n');
}

/** In UTF-8. */
function octetsOf(sign: string): number {
  const code = sign.codePointAt(0)!;
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
}
