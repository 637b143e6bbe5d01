import { chunksOf, glued, hasDigit, piecesOf } from './tokens.js';

/** One that goes on may be the beginning of a longer token. */
export interface AskedWord {
  readonly token: string;
  readonly goesOn: boolean;
}

/** All of these must be found in a job. */
export type Asked = readonly AskedWord[];

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const month = '(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\\.?';
const year = '(?:,?\\s+(\\d{4}))?(?=\\s|$)';

/** "2026-11-29", "2026-11", "11/29/2026", "Nov 29", "29 Nov 2026", "November 2026": where in it month, day, year stand. */
const days: readonly { readonly reads: RegExp; readonly at: readonly [number, number, number] }[] = [
  { reads: /(?:^|\s)(\d{4})-(\d{1,2})(?:-(\d{0,2}))?(?=\s|$)/i, at: [2, 3, 1] },
  { reads: /(?:^|\s)(\d{1,2})\/(\d{1,2})\/(\d{4})(?=\s|$)/i, at: [1, 2, 3] },
  { reads: new RegExp(`(?:^|\\s)${month}\\s+(\\d{4})(?=\\s|$)`, 'i'), at: [1, 0, 2] },
  { reads: new RegExp(`(?:^|\\s)${month}\\s+(\\d{1,2})(?:st|nd|rd|th)?${year}`, 'i'), at: [1, 2, 3] },
  { reads: new RegExp(`(?:^|\\s)(\\d{1,2})(?:st|nd|rd|th)?\\.?\\s+${month}${year}`, 'i'), at: [2, 1, 3] },
];

/**
 * What was typed, as the ways to ask for it, the narrowest first: a number alone as a tag; numbers with the word beside
 * them and the last word as it stands, then as far as it is typed; then all words wherever they stand in the job. A tag
 * that is called one ("#12", "tag 12") and a day are never asked for otherwise.
 */
export function askedFor(typed: string): readonly Asked[] {
  const sure: AskedWord[] = [];
  let rest = typed.trim().replace(/(?:#|\btag\s+)(\d+)/gi, (whole, tag: string, at: number, all: string) => {
    sure.push({ token: `tag_${tag}`, goesOn: at + whole.length === all.length });
    return ' ';
  });
  for (const { reads, at } of days)
    rest = rest.replace(reads, (whole, ...groups: (string | undefined)[]) => {
      const token = dayAsked(at.map((n) => (n === 0 ? undefined : groups[n - 1])));
      if (!token) return whole;
      sure.push({ token, goesOn: token.length < 'MM-DD'.length || /^\d{4}-/.test(token) });
      return ' ';
    });
  const chunks = chunksOf(rest);
  const loose = [...sure, ...chunks.flatMap((chunk, i) => asWords(chunk, i === chunks.length - 1))];
  if (loose.length === 0) return [];
  const close = [...sure, ...together(chunks)];
  const tag = /^\s*\d+\s*$/.test(typed) ? [[{ token: `tag_${typed.trim()}`, goesOn: false }]] : [];
  return [...tag, wholeLast(close), close, loose];
}

function dayAsked([m, d, y]: readonly (string | undefined)[]): string | undefined {
  const named = months.indexOf((m ?? '').slice(0, 3).toLowerCase()) + 1;
  const monthNumber = named || Number(m);
  if (!(monthNumber >= 1 && monthNumber <= 12) || Number(d ?? 1) > 31) return undefined;
  // a month that is still being typed is one sign long
  const mm = !named && y && !d && m!.length === 1 ? m! : String(monthNumber).padStart(2, '0');
  const dd = d ? (y && !named && d.length === 1 ? d : d.padStart(2, '0')) : '';
  return [y, mm, dd].filter(Boolean).join('-');
}

/**
 * A part number by all of it, so that it may be typed with its hyphens or without; other words by their pieces. Only the
 * last number may go on: "140 in-lb" is not 1400 rpm.
 */
function asWords(chunk: string, last: boolean): AskedWord[] {
  if (hasDigit(chunk)) return [{ token: glued(chunk), goesOn: last || /\p{L}/u.test(chunk) }];
  return piecesOf(chunk).map((piece) => ({ token: piece, goesOn: true }));
}

/** Each number with the word before it, or after it where none is before. */
function together(chunks: readonly string[]): AskedWord[] {
  const words: AskedWord[] = [];
  for (let i = 0; i < chunks.length; i += 1) {
    const [one, next] = [chunks[i]!, chunks[i + 1]];
    if (next !== undefined && hasDigit(one) !== hasDigit(next)) {
      words.push({ token: `${glued(one)}_${glued(next)}`, goesOn: i + 2 === chunks.length });
      i += 1;
    } else words.push(...asWords(one, next === undefined));
  }
  return words;
}

const wholeLast = (asked: Asked): Asked =>
  asked.map((word, i) => (i === asked.length - 1 ? { ...word, goesOn: false } : word));

/** Whether a text with these tokens holds the word. */
export const holds = (tokens: readonly string[], { token, goesOn }: AskedWord): boolean =>
  tokens.some((each) => (goesOn ? each.startsWith(token) : each === token));
