import { StoreError, type StoreErrorCode } from './error.js';

type Words = readonly [code: StoreErrorCode, happened: string, todo: string];

const gone: Words = [
  'unreachable',
  'cannot be reached',
  'See that the server runs and the network stands, and send again; sending twice changes nothing.',
];

/** By the start of the code: PostgreSQL manual, "Error Codes"; the words of E… are the system's, ENOENT of its socket. */
const words: readonly (readonly [starts: RegExp, ...Words])[] = [
  [/^(ECONN|EPIPE|ENOTFOUND|EAI_AGAIN|ETIMEDOUT|EHOSTUNREACH|ENETUNREACH|ENOENT|08|57P|53300)/, ...gone],
  [
    /^(28|42501)/,
    'no-permission',
    'does not let this user in or do this',
    'Look at the user, the password and the rights in the database.',
  ],
  [/^25006/, 'no-permission', 'may be read and not written', 'Name the server that takes changes.'],
  [/^3D000/, 'cannot-open', 'does not exist', 'Create the database, or look at the name again.'],
  [
    /^(42P07|42P01|42703)/,
    'not-a-log',
    'holds tables of the same names that are not a Wristpin log',
    'Name an empty database.',
  ],
  [/^53100/, 'disk-full', 'has no room left on its disk', 'Make room on the server, and try again.'],
  [
    /^(55P03|40)/,
    'busy',
    'is held by another program',
    'Wait until the other program is done, and try again.',
  ],
  [
    /^XX00[12]/,
    'corrupt',
    'is damaged',
    'Keep the server as it is, and restore the last backup into a new database.',
  ],
];

/** pg gives these no code. */
const goneInWords =
  /Connection terminated|timeout exceeded when trying to connect|connection error and is not queryable/;

/** PostgreSQL's and the network's errors as a StoreError; anything else as it is. */
export function explainPostgres(error: unknown, name: string): unknown {
  if (error instanceof StoreError || !(error instanceof Error)) return error;
  const code = 'code' in error ? String(error.code) : '';
  const [, ...known] = words.find(([starts]) => starts.test(code)) ?? [];
  const found = goneInWords.test(error.message) ? gone : known;
  if (found.length === 0) return error;
  const safe = 'What was said to be saved is as it was.';
  return new StoreError(
    found[0],
    `The database ${name} ${found[1]} (${error.message || code}).`,
    safe,
    found[2],
    error,
  );
}
