import { existsSync } from 'node:fs';
import { basename } from 'node:path';
import { type Catalog, CatalogError, type Pack, problemWords } from '../../catalog/index.js';
import {
  foldShop,
  givesWords,
  type ReadShopPack,
  readShopPack,
  type ShopPack,
  shopCatalog,
} from '../../job/index.js';
import { shopNow } from '../../shopkeep/index.js';
import type { Store } from '../../store/index.js';
import { type Call, type Command, Failed, type Surroundings, text, WronglyCalled } from '../command.js';
import { suggestion } from '../nearest.js';
import { readWhole } from './in-file.js';
import { linkLines } from './pack-links.js';
import { storeFile, storeOptions, withStore } from './store-options.js';
import { writeShop } from './write-shop.js';

export const pack: Command = {
  usage: 'wristpin pack list | check FILE | add FILE | show ID | remove ID | links [ID] [options]',
  options: storeOptions,
  examples: [
    'wristpin pack check pumps.yaml',
    'wristpin pack add pumps.yaml',
    'wristpin pack remove pumps',
    'wristpin pack links coil-dead',
  ],
  takes: { least: 1, most: 2 },
  run: async (call, around) => {
    const [act, what] = call.positionals;
    const form = Object.hasOwn(forms, act!) ? forms[act!] : undefined;
    if (!form) {
      const names = Object.keys(forms);
      throw new WronglyCalled(`“${act}” is none of ${names.join(', ')}.${suggestion(act!, names)}`);
    }
    if (form.wants && !form.may && what === undefined)
      throw new WronglyCalled(`wristpin pack ${act} wants ${form.wants}.`);
    if (!form.wants && what !== undefined)
      throw new WronglyCalled(`“${what}” is too much after pack ${act}.`);
    await form.run(call, around, what ?? '');
  },
};

interface Form {
  /** what must follow its name */
  readonly wants?: string;
  /** that may be left out */
  readonly may?: true;
  readonly run: (call: Call, around: Surroundings, what: string) => Promise<void>;
}

const forms: Readonly<Record<string, Form>> = {
  list: { run: list },
  check: { wants: 'the pack’s file', run: check },
  add: { wants: 'the pack’s file', run: add },
  show: { wants: 'the pack’s id', run: showText },
  remove: { wants: 'the pack’s id', run: remove },
  links: { wants: 'the id of a fault or a check', may: true, run: links },
};

async function list(call: Call, around: Surroundings): Promise<void> {
  await withStore(call, around, 'must-exist', async ({ store }) => {
    const packs = await packsOf(store);
    if (packs.length === 0)
      return around.out('The shop has no pack of its own. “wristpin pack add FILE” adds one.');
    for (const one of packs) around.out(packLines(one).join('\n'));
  });
}

/** Against the shop's catalog where there is a store, else against the program's own. Nothing is written. */
async function check(call: Call, around: Surroundings, file: string): Promise<void> {
  const given = await readPackFile(file);
  const say = (read: ReadShopPack) => around.out(`${file} is sound. ${saysWhat(read)}`);
  if (!hasStore(call, around)) return say(taken(() => readShopPack(foldShop([]), given)));
  await withStore(call, around, 'must-exist', async ({ store }) => {
    const { shop } = await shopNow(store);
    say(taken(() => readShopPack(shop, given)));
  });
}

async function add(call: Call, around: Surroundings, file: string): Promise<void> {
  const given = await readPackFile(file);
  await withStore(call, around, 'may-begin', async ({ store }) => {
    const { shop } = await shopNow(store);
    const read = taken(() => readShopPack(shop, given));
    await writeShop(store, around, 'pack', read.body);
    around.out(
      `${read.body.pack} ${read.replaces ? 'takes the place of the one before' : 'is in'}. ${saysWhat(read)}`,
    );
  });
}

async function showText(call: Call, around: Surroundings, id: string): Promise<void> {
  await withStore(call, around, 'must-exist', async ({ store }) => {
    around.out((await packNamed(store, id)).text.trimEnd());
  });
}

async function remove(call: Call, around: Surroundings, id: string): Promise<void> {
  await withStore(call, around, 'must-exist', async ({ store }) => {
    const { pack: named, text: kept } = await packNamed(store, id);
    await writeShop(store, around, 'pack', { pack: named, text: kept, removed: true });
    around.out(`${named} is out of the catalog. Its text stays in the shop’s log.`);
  });
}

/** Of the shop's catalog where there is a store, else of the program's own. */
async function links(call: Call, around: Surroundings, id: string): Promise<void> {
  const say = (catalog: Catalog) => around.out(linkLines(catalog, id).join('\n'));
  if (!hasStore(call, around)) return say(shopCatalog(foldShop([])).catalog);
  await withStore(call, around, 'must-exist', async ({ store }) => say((await shopNow(store)).catalog));
}

async function packsOf(store: Store): Promise<readonly ShopPack[]> {
  return shopCatalog((await shopNow(store)).shop).packs;
}

async function packNamed(store: Store, id: string): Promise<ShopPack> {
  const packs = await packsOf(store);
  const found = packs.find((p) => p.pack === id);
  if (found) return found;
  const ids = packs.map((p) => p.pack);
  throw new Failed(
    ids.length === 0
      ? 'The shop has no pack of its own.'
      : `The shop has no pack “${id}”.${suggestion(id, ids)} “wristpin pack list” lists them.`,
  );
}

function hasStore(call: Call, around: Surroundings): boolean {
  return (
    text(call, 'database') !== undefined ||
    text(call, 'store') !== undefined ||
    existsSync(storeFile(call, around))
  );
}

async function readPackFile(file: string): Promise<Pack> {
  const bytes = await readWhole(file);
  try {
    return { file: basename(file), text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch (cause) {
    throw new Failed(`${file} cannot be read as a pack: it is not UTF-8 text.`, { cause });
  }
}

/** Refused in words, one reason a line. */
function taken<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof CatalogError)) throw error;
    const reasons = error.problems.map((p) => `  ${problemWords(p)}`);
    throw new Failed(['this pack is not taken; nothing was changed.', ...reasons].join('\n'), {
      cause: error,
    });
  }
}

const saysWhat = ({ title, gives }: ReadShopPack): string => `“${title}”: ${givesWords(gives)}.`;

function packLines({ pack: id, head, gives, problems }: ShopPack): string[] {
  const title = head ? `“${head.title}”` : 'its head cannot be read';
  if (problems.length === 0) return [`${id}  ${title}: ${givesWords(gives)}`];
  return [`${id}  ${title}: left out, because`, ...problems.map((p) => `  ${problemWords(p)}`)];
}
