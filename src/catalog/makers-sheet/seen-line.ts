import type { Catalog } from '../catalog.js';
import { byId } from '../lookup.js';
import type { SpecLine } from './line.js';

/** A word as a reader of letters took it from a picture. */
export interface SeenWord {
  readonly text: string;
  /** how sure the reader is, 0 to 100 */
  readonly sure: number;
}

/** Letters that a printed page gives for one another, in the units that sheets print behind a number. */
const units: readonly (readonly [RegExp, string])[] = [
  [/^[il1|]n[-‐–.·*]?[il1|]bs?([.,;]?)$/i, 'in-lb$1'],
  [/^ft[-‐–.·*]?[il1|]bs?([.,;]?)$/i, 'ft-lb$1'],
  [/^[0o]z([.,;]?)$/i, 'oz$1'],
  [/^f[il1|]([.,;]?)$/i, 'fl$1'],
  [/^n[·.*-]?m([.,;]?)$/i, 'N·m$1'],
  [/^rprn([.,;]?)$/i, 'rpm$1'],
];

/**
 * A line read from a picture as it will have been printed: behind a number, what can only be a unit is written as that
 * unit ("140 in-1b" → "140 in-lb"). Numbers and all other words stay as they were read.
 */
export function asPrinted(line: string): string {
  const words = line.trim().split(/\s+/);
  return words
    .map((word, i) => {
      const before = words[i - 1] ?? '';
      const isBehind = /\d$/.test(before) || (/\d$/.test(words[i - 2] ?? '') && unitOf(before) === 'fl');
      return (isBehind && unitOf(word)) || word;
    })
    .join(' ');
}

function unitOf(word: string): string | undefined {
  const known = units.find(([pattern]) => pattern.test(word));
  return known && word.replace(known[0], known[1]);
}

/** Of 274 figures of made pages and plates, none that was read at this and more was wrong (`npm run bench pages`, both halves). */
const sureFigure = 85;

/**
 * Why a value read from a picture may be another than the one printed, in words; undefined where nothing speaks for it.
 * What is wrong with the value itself stands in the line's own `problem`.
 */
export function doubtOfSeen(
  catalog: Catalog,
  line: SpecLine,
  words: readonly SeenWord[],
): string | undefined {
  const meant = line.spec ?? line.candidates[0];
  const kind = meant === undefined ? undefined : byId(catalog.specs).get(meant)?.kind;
  const figures = words.filter(({ text }) => /\d/.test(text));
  if (kind === 'ratio' && !/\d\s*:\s*\d/.test(line.line) && /\d/.test(line.line))
    return 'A ratio is printed with a colon, as 8.5:1, and none was read here: a colon is easily taken for a point.';
  const unsure = figures.find(({ text, sure }) => sure < sureFigure && /^[\d.,:/½¼¾-]+$/.test(text));
  if (unsure) return `“${unsure.text}” was hard to read.`;
  const mixed = figures.find(({ text }) => /\d[OoIlSB]|[OoIlSB]\d/.test(text));
  if (mixed) return `A letter stands among the figures of “${mixed.text}”.`;
  return undefined;
}
