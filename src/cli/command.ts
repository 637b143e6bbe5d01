import type { ParseArgsConfig } from 'node:util';

/** What a command needs from the world around it. */
export interface Surroundings {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: NodeJS.Platform;
  readonly home: string;
  readonly now: () => Date;
  readonly out: (line: string) => void;
  readonly err: (line: string) => void;
  /** resolves when the person or the system asks the program to stop */
  readonly stop: () => Promise<void>;
  /** shows an address in the person's browser; false where it could not */
  readonly show: (url: string) => Promise<boolean>;
}

export interface Option {
  readonly type: 'string' | 'boolean';
  /** what stands for the value in the help: FILE, N */
  readonly value?: string;
  readonly help: string;
}

export interface Call {
  readonly values: Readonly<Record<string, string | boolean | undefined>>;
  readonly positionals: readonly string[];
}

/** A command as the list of all shows it. */
export interface Listed {
  readonly name: string;
  /** one line */
  readonly purpose: string;
  /** fetched when it is called: a calculation need not load a database, a printer and a server first */
  readonly load: () => Promise<Command>;
}

export interface Command {
  readonly usage: string;
  readonly options: Readonly<Record<string, Option>>;
  readonly examples: readonly string[];
  /** a small file that it takes, shown in the help */
  readonly file?: unknown;
  /** how many positional arguments it takes */
  readonly takes: { readonly least: number; readonly most: number };
  readonly run: (call: Call, around: Surroundings) => Promise<void>;
  /** what `--help` prints for these positional arguments instead of the command's own help */
  readonly helpOn?: (positionals: readonly string[]) => string | undefined;
}

/** The work could not be done: exit code 1. The message is a whole sentence for the person. */
export class Failed extends Error {
  override readonly name: string = 'Failed';
}

/** The command was called wrongly: exit code 2. */
export class WronglyCalled extends Error {
  override readonly name = 'WronglyCalled';
}

export function parseArgsOptions(command: Command): NonNullable<ParseArgsConfig['options']> {
  const own = Object.entries(command.options).map(([name, { type }]) => [name, { type }] as const);
  return { ...Object.fromEntries(own), help: { type: 'boolean', short: 'h' } };
}

/** The value of a `string` option. */
export function text(call: Call, name: string): string | undefined {
  const value = call.values[name];
  return typeof value === 'string' ? value : undefined;
}

export function flag(call: Call, name: string): boolean {
  return call.values[name] === true;
}
