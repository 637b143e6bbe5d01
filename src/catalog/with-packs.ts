import { builtInRead } from './built-in.js';
import type { Catalog } from './catalog.js';
import { assemble, type Loaded } from './loader/assemble.js';
import { CatalogError, type CatalogProblem } from './loader/error.js';
import { problem, type ReadPack } from './loader/pack.js';
import { type Pack, readPack } from './loader/pack-text.js';
import { keyOf, type SectionName } from './schema/sections.js';

/** One entry that a pack brings, and what it does to the entry that was there. */
export interface GivenEntry {
  readonly section: SectionName;
  readonly key: string;
  readonly how: 'added' | 'replaced' | 'extended';
}

/** A shop's pack as it stands in the catalog, or why it does not. */
export interface OwnPack {
  readonly file: string;
  /** its own id and title; left out when its head cannot be read */
  readonly head?: { readonly id: string; readonly title: string };
  /** what it brings; none while it is left out */
  readonly gives: readonly GivenEntry[];
  /** why it is left out; none when it is in */
  readonly problems: readonly CatalogProblem[];
}

export interface WithPacks {
  readonly catalog: Catalog;
  /** in the order given */
  readonly packs: readonly OwnPack[];
}

/**
 * The program's own catalog with a shop's packs on top, in their order.
 *
 * Never throws: a pack that does not fit, because it is broken or because the program's own packs have changed under
 * it, is left out with every reason, and the others stand. So a pack that builds on one that is left out is left out
 * as well. `proves` may refuse a catalog that is sound in itself; its words then stand as the reason.
 */
export function withPacks(
  packs: readonly Pack[],
  proves: (catalog: Catalog) => string | undefined = () => undefined,
): WithPacks {
  const own = builtInRead();
  const read = packs.map((pack) => named(readPack(pack), own));
  const all = tryAll(own, read, proves);
  if (!('problems' in all))
    return { catalog: all.catalog, packs: read.map((pack) => standing(pack, all, [])) };
  return oneByOne(own, read, proves);
}

/** What a pack calls itself. @throws CatalogError when its head cannot be read */
export function packHead(pack: Pack): NonNullable<ReadPack['head']> {
  const { head, problems } = readPack(pack);
  if (head) return head;
  throw new CatalogError(problems);
}

/** Two packs of one id cannot be told apart. */
function named(read: ReadPack, own: readonly ReadPack[]): ReadPack {
  if (!own.some(({ head }) => head?.id === read.head?.id)) return read;
  const reason = `“${read.head?.id}” is one of the program’s own packs; give yours another id`;
  return { ...read, problems: [problem(read.file, read.lineOf, ['pack', 'id'], reason), ...read.problems] };
}

type Tried = Loaded | { readonly problems: readonly CatalogProblem[] };
type Proof = Parameters<typeof withPacks>[1];

function tryAll(own: readonly ReadPack[], read: readonly ReadPack[], proves: NonNullable<Proof>): Tried {
  try {
    const loaded = assemble([...own, ...read]);
    const against = read.length === 0 ? undefined : proves(loaded.catalog);
    return against === undefined ? loaded : { problems: [problem(read.at(-1)!.file, () => 0, [], against)] };
  } catch (error) {
    if (error instanceof CatalogError) return { problems: error.problems };
    throw error;
  }
}

function oneByOne(
  own: readonly ReadPack[],
  read: readonly ReadPack[],
  proves: NonNullable<Proof>,
): WithPacks {
  const files = new Set(own.map(({ file }) => file));
  const taken: ReadPack[] = [];
  const stands: OwnPack[] = [];
  let loaded: Loaded = assemble(own);
  for (const pack of read) {
    const tried = tryAll(own, [...taken, pack], proves);
    if ('problems' in tried) {
      stands.push(
        standing(
          pack,
          loaded,
          tried.problems.map((p) => told(p, pack, files)),
        ),
      );
    } else {
      taken.push(pack);
      loaded = tried;
      stands.push(standing(pack, tried, []));
    }
  }
  return { catalog: loaded.catalog, packs: stands };
}

/** A complaint about another file than the pack's own: what it takes away or changes is needed there. */
function told(p: CatalogProblem, { file }: ReadPack, builtIn: ReadonlySet<string>): CatalogProblem {
  if (p.file === file) return p;
  const whose = builtIn.has(p.file) ? 'the program’s own' : 'the shop’s pack';
  return { file, line: 0, path: '', reason: `with it ${whose} ${p.file} would no longer hold: ${p.reason}` };
}

function standing(pack: ReadPack, { replaced }: Loaded, problems: readonly CatalogProblem[]): OwnPack {
  const { file, head } = pack;
  const changed = new Map(
    replaced.filter((r) => r.file === file).map((r) => [`${r.section} ${r.key}`, r.how] as const),
  );
  const gives = pack.entries.map(({ section, value }) => {
    const { architecture } = pack.defaults;
    const key = keyOf(section, { architecture, ...value });
    return { section, key, how: changed.get(`${section} ${key}`) ?? ('added' as const) };
  });
  return { file, ...(head && { head }), gives: problems.length > 0 ? [] : gives, problems };
}
