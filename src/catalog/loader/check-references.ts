import { references } from '../schema/references.js';
import type { SectionName } from '../schema/sections.js';
import type { Path } from './pack.js';

/** An entry that holds a reference to nothing. */
export interface Dangling {
  readonly section: SectionName;
  readonly key: string;
  readonly path: Path;
  readonly reason: string;
}

export type Valid = ReadonlyMap<SectionName, ReadonlyMap<string, Readonly<Record<string, unknown>>>>;

/**
 * Every reference that points at nothing. A component named by a component must stand in the same architecture;
 * a component named from elsewhere must stand in at least one (in all that a place names with `on`).
 */
export function danglingReferences(entries: Valid): Dangling[] {
  const knows = knower(entries);
  const found: Dangling[] = [];
  for (const [section, list] of entries) {
    const rules = Object.entries(references[section] ?? {});
    for (const [key, entry] of list) {
      for (const [pattern, target] of rules) {
        for (const { path, value, holder } of follow(entry, pattern.split('.'))) {
          const missing = knows(target, value, scopeOf(section, entry, holder));
          if (missing) found.push({ section, key, path, reason: missing });
        }
      }
    }
  }
  return found;
}

function scopeOf(
  section: SectionName,
  entry: Readonly<Record<string, unknown>>,
  holder: Readonly<Record<string, unknown>>,
): readonly string[] {
  if (section === 'components' || section === 'assemblies') return [entry.architecture as string];
  return (holder.on as string[] | undefined) ?? [];
}

function knower(entries: Valid) {
  const anywhere = new Set([...(entries.get('components')?.values() ?? [])].map(({ id }) => id as string));
  return (target: SectionName, id: string, scope: readonly string[]): string | undefined => {
    const list = entries.get(target);
    if (target !== 'components') return list?.has(id) ? undefined : `there is no "${id}" in ${target}`;
    if (!anywhere.has(id)) return `there is no "${id}" in ${target}`;
    const lacking = scope.find((architecture) => !list?.has(`${architecture}/${id}`));
    return lacking && `there is no "${id}" in ${target} of ${lacking}`;
  };
}

interface Found {
  readonly path: Path;
  readonly value: string;
  /** the map that the value stands in */
  readonly holder: Readonly<Record<string, unknown>>;
}

/** All texts at a path of fields, where `*` stands for each item of a list. */
function follow(
  from: unknown,
  steps: readonly string[],
  path: Path = [],
  holder: Readonly<Record<string, unknown>> = {},
): Found[] {
  const [step, ...rest] = steps;
  if (step === undefined) return typeof from === 'string' ? [{ path, value: from, holder }] : [];
  if (typeof from !== 'object' || from === null) return [];
  if (step === '*')
    return (from as unknown[]).flatMap((item, index) => follow(item, rest, [...path, index], holder));
  const map = from as Readonly<Record<string, unknown>>;
  return follow(map[step], rest, [...path, step], map);
}
