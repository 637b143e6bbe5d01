import { applies, byId, type Catalog, type Check } from '../../catalog/index.js';
import type { MachineFacts } from '../machine/case.js';
import { readerOf } from './read-words.js';

/** An outcome of the catalog that own words may mean. */
export interface MeantOutcome {
  readonly check: Check;
  readonly outcome: Check['outcomes'][number];
  /** how much of what was typed it answers to, 0 … 1 */
  readonly fit: number;
}

/** Less of what was typed is a chance meeting of words; so is what answers to much less of it than the best. */
const leastFit = 0.6;
const besideBest = 0.8;
const mostOffered = 5;

/**
 * The outcomes of this engine's checks that a mechanic's own words may mean, the best first; none where they fit nothing.
 *
 * Each word, as `readerOf` reads it, weighs by how few outcomes have it (the logarithm of all over those, as in an index
 * of documents). An outcome is read by its own words and by what it is
 * called at the bench, its check by its title; a word of the title alone finds no outcome. What one is called at the bench
 * counts whole phrase by whole phrase: words of two phrases do not add up.
 *
 * Example: "cleaner drips with gas" finds "Air cleaner: wet with fuel, drips".
 */
export function meantBy(catalog: Catalog, facts: MachineFacts, typed: string): MeantOutcome[] {
  const { documents, rarity, read } = indexOf(catalog);
  const words = [...new Set(read(typed))];
  const weight = (list: readonly string[]): number => list.reduce((sum, w) => sum + rarity(w), 0);
  const all = weight(words);
  if (all === 0) return [];
  const ways = documents
    .filter(({ check }) => applies(check.when, facts) !== 'no')
    .flatMap((document) => {
      const way = bestWay(document, words, weight);
      return way.own > 0 && way.hit >= leastFit * all ? [{ ...document, ...way }] : [];
    })
    .sort((a, b) => b.hit - a.hit || b.own - a.own || a.extra - b.extra);
  const [best] = ways;
  const bad = new Map(ways.filter((w) => !isSound(w)).map((w) => [w.check.id, w.hit]));
  return ways
    .filter((way) => (way.hit < best!.hit ? way.hit >= besideBest * best!.hit : way.own >= best!.own / 2))
    .filter((way) => !isSound(way) || way.hit > (bad.get(way.check.id) ?? 0))
    .slice(0, mostOffered)
    .map(({ check, outcome, hit }) => ({ check, outcome, fit: hit / all }));
}

/** "Nothing missing or loose" shares its words with what is wrong. */
const isSound = ({ check, outcome }: Pick<Document, 'check' | 'outcome'>): boolean =>
  check.outcomes[0]!.id === outcome.id;

interface Way {
  /** weight of the words that the phrase has */
  readonly own: number;
  /** with those that only the title has */
  readonly hit: number;
  /** words of the phrase that were not typed */
  readonly extra: number;
}

function bestWay(
  { title, phrases }: Document,
  words: readonly string[],
  weight: (list: readonly string[]) => number,
): Way {
  const ways = phrases.map((phrase) => ({
    own: weight(words.filter((w) => phrase.has(w))),
    hit: weight(words.filter((w) => phrase.has(w) || title.has(w))),
    extra: [...phrase].filter((w) => !words.includes(w)).length,
  }));
  return ways
    .filter(({ own }) => own > 0)
    .reduce((a, b) => (b.hit > a.hit || (b.hit === a.hit && b.own > a.own) ? b : a), {
      own: 0,
      hit: 0,
      extra: 0,
    });
}

interface Document {
  readonly check: Check;
  readonly outcome: Check['outcomes'][number];
  readonly title: ReadonlySet<string>;
  /** its own words, and each thing that it is called */
  readonly phrases: readonly ReadonlySet<string>[];
}

interface Index {
  readonly documents: readonly Document[];
  readonly rarity: (word: string) => number;
  readonly read: (text: string) => string[];
}

const indexes = new WeakMap<Catalog, Index>();

function indexOf(catalog: Catalog): Index {
  const kept = indexes.get(catalog);
  if (kept) return kept;
  const read = readerOf(catalog);
  const set = (text: string): ReadonlySet<string> => new Set(read(text));
  const called = byId(
    catalog.ownWords.map((entry) => ({ id: `${entry.check}/${entry.outcome}`, words: entry.words })),
  );
  const documents = catalog.checks.flatMap((check) =>
    check.outcomes.map((outcome): Document => {
      const own = called.get(`${check.id}/${outcome.id}`)?.words ?? [];
      return { check, outcome, title: set(check.title), phrases: [outcome.words, ...own].map(set) };
    }),
  );
  const counts = new Map<string, number>();
  for (const { title, phrases } of documents)
    for (const word of new Set([...title, ...phrases.flatMap((p) => [...p])]))
      counts.set(word, (counts.get(word) ?? 0) + 1);
  const rarity = (word: string): number => Math.log(documents.length / (counts.get(word) ?? 1));
  const index = { documents, rarity, read };
  indexes.set(catalog, index);
  return index;
}
