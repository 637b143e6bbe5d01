import {
  architectures,
  builtInCatalog,
  type Catalog,
  CatalogError,
  type OwnPack,
  type Pack,
  packHead,
  type WithPacks,
  withPacks,
} from '../../../catalog/index.js';
import { machineNetwork } from '../../../diagnose/index.js';
import { infer, NetworkError } from '../../../infer/index.js';
import { listed, plural } from '../../../phrase/index.js';
import type { Body } from '../../entry.js';
import type { Shop } from '../../job.js';

/** A pack of the shop's own: its text as it was written, and how it stands. */
export interface ShopPack extends OwnPack {
  readonly pack: string;
  readonly text: string;
  readonly entry: string;
  readonly at: string;
}

/** What is read of a pack. */
export type PackText = Pick<Body<'pack'>, 'pack' | 'text'>;

export interface ShopCatalog {
  readonly catalog: Catalog;
  readonly packs: readonly ShopPack[];
}

let last: { readonly texts: string; readonly made: WithPacks } | undefined;

/** What the shop computes with: the program's catalog with the shop's own packs on top. */
export function catalogOf(shop: Pick<Shop, 'packs'>): Catalog {
  return shop.packs.length === 0 ? builtInCatalog() : made(shop.packs).catalog;
}

/**
 * The same with how each pack stands. One that does not fit this version of the program, or that makes a machine
 * nothing can be worked out for, is left out with its reasons; the rest of the shop goes on.
 */
export function shopCatalog(shop: Pick<Shop, 'packs'>): ShopCatalog {
  if (shop.packs.length === 0) return { catalog: builtInCatalog(), packs: [] };
  const { catalog, packs } = made(shop.packs);
  const how = shop.packs.map(({ pack, text, entry, at }, i) => ({ ...packs[i]!, pack, text, entry, at }));
  return { catalog, packs: how };
}

/** Made anew only when a text is another. */
function made(packs: Shop['packs']): WithPacks {
  const texts = JSON.stringify(packs.map(({ pack, text }) => [pack, text]));
  if (last?.texts !== texts) last = { texts, made: readPacks(packs) };
  return last.made;
}

/** Takes a good part of a second, and for packs that mean harm far longer: a server does it on a thread of its own. */
export const readPacks = (packs: readonly PackText[]): WithPacks =>
  withPacks(
    packs.map(({ pack, text }) => ({ file: fileOf(pack), text })),
    worksOut,
  );

const fileOf = (pack: string): string => `${pack}.yaml`;

/** A bare machine of every kind must have an answer; otherwise the reason why not. */
function worksOut(catalog: Catalog): string | undefined {
  try {
    for (const architecture of architectures) infer(machineNetwork(catalog, { architecture }, []).network);
    return undefined;
  } catch (error) {
    if (error instanceof NetworkError || error instanceof RangeError) return error.message;
    throw error;
  }
}

/** A new pack read against the shop's catalog as it stands. */
export interface ReadShopPack {
  readonly body: Body<'pack'>;
  readonly title: string;
  readonly gives: OwnPack['gives'];
  /** the shop has a pack of this id already: this one takes its place */
  readonly replaces: boolean;
}

const mostText = 400_000;

/**
 * Takes a pack before it is kept: nothing is written unless it fits.
 * @param file its name, for the reasons
 * @throws CatalogError with every reason and its line
 */
export function readShopPack(shop: Pick<Shop, 'packs'>, { file, text }: Pack): ReadShopPack {
  if (text.trim() === '') throw refused(file, 'there is nothing in it');
  if (text.length > mostText)
    throw refused(file, `it has ${text.length} letters, and ${mostText} are the most that is kept`);
  const { id } = packHead({ file, text });
  const others = shop.packs.filter((p) => p.pack !== id).map((p) => ({ file: fileOf(p.pack), text: p.text }));
  const stands = withPacks([...others, { file, text }], worksOut).packs.at(-1)!;
  if (stands.problems.length > 0) throw new CatalogError(stands.problems);
  return {
    body: { pack: id, text },
    title: stands.head!.title,
    gives: stands.gives,
    replaces: others.length < shop.packs.length,
  };
}

const refused = (file: string, reason: string): CatalogError =>
  new CatalogError([{ file, line: 1, path: '', reason }]);

/** "adds 2 faults and 1 check, changes 1 fault" */
export function givesWords(gives: OwnPack['gives']): string {
  const added = bySection(gives.filter((g) => g.how === 'added'));
  const changed = bySection(gives.filter((g) => g.how !== 'added'));
  const parts = [added && `adds ${added}`, changed && `changes ${changed}`].filter(Boolean);
  return parts.join(', ') || 'brings nothing';
}

function bySection(gives: OwnPack['gives']): string {
  const sections = [...new Set(gives.map((g) => g.section))];
  const each = sections.map((section) => {
    const n = gives.filter((g) => g.section === section).length;
    const plain = section.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
    return `${n} ${plural(n, plain.replace(/s$/, ''), plain)}`;
  });
  return listed(each);
}
