import { applies, type Catalog } from '../../catalog/index.js';
import type { MachineFacts } from '../machine/case.js';
import { readerOf } from './read-words.js';

type Complaint = Catalog['complaints'][number];

/** So much of what owners call it must have been said, by weight. */
const leastSaid = 0.7;
/** A word that stands in more than a sixth of the complaints says nothing by itself. */
const commonest = 1 / 6;
const mostOffered = 4;
/** The row of `sameWords` that says “not”, “won’t”, “dead”. */
const denial = '=say-nothing';

/**
 * The trade's complaints that an owner's own words may mean, those with most said of them first; none where they fit
 * nothing.
 *
 * An owner says several things in one sentence, so what counts is how much of a complaint's own phrase was said, not how
 * much of the sentence it answers to. Each word, as `readerOf` reads it, weighs by how few complaints have it (the logarithm
 * of all over those).
 *
 * Example: "goes up and down, lights flicker" finds "Hunts at no load" and, on a generator, "lights pulse".
 */
export function complaintsMeant(catalog: Catalog, facts: MachineFacts, typed: string): Complaint[] {
  const { documents, rarity } = indexOf(catalog);
  const read = readerOf(catalog);
  const sentences = typed.split(/[.!?;\n]+/).map(read);
  const weight = (list: readonly string[]): number => list.reduce((sum, w) => sum + rarity(w), 0);
  return documents
    .filter(({ complaint }) => canBe(complaint, facts))
    .map(({ complaint, phrases }) => {
      const said = phrases.flatMap((phrase) =>
        sentences.map((sentence) => {
          const hit = weight(heardOf(phrase, sentence));
          return hit >= leastSaid * weight(phrase) ? hit : 0;
        }),
      );
      return { complaint, said: Math.max(...said) };
    })
    .filter(({ said }) => said >= Math.log(1 / commonest))
    .sort((a, b) => b.said - a.said)
    .slice(0, mostOffered)
    .map(({ complaint }) => complaint);
}

/**
 * The words of `phrase` that one sentence says. A phrase that denies is only said where the “not” stands before what it
 * denies: "stopped dead" is not "will not stop".
 */
function heardOf(phrase: readonly string[], sentence: readonly string[]): string[] {
  const no = phrase.indexOf(denial);
  const denied = no < 0 ? undefined : phrase[no + 1];
  const at = sentence.indexOf(denial);
  if (denied !== undefined && (at < 0 || at > sentence.lastIndexOf(denied))) return [];
  return phrase.filter((word) => sentence.includes(word));
}

/** What only some machine does is offered once it is known that this is one. */
const canBe = ({ when }: Complaint, facts: MachineFacts): boolean =>
  when?.use === undefined ? applies(when, facts) !== 'no' : applies(when, facts) === 'yes';

interface Index {
  readonly documents: readonly { readonly complaint: Complaint; readonly phrases: readonly string[][] }[];
  readonly rarity: (word: string) => number;
}

const indexes = new WeakMap<Catalog, Index>();

function indexOf(catalog: Catalog): Index {
  const kept = indexes.get(catalog);
  if (kept) return kept;
  const read = readerOf(catalog);
  const documents = catalog.complaints.map((complaint) => ({
    complaint,
    phrases: [complaint.name, ...complaint.ownerSays].map((text) => [...new Set(read(text))]),
  }));
  const counts = new Map<string, number>();
  for (const { phrases } of documents)
    for (const word of new Set(phrases.flat())) counts.set(word, (counts.get(word) ?? 0) + 1);
  const rarity = (word: string): number => Math.log(documents.length / (counts.get(word) ?? 1));
  const index = { documents, rarity };
  indexes.set(catalog, index);
  return index;
}
