import { parseArgs } from 'node:util';
import {
  type Call,
  type Command,
  type Listed,
  parseArgsOptions,
  type Surroundings,
  WronglyCalled,
} from './command.js';
import { commands } from './commands/index.js';
import { commandHelp, overview } from './help.js';
import { suggestion } from './nearest.js';

export type ExitCode = 0 | 1 | 2;

/** Runs one call of `wristpin`. Every failure is one sentence on the error stream; nothing is thrown. */
export async function runCommand(argv: readonly string[], around: Surroundings): Promise<ExitCode> {
  try {
    await dispatch(argv, around);
    return 0;
  } catch (error) {
    around.err(`wristpin: ${sentence(error)}`);
    if (around.env.WRISTPIN_DEBUG && error instanceof Error) around.err(withCauses(error));
    return error instanceof WronglyCalled ? 2 : 1;
  }
}

async function dispatch(argv: readonly string[], around: Surroundings): Promise<void> {
  const [name, ...rest] = argv;
  if (name === undefined) {
    around.err(await allHelp());
    throw new WronglyCalled('Say which command.');
  }
  if (name === '--help' || name === '-h') return around.out(await allHelp());
  if (name === '--version') return around.out(await version());
  if (name === 'help') return around.out(await helpFor(rest[0]));
  const listed = find(name);
  const command = await listed.load();
  const call = read(listed, command, rest);
  if (call.values.help === true) {
    return around.out(command.helpOn?.(call.positionals) ?? commandHelp(listed, command));
  }
  requireCount(command, call);
  await command.run(call, around);
}

async function version(): Promise<string> {
  return (await import('./version.js')).version();
}

async function allHelp(): Promise<string> {
  return overview(commands, await version());
}

async function helpFor(name: string | undefined): Promise<string> {
  if (name === undefined) return allHelp();
  const listed = find(name);
  return commandHelp(listed, await listed.load());
}

function find(name: string): Listed {
  const listed = commands.find((each) => each.name === name);
  if (listed) return listed;
  const names = commands.map((each) => each.name);
  throw new WronglyCalled(
    `There is no command “${name}”.${suggestion(name, names)} “wristpin --help” lists them.`,
  );
}

function read({ name }: Listed, command: Command, args: readonly string[]): Call {
  try {
    return parseArgs({
      args: [...args],
      options: parseArgsOptions(command),
      allowPositionals: true,
    }) as Call;
  } catch (error) {
    throw new WronglyCalled(`${whatIsWrong(error)}. “wristpin ${name} --help” tells how it is called.`);
  }
}

/** Of parseArgs’ words the first sentence says what is wrong; the rest is advice for writers of programs. */
function whatIsWrong(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  return message.split(/\. |\n/)[0]!.replace(/\.$/, '');
}

function requireCount(command: Command, { positionals }: Call): void {
  const { least, most } = command.takes;
  if (positionals.length < least) throw new WronglyCalled(`Something is missing. Usage: ${command.usage}`);
  if (positionals.length > most) {
    throw new WronglyCalled(`“${positionals[most]}” is too much. Usage: ${command.usage}`);
  }
}

/** Errors whose words are written for the person, by name, so that their rooms need not be loaded to know them. */
const forThePerson = new Set([
  'Failed',
  'WronglyCalled',
  'ShopkeepError',
  'StoreError',
  'RecordError',
  'EntryError',
  'CatalogError',
  'NetworkError',
]);

function sentence(error: unknown): string {
  if (error instanceof Error && forThePerson.has(error.name)) return error.message;
  const message = error instanceof Error ? error.message : String(error);
  return `this failed through a fault of Wristpin (${message}). What was said to be saved is saved; WRISTPIN_DEBUG=1 shows more.`;
}

function withCauses(error: Error): string {
  const cause = error.cause instanceof Error ? `\ncaused by ${withCauses(error.cause)}` : '';
  return `${error.stack ?? error.message}${cause}`;
}
