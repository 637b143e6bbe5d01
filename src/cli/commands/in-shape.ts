import { Failed } from '../command.js';

/** What a room says of a problem that it cannot take: where, and of which kind. */
interface Refusal extends Error {
  readonly code: string;
  readonly place: string;
}

const isRefusal = (error: unknown): error is Refusal =>
  error instanceof Error && 'code' in error && typeof (error as Partial<Refusal>).place === 'string';

/**
 * Does the work; where the file is not built as it must be, says in plain words what is missing or of the wrong kind, and
 * shows a small file that works. Other refusals pass with their own words.
 */
export function inShape<T>(file: string, example: unknown, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!isRefusal(error)) throw error;
    const own = error.message.slice(error.message.indexOf(': ') + 2);
    if (error.code !== 'shape') throw new Failed(`${error.message}.`, { cause: error });
    const what = `${file}: ${plain(error.place, own)}.`;
    throw new Failed(`${what}\n\nA small file that works:\n\n${asFile(example)}`, { cause: error });
  }
}

/** An example file as it stands in the help. */
export const asFile = (example: unknown): string =>
  JSON.stringify(example, null, 2)
    // a short list or object on one line is read at a glance
    .replace(/[[{][^[\]{}]*[\]}]/g, (part) => part.replace(/\s*\n\s*/g, ' '));

const kinds: Readonly<Record<string, string>> = {
  array: 'a list [ … ]',
  object: 'a set of names and values { … }',
  record: 'a set of names and values { … }',
  string: 'a text in quotes',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  null: 'nothing',
};
const kind = (type: string): string => kinds[type] ?? type;

/** The schema's own words as a person says them. */
function plain(place: string, message: string): string {
  const wanted = /^Invalid input: expected (\w+), received (\w+)$/.exec(message);
  if (wanted) {
    const [, want = '', got = ''] = wanted;
    return got === 'undefined'
      ? `“${place}” is missing; it is ${kind(want)}`
      : `“${place}” must be ${kind(want)}, and ${kind(got)} stands there`;
  }
  const bound = /^Too (?:small|big): expected \w+ to (?:be|have) ([<>]=?)(\S+)(?: (\w+))?/.exec(message);
  if (!bound) return `“${place}”: ${message}`;
  const [, sign = '', limit = '', of = ''] = bound;
  const side = { '>=': 'at least', '>': 'more than', '<=': 'at most', '<': 'less than' }[sign] ?? sign;
  return `“${place}” must be ${side} ${limit}${of ? ` ${of}` : ''}`;
}
