import { z } from 'zod';
import { namedOrigin } from '../schema/fields/origin.js';
import { architecture } from '../schema/fields/when.js';
import { id, line } from '../schema/fields/word.js';
import { type SectionName, sectionNames } from '../schema/sections.js';
import type { CatalogProblem } from './error.js';
import { inWords } from './in-words.js';

export type Path = readonly (string | number)[];

/** The line on which the deepest existing part of a path begins. */
export type LineOf = (path: Path) => number;

/** One entry of one list, as written, and where it stands. */
export interface RawEntry {
  readonly section: SectionName;
  readonly value: Readonly<Record<string, unknown>>;
  readonly pack: ReadPack;
  readonly path: Path;
}

export interface ReadPack {
  readonly file: string;
  /** what it calls itself; left out when its head could not be read */
  readonly head?: { readonly id: string; readonly title: string };
  /** entries told apart by architecture stand once for each that is named */
  readonly defaults: {
    readonly origin?: string | undefined;
    readonly architecture?: string | readonly string[] | undefined;
  };
  readonly origins: readonly z.infer<typeof namedOrigin>[];
  readonly entries: readonly RawEntry[];
  readonly problems: readonly CatalogProblem[];
  readonly lineOf: LineOf;
  /** its entries are complete and known to be sound: the program's own, checked when the program was built */
  readonly checked?: true;
}

const head = z.strictObject({
  pack: z.strictObject({ id, title: line }),
  defaults: z
    .strictObject({
      origin: id.optional(),
      architecture: z.union([architecture, z.array(architecture).min(2)]).optional(),
    })
    .optional(),
  origins: z.array(namedOrigin).optional(),
});

/** Sorts a pack's content into entries. Never throws: what is wrong stands in `problems`. */
export function sortPack(file: string, content: unknown, lineOf: LineOf): ReadPack {
  if (typeof content !== 'object' || content === null || Array.isArray(content)) {
    return refusedPack(file, lineOf, [{ file, line: 1, path: '', reason: 'a pack is a map of lists' }]);
  }
  const { lists, rest } = split(content);
  const read = head.safeParse(rest);
  if (!read.success) {
    return refusedPack(
      file,
      lineOf,
      read.error.issues.map(({ path, message }) => problem(file, lineOf, path, inWords(message))),
    );
  }
  const { pack: ownName, defaults = {}, origins = [] } = read.data;
  const problems: CatalogProblem[] = [];
  const entries: RawEntry[] = [];
  const pack: ReadPack = { file, head: ownName, defaults, origins, entries, problems, lineOf };
  for (const [section, list] of lists) collect(pack, section, list, entries, problems);
  return pack;
}

export function refusedPack(file: string, lineOf: LineOf, problems: readonly CatalogProblem[]): ReadPack {
  return { file, defaults: {}, origins: [], entries: [], lineOf, problems };
}

function split(content: object) {
  const isSection = (name: string): name is SectionName => (sectionNames as string[]).includes(name);
  const lists: [SectionName, unknown][] = [];
  const rest: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(content)) {
    if (isSection(name)) lists.push([name, value]);
    else rest[name] = value;
  }
  return { lists, rest };
}

function collect(
  pack: ReadPack,
  section: SectionName,
  list: unknown,
  entries: RawEntry[],
  problems: CatalogProblem[],
): void {
  if (!Array.isArray(list)) {
    problems.push(problem(pack.file, pack.lineOf, [section], 'a section is a list'));
    return;
  }
  for (const [index, value] of list.entries()) {
    const path = [section, index];
    if (typeof value === 'object' && value !== null && typeof value.id === 'string')
      entries.push({ section, value, pack, path });
    else problems.push(problem(pack.file, pack.lineOf, path, 'an entry is a map with an id'));
  }
}

export function problem(
  file: string,
  lineOf: LineOf,
  path: readonly PropertyKey[],
  reason: string,
): CatalogProblem {
  const clean = path.filter((step): step is string | number => typeof step !== 'symbol');
  return { file, line: lineOf(clean), path: printPath(clean), reason };
}

function printPath(path: Path): string {
  return path
    .map((step, index) => (typeof step === 'number' ? `[${step}]` : index > 0 ? `.${step}` : step))
    .join('');
}
