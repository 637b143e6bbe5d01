import type { Worksheet } from '../worksheet/index.js';

/** Words that mean the same at the bench; any of a row finds what any other of it would. */
const sameWords: readonly (readonly string[])[] = [
  ['bore', 'cylinder', 'barrel'],
  ['warp', 'warped', 'flat', 'flatness', 'straight', 'bent', 'face'],
  ['worn', 'wear', 'taper'],
  ['clearance', 'lash', 'tappet', 'gap', 'play'],
  ['crankshaft', 'crank', 'crankpin', 'journal'],
  ['rod', 'conrod', 'big end'],
  ['bolt', 'screw', 'nut', 'stud', 'fastener', 'thread'],
  ['torque', 'tight', 'tighten', 'in-lb', 'ft-lb', 'wrench'],
  ['loosen', 'slacken', 'undo', 'loosening'],
  ['helical', 'insert', 'stripped', 'thread repair'],
  ['compression', 'squeeze'],
  ['head', 'milling', 'mill', 'skim', 'deck'],
  ['carburetor', 'carb', 'jet', 'mixture', 'rich', 'lean'],
  ['gasoline', 'petrol', 'fuel', 'gas'],
  ['ethanol', 'alcohol', 'e10', 'e15'],
  ['two-stroke', 'two-cycle', 'premix', '50:1'],
  ['rpm', 'speed', 'governor'],
  ['spark', 'ignition', 'timing', 'key', 'coil', 'magneto'],
  ['altitude', 'elevation', 'height', 'mountain'],
  ['oil', 'viscosity', 'sae', 'grade'],
  ['gasket', 'shim', 'spacer'],
  ['uncertainty', 'accuracy', 'tolerance', 'trust'],
  ['belt', 'pulley'],
  ['blade', 'tip'],
  ['frequency', 'hertz', 'hz', 'generator'],
  ['convert', 'units', 'metric', 'inch', 'mm'],
  ['seize', 'hot', 'expansion', 'warm'],
  ['oversize', 'rebore', 'bored'],
  ['piston', 'skirt'],
  ['ring', 'rings'],
];

const textOf = (w: Worksheet): string =>
  [w.question, w.title, w.purpose, w.id.replaceAll('-', ' '), ...w.fields.map((f) => `${f.label} ${f.help}`)]
    .join(' ')
    .toLowerCase();

/** What is asked, and its title, weigh more than a word somewhere in the help of a field. */
function rankOf({ question, title }: Worksheet, words: readonly string[]): number {
  const head = `${question} ${title}`.toLowerCase();
  return words.filter((word) => waysOf(word).some((way) => has(head, way))).length;
}

function waysOf(word: string): readonly string[] {
  return [word, ...sameWords.filter((row) => row.includes(word)).flat()];
}

/** A short word must stand as a word: "rod" is not in "produce"; a longer one may be the beginning of one. */
function has(text: string, word: string): boolean {
  const escaped = word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return new RegExp(`(^|[^a-z0-9])${escaped}${word.length <= 3 ? 's?($|[^a-z0-9])' : ''}`).test(text);
}

/**
 * The worksheets that have every word typed, or one that means the same; those that have it in their question first.
 * Nothing typed finds all, in their own order.
 */
export function findWorksheets(all: readonly Worksheet[], typed: string): readonly Worksheet[] {
  const words = typed
    .toLowerCase()
    .split(/[\s,?]+/)
    .filter((word) => word.length > 0 && !idle.has(word));
  const found = all.filter((w) => {
    const text = textOf(w);
    return words.every((word) => waysOf(word).some((way) => has(text, way)));
  });
  if (words.length === 0) return found;
  return [...found].sort((a, b) => rankOf(b, words) - rankOf(a, words));
}

/** Words of a question that tell nothing apart. */
const idle = new Set([
  'is',
  'this',
  'the',
  'a',
  'an',
  'my',
  'it',
  'of',
  'to',
  'do',
  'i',
  'how',
  'what',
  'which',
  'are',
  'does',
  'for',
]);
