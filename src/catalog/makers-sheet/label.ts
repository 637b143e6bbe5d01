import type { Catalog, Spec } from '../catalog.js';
import { byId } from '../lookup.js';

/** Finds specs by what a sheet calls them. */
export interface SpecIndex {
  /** the specs of exactly this label, in whatever order its words stand */
  exact(label: string): readonly Spec[];
  /** ids of the specs whose labels come nearest, the nearest first; at most a dozen */
  nearest(label: string): readonly string[];
  /** whether a text says nothing: "cold", "torque", or no words at all */
  saysNothing(text: string): boolean;
}

const indexes = new WeakMap<Catalog, SpecIndex>();

/** The catalog's index of labels, made once. */
export function specIndex(catalog: Catalog): SpecIndex {
  const known = indexes.get(catalog);
  if (known) return known;
  const made = makeIndex(catalog);
  indexes.set(catalog, made);
  return made;
}

function makeIndex(catalog: Catalog): SpecIndex {
  const wordsOf = wordReader(catalog);
  const keys = new Map<string, Spec[]>();
  const labels: Label[] = [];
  for (const spec of catalog.specs) {
    for (const label of [spec.name, ...spec.spellings]) {
      const words = wordsOf(label);
      const list = keys.get(keyOf(words)) ?? [];
      if (!list.includes(spec)) keys.set(keyOf(words), [...list, spec]);
      labels.push({ spec, words: new Set(words) });
    }
  }
  const weigh = weightOf(labels.map(({ words }) => words));
  const holding = new Map<string, Label[]>();
  for (const label of labels)
    for (const word of label.words) holding.set(word, [...(holding.get(word) ?? []), label]);
  return {
    exact: (label) => (label.trim() === '' ? [] : (keys.get(keyOf(wordsOf(label))) ?? [])),
    nearest: (label) => nearest(new Set(wordsOf(label)), holding, weigh),
    saysNothing: (text) => wordsOf(text).length === 0,
  };
}

interface Label {
  readonly spec: Spec;
  readonly words: ReadonlySet<string>;
}

const keyOf = (words: readonly string[]) => [...new Set(words)].toSorted().join(' ');

/** A thread in a label says how large the fastener is, not what it holds: "M7 x 1.0", "5/16-18". */
const threadMark =
  /\bm\d{1,2}(?:\s*[x×]\s*\d+(?:\.\d+)?)?(?![\w.])|(?:#\d{1,2}|\b\d\/\d{1,2})\s?-\s?\d{2}\b(?:\s*un[cf])?/gi;

/** A label's words with abbreviations written out, plurals cut, empty words left out. */
function wordReader(catalog: Catalog): (label: string) => string[] {
  const meanings = byId(catalog.specWords);
  const meaning = (word: string) => meanings.get(word)?.means;
  return (label) =>
    label
      .toLowerCase()
      .replace(threadMark, ' ')
      .split(/[^\p{L}\p{N}]+/u)
      .filter((word) => word !== '')
      .flatMap((word) => (meaning(word) ?? meaning(singular(word)) ?? singular(word)).split(' '))
      .map(singular)
      .filter((word) => word !== '');
}

const singular = (word: string) => (word.length > 3 && /[^s]s$/.test(word) ? word.slice(0, -1) : word);

/** A word counts for more the fewer labels have it. */
function weightOf(labels: readonly ReadonlySet<string>[]): (word: string) => number {
  const counts = new Map<string, number>();
  for (const words of labels) for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return (word) => Math.log(1 + labels.length / (counts.get(word) ?? labels.length));
}

/** By the weight of the shared words, as a share of all words on both sides. Only labels that share a word are looked at. */
function nearest(
  wanted: ReadonlySet<string>,
  holding: ReadonlyMap<string, readonly Label[]>,
  weigh: (word: string) => number,
): string[] {
  const total = (words: Iterable<string>) => [...words].reduce((sum, word) => sum + weigh(word), 0);
  const scores = new Map<string, number>();
  const sharing = new Set([...wanted].flatMap((word) => holding.get(word) ?? []));
  for (const { spec, words } of sharing) {
    const shared = total([...words].filter((word) => wanted.has(word)));
    const score = (2 * shared) / (total(words) + total(wanted) || 1);
    if (score > 0.4) scores.set(spec.id, Math.max(score, scores.get(spec.id) ?? 0));
  }
  return [...scores]
    .toSorted((a, b) => b[1] - a[1])
    .slice(0, 12)
    .map(([id]) => id);
}
