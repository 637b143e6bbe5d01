/** The day on which something falls due, and after how many months again where it does. */
export interface DueDay {
  /** "2027-05-01" */
  readonly day: string;
  readonly everyMonths?: number;
}

const few: Readonly<Record<string, number>> = { a: 1, one: 1, two: 2, three: 3, four: 4, five: 5, six: 6 };
const count = `(\\d+|${Object.keys(few).join('|')})`;

/** How a mechanic says a span, in months; `again` where the words say that it comes back. */
const spans: readonly {
  readonly words: RegExp;
  readonly months: (n: number) => number;
  readonly again: boolean;
}[] = [
  { words: /\b(?:twice a year|half-yearly|every half year)\b/i, months: () => 6, again: true },
  { words: /\b(?:yearly|annually|(?:each|every|once a) (?:year|season))\b/i, months: () => 12, again: true },
  { words: /\b(?:monthly|(?:each|every|once a) month)\b/i, months: () => 1, again: true },
  {
    words: new RegExp(`\\bevery\\b[^,;]*?\\b${count} (?:years?|yrs?|seasons?)\\b`, 'i'),
    months: (n) => 12 * n,
    again: true,
  },
  { words: new RegExp(`\\bevery\\b[^,;]*?\\b${count} months?\\b`, 'i'), months: (n) => n, again: true },
  { words: new RegExp(`\\b${count} (?:years?|yrs?|seasons?)\\b`, 'i'), months: (n) => 12 * n, again: false },
  { words: new RegExp(`\\b${count} months?\\b`, 'i'), months: (n) => n, again: false },
];

/**
 * The day that the words of a next service name: one that is written out, or a span of months or years counted from the
 * day `from` ("2026-05-15" or longer). Hours, tanks and winters name no day.
 *
 * Method: of several spans the first counts ("after 3 months, then yearly"). The 29th to 31st become the 28th, so that
 * each month has the day.
 *
 * Example: "every 50 h or yearly" from 2026-05-31 → 2027-05-28, every 12 months.
 */
export function dueDay(when: string, from: string): DueDay | undefined {
  const written = /\b\d{4}-\d{2}-\d{2}\b/.exec(when)?.[0];
  if (written !== undefined) return isDay(written) ? { day: written } : undefined;
  const [first] = spans
    .flatMap(({ words, months, again }) => {
      const found = words.exec(when);
      return found ? [{ at: found.index, months: months(numberOf(found[1])), again }] : [];
    })
    .sort((a, b) => a.at - b.at);
  if (!first || !isDay(from.slice(0, 10))) return undefined;
  const day = monthsAfter(from.slice(0, 10), first.months);
  return { day, ...(first.again && { everyMonths: first.months }) };
}

const numberOf = (word = '1'): number => few[word.toLowerCase()] ?? Number(word);

function isDay(day: string): boolean {
  const read = new Date(`${day}T00:00:00Z`);
  return !Number.isNaN(read.getTime()) && read.toISOString().startsWith(day);
}

function monthsAfter(day: string, months: number): string {
  const [year, month, date] = day.split('-').map(Number);
  const at = new Date(Date.UTC(year!, month! - 1 + months, Math.min(28, date!)));
  return at.toISOString().slice(0, 10);
}
