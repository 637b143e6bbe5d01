import type { Catalog, Component } from '../catalog.js';
import { architectures } from '../schema/fields/when.js';
import { inPhases } from '../schema/run-up.js';
import { keyOf, type SectionName, sectionNames, sections } from '../schema/sections.js';
import { danglingReferences } from './check-references.js';
import { findCycle } from './cycles.js';
import { CatalogError, type CatalogProblem } from './error.js';
import { hangingOnNothing } from './hanging.js';
import { inWords } from './in-words.js';
import { type Merged, merge, type Replaced, writtenIn } from './merge.js';
import { collectOrigins, withOrigins } from './origins.js';
import { problem, type ReadPack } from './pack.js';

export interface Loaded {
  readonly catalog: Catalog;
  /** what later packs changed in earlier ones */
  readonly replaced: readonly Replaced[];
}

export type Fields = Readonly<Record<string, unknown>>;

/** What the packs say in the end, by section and key: each value as its schema gives it, and where it was written. */
export type Entries = ReadonlyMap<SectionName, ReadonlyMap<string, Merged>>;

/** One catalog out of packs that have been read, in their order. Throws CatalogError with every problem found. */
export function assemble(read: readonly ReadPack[]): Loaded & { readonly entries: Entries } {
  const problems = read.flatMap((pack) => pack.problems);
  const origins = collectOrigins(read, problems);
  const raw = read.flatMap((pack) =>
    pack.checked ? pack.entries : pack.entries.map((entry) => withOrigins(entry, origins)),
  );
  const { merged, replaced } = merge(raw, problems);
  const entries = new Map(sectionNames.map((name) => [name, validate(merged.get(name), problems)]));
  // while an entry is missing or broken, references to it would only repeat the complaint
  if (problems.length === 0) problems.push(...crossCheck(entries));
  if (problems.length > 0) throw new CatalogError(problems);
  return { catalog: listsOf(entries), replaced, entries };
}

function validate(
  list: ReadonlyMap<string, Merged> | undefined,
  problems: CatalogProblem[],
): ReadonlyMap<string, Merged> {
  const valid = new Map<string, Merged>();
  for (const [key, entry] of list ?? []) {
    const result = entry.pack.checked ? undefined : sections[entry.section].safeParse(entry.value);
    if (!result || result.success) valid.set(key, result ? { ...entry, value: result.data } : entry);
    else problems.push(...result.error.issues.map(({ path, message }) => at(entry, path, inWords(message))));
  }
  return valid;
}

function listsOf(entries: Entries): Catalog {
  const lists = Object.fromEntries(
    [...entries].map(([section, list]) => [section, [...list.values()].map(({ value }) => value)]),
  ) as unknown as Catalog;
  return { ...lists, runUp: inPhases(lists.runUp) };
}

/** What no entry can tell alone: references to nothing, circles. */
function crossCheck(entries: Entries): CatalogProblem[] {
  const values = [...entries].map(
    ([section, list]) => [section, new Map([...list].map(([key, { value }]) => [key, value]))] as const,
  );
  const dangling = danglingReferences(new Map(values)).map(({ section, key, path, reason }) =>
    at(entries.get(section)!.get(key)!, path, reason),
  );
  const loose = hangingOnNothing(new Map(values)).map(({ section, key, reason }) =>
    at(entries.get(section)!.get(key)!, ['id'], reason),
  );
  const wrong = dangling.length > 0 ? dangling : loose;
  return wrong.length > 0 ? wrong : cycles(listsOf(entries), entries);
}

function at(entry: Merged, path: readonly PropertyKey[], reason: string): CatalogProblem {
  const steps = path.filter((step): step is string | number => typeof step !== 'symbol');
  const written = writtenIn(entry, steps);
  const { pack } = written.entry;
  return problem(pack.file, pack.lineOf, written.path, `${reason} (${entry.section}: ${entry.key})`);
}

function cycles(catalog: Catalog, entries: Entries): CatalogProblem[] {
  return [
    ...componentCycles(catalog, entries),
    ...faultCycles(catalog, entries),
    ...checkCycles(catalog, entries),
  ];
}

/** Whatever their conditions: a circle that no machine closes is a mistake all the same. */
function faultCycles({ faults }: Catalog, entries: Entries): CatalogProblem[] {
  const brings = new Map(faults.map(({ id, causes = [] }) => [id, causes.map((c) => c.fault)]));
  return circleIn('faults', 'causes', brings, entries, 'faults bring each other about');
}

function checkCycles({ checks }: Catalog, entries: Entries): CatalogProblem[] {
  const waits = new Map(
    checks.map(({ id, during, differentialOf }) => [
      id,
      [during, differentialOf?.check].filter((c) => c !== undefined),
    ]),
  );
  return circleIn('checks', 'id', waits, entries, 'checks wait for each other');
}

function circleIn(
  section: 'faults' | 'checks',
  field: string,
  graph: ReadonlyMap<string, readonly string[]>,
  entries: Entries,
  words: string,
): CatalogProblem[] {
  const cycle = findCycle(graph);
  if (!cycle) return [];
  return [at(entries.get(section)!.get(cycle[0]!)!, [field], `${words}: ${cycle.join(' → ')}`)];
}

function componentCycles(catalog: Catalog, entries: Entries): CatalogProblem[] {
  return architectures.flatMap((architecture) => {
    const list = catalog.components.filter((component) => component.architecture === architecture);
    const cycle = findCycle(new Map(list.map(({ id, before }) => [id, beforeIds(before)])));
    if (!cycle) return [];
    const entry = entries.get('components')!.get(keyOf('components', { architecture, id: cycle[0] }))!;
    return [at(entry, ['before'], `components wait for each other: ${cycle.join(' → ')}`)];
  });
}

const beforeIds = (before: Component['before']) => before.map(({ component }) => component);
