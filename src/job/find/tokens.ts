/**
 * How a text is cut for finding, the same for what stands in a log and for what is typed. A token is lower case without
 * accents; it holds letters, digits, a point within a number, and a hyphen in a day only. Part numbers and threads are
 * found whole, from each piece on and by their pieces: "492-334-A" gives "492", "334", "a", "492334a" and "334a". A number also stands together with
 * the word before and after it ("bag_3", "140_inlb"), so that "bag 3" is not every bag beside every 3,
 * and two numbers beside each other are one as well: a telephone number is typed with spaces or without.
 */
export function tokensOf(text: string): string[] {
  const found = new Set<string>();
  let before = '';
  for (const chunk of chunksOf(text)) {
    const day = dayOf(chunk);
    if (day) for (const token of dayTokens(day)) found.add(token);
    const whole = glued(chunk);
    const pieces = piecesOf(chunk);
    for (const piece of pieces) found.add(piece);
    for (let i = 0; i < pieces.length - 1; i += 1) {
      const rest = glued(pieces.slice(i).join(''));
      if (hasDigit(rest)) found.add(rest);
    }
    if (before && whole && (hasDigit(before) || hasDigit(whole))) found.add(`${before}_${whole}`);
    if (/^\d+$/.test(before) && /^\d+$/.test(whole)) found.add(before + whole);
    before = whole;
  }
  return [...found];
}

/** Under which a line of that day is found: with its year and without. `day` is "2026-11-29". */
export const dayTokens = (day: string): string[] => [day, day.slice(5)];

export const hasDigit = (text: string): boolean => /\p{N}/u.test(text);

/** The longest that is kept of one word: nobody types more of it. */
const longest = 40;

/** The pieces between spaces, units as they are counted one, numbers as they are said one. */
export function chunksOf(text: string): string[] {
  return plain(text)
    .replace(/\bn[\s·.⋅-]{0,2}m\b/g, 'nm')
    .replace(/\b(in|ft)[\s.-]{0,2}lbs?\b/g, '$1lb')
    .replace(/(\d)(nm|inlb|ftlb|mm|in|rpm|psi|min)\b/g, '$1 $2')
    .replace(/(^|[^\p{N}.])\.(?=\p{N})/gu, '$10.')
    .split(/[\s,;:()[\]“”"·×…]+/)
    .map((chunk) => chunk.replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu, ''))
    .filter(Boolean);
}

export function plain(text: string): string {
  // most of it is, and is told quickly
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the signs of a computer's oldest alphabet, the first one left out
  if (/^[\x01-\x7f]*$/.test(text)) return text.toLowerCase();
  return text
    .normalize('NFKD')
    .replace(/[\p{M}\0\p{Surrogate}]/gu, '')
    .toLowerCase();
}

/** All of a chunk in one; a point between digits stays. */
export function glued(chunk: string): string {
  return piecesOf(chunk).join('').slice(0, longest);
}

export function piecesOf(chunk: string): string[] {
  const pieces = chunk.match(/\p{N}+\.\p{N}+|[\p{L}\p{N}]+/gu) ?? [];
  return pieces.map((piece) => piece.slice(0, longest));
}

const dayOf = (chunk: string): string | undefined => /^\d{4}-\d{2}-\d{2}(?!\d)/.exec(chunk)?.[0];
