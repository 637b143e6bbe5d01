import type { Catalog } from '../../catalog/index.js';

/** Words that say nothing by themselves. */
const small = new Set(
  'a an and are as at be been but by for from had has have i in is it its just like of on or out over so some that the them there they this to too very was were when with'.split(
    ' ',
  ),
);

const readers = new WeakMap<Catalog, (text: string) => string[]>();

/**
 * Reads a text as words that can be compared: each is the row of `sameWords` that has it, or else its stem; small words are
 * left out.
 *
 * Example: "it drips gas" reads as the rows of "wet" and of "fuel".
 */
export function readerOf(catalog: Catalog): (text: string) => string[] {
  const kept = readers.get(catalog) ?? reader(catalog);
  readers.set(catalog, kept);
  return kept;
}

function reader({ sameWords }: Catalog): (text: string) => string[] {
  const rows = sameWords.flatMap(({ id, words }) => words.map((w) => [plain(w), `=${id}`] as const));
  const phrases = rows.filter(([w]) => w.includes(' ')).toSorted((a, b) => b[0].length - a[0].length);
  const single = new Map(rows.filter(([w]) => !w.includes(' ')));
  const stems = new Map([...single].map(([w, row]) => [stemOf(w), row]));
  return (text) => {
    let said = ` ${plain(text)} `;
    for (const [phrase, row] of phrases) said = said.replaceAll(` ${phrase} `, ` ${row} `);
    return said
      .split(' ')
      .filter((w) => w !== '' && !small.has(w))
      .map((w) => (w.startsWith('=') ? w : (single.get(w) ?? stems.get(stemOf(w)) ?? stemOf(w))));
  };
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[’']/g, '')
    .replaceAll(/[^\p{L}\p{N}%½]+/gu, ' ')
    .trim();

/** "dripping", "drips", "dripped" → "drip": enough to meet one another, no dictionary. */
function stemOf(word: string): string {
  if (word.length <= 4) return word.replace(/(?<=[^s])s$/, '');
  const bare = word.replace(/(ing|ed|es|s|y|er|e)$/, '');
  return bare.replace(/([bdgklmnprt])\1$/, '$1');
}
