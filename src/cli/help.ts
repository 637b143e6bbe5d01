import { plural } from '../phrase/index.js';
import type { Command, Listed, Option } from './command.js';
import { asFile } from './commands/in-shape.js';

/** The help of the whole program. */
export function overview(commands: readonly Listed[], version: string): string {
  const lines = commands.map(({ name, purpose }) => [name, purpose] as const);
  return [
    `wristpin ${version}: a bench log that computes, for small engines.`,
    '',
    'Usage: wristpin COMMAND [arguments] [options]',
    '',
    ...table(lines),
    '',
    '“wristpin COMMAND --help” tells more of each.',
    'Exit codes: 0 done, 1 the work failed, 2 called wrongly.',
  ].join('\n');
}

/** The help of one command. */
export function commandHelp({ purpose }: Listed, command: Command): string {
  const options = Object.entries({
    ...command.options,
    help: { type: 'boolean', help: 'show this' } as Option,
  });
  return [
    purpose,
    '',
    `Usage: ${command.usage}`,
    '',
    'Options:',
    ...table(options.map(([name, option]) => [optionName(name, option), option.help] as const)),
    '',
    plural(command.examples.length, 'Example:', 'Examples:'),
    ...command.examples.map((example) => `  ${example}`),
    ...(command.file === undefined ? [] : ['', 'A small file that works:', '', asFile(command.file)]),
  ].join('\n');
}

function optionName(name: string, option: Option): string {
  return option.value ? `--${name} ${option.value}` : `--${name}`;
}

/** Two columns, the second flush. */
export function table(rows: readonly (readonly [string, string])[]): string[] {
  const width = Math.max(0, ...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`.trimEnd());
}
