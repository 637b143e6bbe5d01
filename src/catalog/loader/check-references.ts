import type { Reference } from '../schema/fields/reference.js';
import { type FoundReference, referencesIn } from '../schema/find-references.js';
import { type SectionName, sections } from '../schema/sections.js';
import type { Path } from './pack.js';

/** An entry that holds a reference to nothing. */
export interface Dangling {
  readonly section: SectionName;
  readonly key: string;
  readonly path: Path;
  readonly reason: string;
}

type Fields = Readonly<Record<string, unknown>>;
export type Valid = ReadonlyMap<SectionName, ReadonlyMap<string, Fields>>;

/**
 * Every reference that points at nothing. What an entry of one architecture names must be there on that
 * architecture; a component named from elsewhere must stand in at least one (in all that a place names with `on`).
 */
export function danglingReferences(entries: Valid): Dangling[] {
  const anywhere = new Set([...(entries.get('components')?.values() ?? [])].map(({ id }) => id as string));
  const found: Dangling[] = [];
  for (const [section, list] of entries) {
    for (const [key, entry] of list) {
      for (const { path, value, points, holder } of referencesIn(sections[section], entry)) {
        const reason =
          'to' in points
            ? missing({ value, to: points.to, scope: scopeOf(entry, holder) }, entries, anywhere)
            : missingOutcome({ value, points, holder }, entry, entries);
        if (reason) found.push({ section, key, path, reason });
      }
    }
  }
  return found;
}

const scopeOf = (entry: Fields, holder: Fields): readonly string[] =>
  typeof entry.architecture === 'string' ? [entry.architecture] : ((holder.on as string[] | undefined) ?? []);

interface Named {
  readonly value: string;
  readonly to: SectionName;
  /** the architectures on which it must be there */
  readonly scope: readonly string[];
}

function missing({ value, to, scope }: Named, entries: Valid, anywhere: ReadonlySet<string>) {
  const list = entries.get(to);
  const target = list?.get(value);
  if (to === 'components' ? !anywhere.has(value) : !target) return `there is no "${value}" in ${to}`;
  const of = target?.architectures as readonly string[] | undefined;
  const lacking = scope.find((architecture) =>
    to === 'components' ? !list?.has(`${architecture}/${value}`) : of && !of.includes(architecture),
  );
  return lacking && `there is no "${value}" in ${to} of ${lacking}`;
}

function missingOutcome(
  { value, points, holder }: Omit<FoundReference, 'path'>,
  entry: Fields,
  entries: Valid,
): string | undefined {
  const { outcomeOf } = points as Extract<Reference, { outcomeOf: unknown }>;
  const id = outcomeOf === undefined ? undefined : (holder[outcomeOf] as string);
  const check = id === undefined ? entry : entries.get('checks')?.get(id);
  const outcomes = (check?.outcomes ?? []) as readonly { readonly id: string }[];
  if (outcomes.some((outcome) => outcome.id === value)) return undefined;
  return `${id === undefined ? 'the check' : `"${id}"`} has no outcome "${value}"`;
}
