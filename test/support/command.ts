import { runCommand } from '../../src/cli/run.js';
import type { Ran } from './built-cli.js';

/**
 * One call of the command in the test's own process, for tests of what it says rather than of the program that is
 * started: a start takes ten times as long as most answers. Paths must be whole ones, the working folder is the test's.
 */
export async function call(
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Promise<Ran> {
  let [out, err] = ['', ''];
  const code = await runCommand(args, {
    env,
    platform: process.platform,
    home: '/nowhere',
    now: () => new Date(),
    out: (line) => {
      out += `${line}\n`;
    },
    err: (line) => {
      err += `${line}\n`;
    },
    stop: () => new Promise(() => {}),
    show: async () => false,
  });
  return { code, out, err };
}
