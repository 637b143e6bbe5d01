import { applies, type Catalog, type Facts, type Measurement } from '../../../catalog/index.js';

/** One measure with the words by which a person may look for it. */
export interface Findable {
  readonly measure: Measurement;
  /** false when it does not belong to this kind of engine as written down */
  readonly fits: boolean;
  readonly text: string;
}

export interface FindableGroup {
  readonly title: string;
  readonly of: readonly Findable[];
}

export function findable({ measurements, specs }: Catalog, facts: Facts): Findable[] {
  return measurements.map((measure) => ({
    measure,
    fits: applies(measure.when, facts) !== 'no',
    text: [
      measure.name,
      measure.id.replaceAll('-', ' '),
      measure.decision,
      ...measure.instruments.map((i) => i.name),
      ...(measure.components ?? []).map((c) => c.replaceAll('-', ' ')),
      ...[measure.spec, measure.nominalSpec, measure.rejectSpec].flatMap(
        (id) => specs.find((s) => s.id === id)?.spellings ?? [],
      ),
    ]
      .join(' ')
      .toLowerCase(),
  }));
}

/** Those that have every word typed. */
export function found(all: readonly Findable[], typed: string): Findable[] {
  const words = typed
    .trim()
    .toLowerCase()
    .split(/[\s,-]+/)
    .filter(Boolean);
  return all.filter(({ text }) => words.every((word) => text.includes(word)));
}

/** By what a mechanic is working on, in the catalog's order; what says nothing of it comes last. Empty groups are left out. */
export function grouped({ measurementGroups }: Catalog, all: readonly Findable[]): FindableGroup[] {
  const groups: FindableGroup[] = measurementGroups.map(({ id, title }) => ({
    title,
    of: all.filter(({ measure }) => measure.group === id),
  }));
  const others = { title: 'Others', of: all.filter(({ measure }) => measure.group === undefined) };
  return [...groups, others].filter(({ of }) => of.length > 0);
}
