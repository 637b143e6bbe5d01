import type { Catalog, Component } from '../catalog.js';
import { architectures } from '../schema/fields/when.js';
import { keyOf, type SectionName, sectionNames, sections } from '../schema/sections.js';
import { danglingReferences } from './check-references.js';
import { findCycle } from './cycles.js';
import { CatalogError, type CatalogProblem } from './error.js';
import { inWords } from './in-words.js';
import { type Merged, merge, type Replaced, writtenIn } from './merge.js';
import { collectOrigins, withOrigins } from './origins.js';
import { problem, type ReadPack } from './pack.js';

export interface Loaded {
  readonly catalog: Catalog;
  /** what later packs changed in earlier ones */
  readonly replaced: readonly Replaced[];
}

/** One catalog out of packs that have been read, in their order. Throws CatalogError with every problem found. */
export function assemble(read: readonly ReadPack[]): Loaded {
  const problems = read.flatMap((pack) => pack.problems);
  const origins = collectOrigins(read, problems);
  const entries = read.flatMap((pack) => pack.entries).map((entry) => withOrigins(entry, origins));
  const { merged, replaced } = merge(entries, problems);
  const valid = new Map(sectionNames.map((name) => [name, validate(merged.get(name), problems)]));
  // while an entry is missing or broken, references to it would only repeat the complaint
  if (problems.length === 0) problems.push(...crossCheck(valid, merged));
  if (problems.length > 0) throw new CatalogError(problems);
  return { catalog: listsOf(valid), replaced };
}

type Valid = Map<string, Readonly<Record<string, unknown>>>;
type Places = ReadonlyMap<SectionName, ReadonlyMap<string, Merged>>;

function validate(list: ReadonlyMap<string, Merged> | undefined, problems: CatalogProblem[]): Valid {
  const valid: Valid = new Map();
  for (const [key, entry] of list ?? []) {
    const result = sections[entry.section].safeParse(entry.value);
    if (result.success) valid.set(key, result.data);
    else problems.push(...result.error.issues.map(({ path, message }) => at(entry, path, inWords(message))));
  }
  return valid;
}

const listsOf = (valid: ReadonlyMap<SectionName, Valid>) =>
  Object.fromEntries(
    [...valid].map(([section, list]) => [section, [...list.values()]]),
  ) as unknown as Catalog;

/** What no entry can tell alone: references to nothing, circles. */
function crossCheck(valid: ReadonlyMap<SectionName, Valid>, places: Places): CatalogProblem[] {
  const dangling = danglingReferences(valid).map(({ section, key, path, reason }) =>
    at(places.get(section)!.get(key)!, path, reason),
  );
  return dangling.length > 0 ? dangling : cycles(listsOf(valid), places);
}

function at(entry: Merged, path: readonly PropertyKey[], reason: string): CatalogProblem {
  const steps = path.filter((step): step is string | number => typeof step !== 'symbol');
  const written = writtenIn(entry, steps);
  const { pack } = written.entry;
  return problem(pack.file, pack.lineOf, written.path, `${reason} (${entry.section}: ${entry.key})`);
}

function cycles(catalog: Catalog, places: Places): CatalogProblem[] {
  return [
    ...componentCycles(catalog, places),
    ...faultCycles(catalog, places),
    ...checkCycles(catalog, places),
  ];
}

/** Whatever their conditions: a circle that no machine closes is a mistake all the same. */
function faultCycles({ faults }: Catalog, places: Places): CatalogProblem[] {
  const brings = new Map(faults.map(({ id, causes = [] }) => [id, causes.map((c) => c.fault)]));
  return circleIn('faults', 'causes', brings, places, 'faults bring each other about');
}

function checkCycles({ checks }: Catalog, places: Places): CatalogProblem[] {
  const waits = new Map(
    checks.map(({ id, during, differentialOf }) => [
      id,
      [during, differentialOf?.check].filter((c) => c !== undefined),
    ]),
  );
  return circleIn('checks', 'id', waits, places, 'checks wait for each other');
}

function circleIn(
  section: 'faults' | 'checks',
  field: string,
  graph: ReadonlyMap<string, readonly string[]>,
  places: Places,
  words: string,
): CatalogProblem[] {
  const cycle = findCycle(graph);
  if (!cycle) return [];
  return [at(places.get(section)!.get(cycle[0]!)!, [field], `${words}: ${cycle.join(' → ')}`)];
}

function componentCycles(catalog: Catalog, places: Places): CatalogProblem[] {
  return architectures.flatMap((architecture) => {
    const list = catalog.components.filter((component) => component.architecture === architecture);
    const cycle = findCycle(new Map(list.map(({ id, before }) => [id, beforeIds(before)])));
    if (!cycle) return [];
    const entry = places.get('components')!.get(keyOf('components', { architecture, id: cycle[0] }))!;
    return [at(entry, ['before'], `components wait for each other: ${cycle.join(' → ')}`)];
  });
}

const beforeIds = (before: Component['before']) => before.map(({ component }) => component);
