import { byId, type Catalog, type Check } from '../../../catalog/index.js';
import type { From, Shop } from '../../job.js';

/** What reads a number and so stands on a shop's list of instruments; a jar, a lamp or a wrench is no instrument there. */
const readsANumber = /(gauge|meter|tester|feelers?|infrared|manometer)( in line)?$/;

/**
 * What the shop has, in the words of the catalog's checks, so that a check says which instrument is lacking. Undefined
 * while the shop's list is empty: then nobody knows.
 *
 * An instrument is there when every telling word of it stands in the name of one on the list, or when one on the list
 * reads what the check's measurement is of: an ohmmeter may be called a multimeter.
 */
export function instrumentsOwned(
  { instruments }: Pick<Shop, 'instruments'>,
  catalog: Catalog,
): ReadonlySet<string> | undefined {
  if (instruments.length === 0) return undefined;
  const owned = catalog.checks.flatMap((check) =>
    check.instruments.filter(
      (word) => !readsANumber.test(word) || instruments.some((i) => serves(i, word, check, catalog)),
    ),
  );
  return new Set(owned);
}

function serves(
  { name, uncertainty }: From<'instrument'>,
  word: string,
  { measurement }: Check,
  catalog: Catalog,
): boolean {
  const mine = wordsOf(name);
  const telling = wordsOf(word).filter((each) => each !== 'gauge' && each !== 'meter');
  if (telling.length > 0 && telling.every((each) => mine.includes(each))) return true;
  return byId(catalog.measurements).get(measurement ?? '')?.kind === uncertainty.kind;
}

const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter((word) => word.length > 2)
    .map((word) => word.replace(/s$/, ''));
