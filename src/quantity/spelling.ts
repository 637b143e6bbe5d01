import { QuantityError } from './error.js';
import { spellingHint } from './hint.js';
import type { Kind } from './quantity.js';
import type { Unit } from './unit.js';
import { units } from './units.js';

/** Spellings that mean different things to different people, with what to write instead. Keys as `unitKey` gives. */
const doubtful: Readonly<Record<string, string>> = {
  mil: 'a mil is a thousandth of an inch to one reader and a millimeter to another: write thou, in or mm',
  mils: 'a mil is a thousandth of an inch to one reader and a millimeter to another: write thou, in or mm',
  mPa: 'mPa is a thousandth of a pascal; write MPa if megapascal is meant',
  k: 'write K for kelvin, kΩ for kilohm',
  gr: 'gr is a grain to one reader and a gram to another: write g',
  ton: 'a short, a long and a metric ton differ: write lb or kg',
  tons: 'a short, a long and a metric ton differ: write lb or kg',
};

/**
 * The unit a person wrote, in any usual spelling: "lbs-in", "ft lb", "inches of water", `"`.
 *
 * Dots, hyphens and spaces do not count; letter case counts only where it tells two units apart (mΩ and MΩ).
 * `want` settles words that several kinds share: "oz" is a fluid ounce where a volume is wanted.
 * Throws QuantityError 'unknown-unit' or 'ambiguous'. The kind is not checked.
 */
export function readUnit(written: string, want?: Kind): Unit {
  const found = lookUpUnit(written, want);
  if (found) return found;
  const text = written.trim();
  throw new QuantityError('unknown-unit', `"${text}" is not a unit known here`, {
    text,
    wanted: want,
    hint: spellingHint(want),
  });
}

const longestSpelling = 100;

/** As `readUnit`, but undefined for an unknown unit. */
export function lookUpUnit(written: string, want?: Kind): Unit | undefined {
  if (written.length > longestSpelling) return undefined;
  const key = unitKey(written);
  const wanted = want && wantedIndex.get(`${want} ${key}`);
  if (wanted) return wanted;
  refuseDoubtful(key, written.trim(), want);
  return exactIndex.get(key) ?? anyCase(key, written.trim(), want);
}

function refuseDoubtful(key: string, text: string, want: Kind | undefined): void {
  const hint = Object.hasOwn(doubtful, key) ? doubtful[key] : undefined;
  if (hint)
    throw new QuantityError('ambiguous', `"${text}" has more than one meaning`, { text, wanted: want, hint });
}

function anyCase(key: string, text: string, want: Kind | undefined): Unit | undefined {
  const candidates = [...(anyCaseIndex.get(key.toLowerCase()) ?? [])];
  const ofKind = candidates.filter((unit) => unit.kind === want);
  const left = ofKind.length > 0 ? ofKind : candidates;
  if (left.length < 2) return left[0];
  const names = left.map((unit) => unit.id).join(' or ');
  throw new QuantityError('ambiguous', `"${text}" may be ${names}`, {
    text,
    wanted: want,
    hint: `write ${names}`,
  });
}

const replacements: readonly (readonly [RegExp, string])[] = [
  [/['′’‘]{2}|[″”“˝]/g, '"'],
  [/[′’‘]/g, "'"],
  [/[₂²]/g, '2'],
  [/³/g, '3'],
  [/\^/g, ''],
  // the micro sign and the Greek letter, the ohm sign and the Greek letter
  [/\u03bc/g, 'µ'],
  [/\u2126/g, '\u03a9'],
  [/℃/g, '°C'],
  [/℉/g, '°F'],
  [/[ºo˚]C$/, '°C'],
  [/[º˚]/g, '°'],
  [/[⁄∕]/g, '/'],
  // "×" stays when it stands alone: 2×
  [/(?<=.)[×](?=.)/g, ''],
  [/[\s.·•∙⋅*_\-‐‑‒–−]+/g, ''],
];

/** What remains of a spelling when everything that people vary without meaning anything is taken away. */
export function unitKey(written: string): string {
  return replacements.reduce((text, [from, into]) => text.replace(from, into), written);
}

const exactIndex = new Map<string, Unit>();
const wantedIndex = new Map<string, Unit>();
const anyCaseIndex = new Map<string, Set<Unit>>();

for (const unit of Object.values(units)) {
  // the id "1" is no spelling: "5 1" must not read as the number five
  const names = /^\d/.test(unit.id) ? unit.spellings : [unit.id, ...unit.spellings];
  for (const name of names) enter(unitKey(name), unit);
  for (const name of unit.whenWanted) wantedIndex.set(`${unit.kind} ${unitKey(name)}`, unit);
}

function enter(key: string, unit: Unit): void {
  const before = exactIndex.get(key);
  // a table that gives one spelling to two units would silently read one as the other
  if (before && before !== unit) throw new Error(`"${key}" is spelt for both ${before.id} and ${unit.id}`);
  exactIndex.set(key, unit);
  const folded = key.toLowerCase();
  anyCaseIndex.set(folded, (anyCaseIndex.get(folded) ?? new Set()).add(unit));
}
