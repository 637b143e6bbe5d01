import { keyOf, type SectionName, sections } from '../schema/sections.js';
import type { CatalogProblem } from './error.js';
import type { Path, RawEntry } from './pack.js';
import { problem } from './pack.js';

/** What an entry of a later pack did to an entry that was there. */
export interface Replaced {
  readonly section: SectionName;
  readonly key: string;
  readonly file: string;
  readonly how: 'replaced' | 'extended';
}

/** The entry that stands in the end for one key, still unchecked. */
export interface Merged extends RawEntry {
  readonly key: string;
  /** fields that came from the entry it extends, and where that one stands */
  readonly inherited?: {
    readonly fields: ReadonlySet<string>;
    readonly from: Merged;
    /** lists that `adds` made longer: how many items came from the entry it extends */
    readonly lengths: ReadonlyMap<string, number>;
  };
}

/**
 * One entry a key. A second entry of the same key is a mistake unless it says what it means:
 * `replaces: true` takes the place of the first; `extends: id` starts from that entry and gives only what differs, with
 * `adds: { links: […] }` for lists that only grow.
 */
export function merge(entries: readonly RawEntry[], problems: CatalogProblem[]) {
  const merged = new Map<SectionName, Map<string, Merged>>();
  const replaced: Replaced[] = [];
  for (const entry of entries) {
    const list = merged.get(entry.section) ?? new Map<string, Merged>();
    merged.set(entry.section, list);
    for (const each of withDefaults(entry)) {
      const result = place(each, list, problems);
      if (!result) continue;
      if (list.has(result.key)) {
        const how = 'extends' in entry.value ? 'extended' : 'replaced';
        replaced.push({ section: entry.section, key: result.key, file: entry.pack.file, how });
      }
      list.set(result.key, result);
    }
  }
  return { merged, replaced };
}

function place(
  entry: RawEntry,
  list: ReadonlyMap<string, Merged>,
  problems: CatalogProblem[],
): Merged | undefined {
  const { extends: base, replaces, adds, ...value } = entry.value;
  const key = keyOf(entry.section, value);
  const refuse = (path: Path, reason: string) => {
    problems.push(problem(entry.pack.file, entry.pack.lineOf, [...entry.path, ...path], reason));
    return undefined;
  };
  if (replaces !== undefined && replaces !== true) return refuse(['replaces'], '"replaces" can only be true');
  if (base === undefined) {
    if (adds !== undefined) return refuse(['adds'], '"adds" needs an entry to extend');
    if (list.has(key) && !replaces)
      return refuse(['id'], `"${key}" is there already; write "replaces: true" to take its place`);
    if (!list.has(key) && replaces) return refuse(['replaces'], `there is no "${key}" to replace`);
    return { ...entry, value, key };
  }
  const from = list.get(keyOf(entry.section, { ...value, id: base }));
  if (!from) return refuse(['extends'], `there is no "${base}" to extend`);
  if (list.has(key) && from.key !== key && !replaces)
    return refuse(['id'], `"${key}" is there already; write "replaces: true" to take its place`);
  if ('origin' in sections[entry.section].shape && value.origin === undefined) {
    return refuse(
      ['extends'],
      'say where the changed figures come from: an "origin" here or in the defaults of the pack',
    );
  }
  const grown = longer(from.value, value, adds);
  if (typeof grown === 'string') return refuse(['adds'], grown);
  const fields = new Set(Object.keys(from.value).filter((field) => !(field in value)));
  const lengths = new Map(
    Object.keys(grown).map((f) => [f, (from.value[f] as unknown[] | undefined)?.length ?? 0]),
  );
  return {
    ...entry,
    value: { ...from.value, ...value, ...grown },
    key,
    inherited: { fields, from, lengths },
  };
}

type Fields = Readonly<Record<string, unknown>>;

/** The lists with what is added behind them, or why that cannot be. */
function longer(from: Fields, value: Fields, adds: unknown): Record<string, unknown[]> | string {
  if (adds === undefined) return {};
  if (typeof adds !== 'object' || adds === null || Array.isArray(adds)) return '"adds" is a map of lists';
  const grown: Record<string, unknown[]> = {};
  for (const [field, more] of Object.entries(adds)) {
    const before = from[field] ?? [];
    if (!Array.isArray(more) || !Array.isArray(before)) return `"${field}" is no list that can grow`;
    if (field in value) return `"${field}" is given anew and added to`;
    grown[field] = [...before, ...more];
  }
  return grown;
}

/** Fills what the pack gives for all its entries: the architecture of components, once for each where it names several. */
function withDefaults(entry: RawEntry): readonly RawEntry[] {
  const { architecture } = entry.pack.defaults;
  if (
    architecture === undefined ||
    'architecture' in entry.value ||
    !('architecture' in sections[entry.section].shape)
  )
    return [entry];
  return [architecture].flat().map((each) => ({ ...entry, value: { ...entry.value, architecture: each } }));
}

/** The pack and path in which a field of an entry was written. */
export function writtenIn(entry: Merged, path: Path): { readonly entry: Merged; readonly path: Path } {
  const [field, item, ...rest] = path;
  const before = entry.inherited?.lengths.get(String(field));
  if (before !== undefined && typeof item === 'number' && item >= before)
    return { entry, path: [...entry.path, 'adds', String(field), item - before, ...rest] };
  if (typeof field === 'string' && entry.inherited?.fields.has(field))
    return writtenIn(entry.inherited.from, path);
  return { entry, path: [...entry.path, ...path] };
}
