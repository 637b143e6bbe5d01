import { StoreError, type StoreErrorCode } from './error.js';

type Words = readonly [code: StoreErrorCode, happened: string, todo: string];

const gone: Words = [
  'unreachable',
  'cannot be reached',
  'See that the server runs and the network stands, and send again; sending twice changes nothing.',
];
const refused: Words = [
  'no-permission',
  'does not let this user in or do this',
  'Look at the user, the password and the rights in the database.',
];
const waited: Words = [
  'busy',
  'is held by another program',
  'Wait until the other program is done, and try again.',
];
const full: Words = ['disk-full', 'has no room left on its disk', 'Make room on the server, and try again.'];
const broken: Words = [
  'corrupt',
  'is damaged',
  'Keep the server as it is, and restore the last backup into a new database.',
];
const foreign: Words = [
  'not-a-log',
  'holds tables of the same names that are not a Wristpin log',
  'Name an empty database.',
];
const missing: Words = ['cannot-open', 'does not exist', 'Create the database, or look at the name again.'];
const readOnly: Words = [
  'no-permission',
  'may be read and not written',
  'Name the server that takes changes.',
];

/** By the start of the code: PostgreSQL manual, "Error Codes"; the words of E… are the system's. */
const words: readonly (readonly [start: string, words: Words])[] = [
  ['ECONN', gone],
  ['EPIPE', gone],
  ['ENOTFOUND', gone],
  ['EAI_AGAIN', gone],
  ['ETIMEDOUT', gone],
  ['EHOSTUNREACH', gone],
  ['ENETUNREACH', gone],
  ['ENOENT', gone], // its socket
  ['08', gone],
  ['57P', gone],
  ['53300', gone],
  ['28', refused],
  ['42501', refused],
  ['25006', readOnly],
  ['3D000', missing],
  ['42P07', foreign],
  ['42P01', foreign],
  ['42703', foreign],
  ['53100', full],
  ['55P03', waited],
  ['40', waited],
  ['XX001', broken],
  ['XX002', broken],
];

/** pg gives these no code. */
const goneInWords =
  /Connection terminated|timeout exceeded when trying to connect|connection error and is not queryable/;

/** PostgreSQL's and the network's errors as a StoreError; anything else as it is. */
export function explainPostgres(error: unknown, name: string): unknown {
  if (error instanceof StoreError || !(error instanceof Error)) return error;
  const code = 'code' in error ? String(error.code) : '';
  const found = goneInWords.test(error.message) ? gone : words.find(([start]) => code.startsWith(start))?.[1];
  if (found === undefined) return error;
  const safe = 'What was said to be saved is as it was.';
  return new StoreError(
    found[0],
    `The database ${name} ${found[1]} (${error.message || code}).`,
    safe,
    found[2],
    error,
  );
}
