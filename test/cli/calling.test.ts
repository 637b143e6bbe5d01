import { execFile } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { commands } from '../../src/cli/commands/index.js';
import { cliWithFolder } from '../support/built-cli.js';
import { call } from '../support/command.js';

const { cli } = cliWithFolder();

const version = JSON.parse(readFileSync(resolve(import.meta.dirname, '../../package.json'), 'utf8')).version;

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** One sentence on the error stream, nothing on the other, no stack. */
async function wrongly(args: readonly string[], message: RegExp): Promise<void> {
  const { code, out, err } = await call(args);
  expect(code).toBe(2);
  expect(out).toBe('');
  expect(err).toMatch(/^wristpin: .*\n$/);
  expect(err).toMatch(message);
}

describe('help', () => {
  test.each(['infer', 'basket', 'bench'])('of %s shows a file that it takes', async (name) => {
    const { out } = await cli.run([name, '--help']);
    const folder = mkdtempSync(join(tmpdir(), 'wristpin-file-'));
    const file = join(folder, `${name}.json`);
    writeFileSync(file, out.slice(out.indexOf('\n{')));
    expect(await cli.run([name, file])).toMatchObject({ code: 0, err: '' });
    rmSync(folder, { recursive: true });
  });

  test('of the whole program names every command', async () => {
    for (const args of [['--help'], ['-h'], ['help']]) {
      const { code, out, err } = await cli.run(args);
      expect(code).toBe(0);
      expect(err).toBe('');
      for (const { name, purpose } of commands)
        expect(out).toMatch(new RegExp(`^  ${name} +${escaped(purpose)}$`, 'm'));
      expect(out).toContain(version);
    }
  });

  test.each(commands.map((listed) => [listed.name, listed] as const))(
    'of %s: purpose, usage, options, example',
    async (name, listed) => {
      const { code, out, err } = await call([name, '--help']);
      expect(code).toBe(0);
      expect(err).toBe('');
      expect(out.split('\n')[0]).toBe(listed.purpose);
      expect(out).toContain(`Usage: wristpin ${name}`);
      expect(out).toMatch(/Examples?:\n {2}wristpin /);
      for (const option of Object.keys((await listed.load()).options)) expect(out).toContain(`--${option}`);
      expect((await call(['help', name])).out).toBe(out);
    },
  );

  test('is given also when the rest of the call is wrong', async () => {
    expect((await cli.run(['record', '--help'])).code).toBe(0);
    expect((await cli.run(['backup', 'a', 'b', 'c', '-h'])).code).toBe(0);
  });
});

test('the version is the package’s', async () => {
  expect(await cli.run(['--version'])).toEqual({ code: 0, out: `${version}\n`, err: '' });
});

describe('a wrong call', () => {
  test('says and ends the same when the program is started', async () => {
    for (const args of [['serv'], ['jobs', '--sotre', 'x'], ['backup'], ['record', '12']])
      expect(await cli.run(args)).toEqual(await call(args));
  });

  test('without a command shows the help where it does not disturb a pipe', async () => {
    const { code, out, err } = await cli.run([]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('Usage: wristpin COMMAND');
    expect(err).toMatch(/wristpin: Say which command\.\n$/);
  });

  test.each([
    ['serv', 'serve'],
    ['exprot', 'export'],
    ['Backup', 'backup'],
    ['wrok', 'work'],
  ])('%s: did you mean %s?', (typed, meant) =>
    wrongly([typed], new RegExp(`“${typed}”.*Did you mean “${meant}”\\?`)),
  );

  test('a word far from any command suggests none', async () => {
    const { err } = await call(['carburetor']);
    expect(err).toMatch(/no command “carburetor”/);
    expect(err).not.toMatch(/Did you mean/);
  });

  test('an empty word', () => wrongly([''], /no command “”/));
  test('an unknown option', () => wrongly(['jobs', '--sotre', 'x'], /'--sotre'.*wristpin jobs --help/));
  test('an option without its value', () => wrongly(['serve', '--port'], /--port/));
  test('a flag with a value', () => wrongly(['verify', '--json=yes'], /--json/));
  test('too little', () => wrongly(['backup'], /missing.*wristpin backup FILE/));
  test('too much', () => wrongly(['jobs', 'now'], /“now” is too much/));
  test('a port that is none', () => wrongly(['serve', '--port', '70000'], /“70000”/));
  test('a port in words', () => wrongly(['serve', '--port', 'http'], /“http”/));
  test('a record without a place for it', () => wrongly(['record', '12'], /--pdf FILE/));
  test('an act that the demonstration does not have', () =>
    wrongly(['demo', 'laod'], /“laod”.*Did you mean “load”/));
  test('an address that is no PostgreSQL', () =>
    wrongly(['jobs', '--database', 'mysql://x/y'], /postgres:\/\//));
  test('two stores at once', () =>
    wrongly(['jobs', '--store', 'a', '--database', 'postgres://x/y'], /give one of them/));
});

test('WRISTPIN_DEBUG shows where an error comes from, and only it does', async () => {
  const quiet = await cli.run(['restore', 'nothing.db']);
  const loud = await cli.run(['restore', 'nothing.db'], { env: { WRISTPIN_DEBUG: '1' } });
  expect(quiet.err).not.toMatch(/:\d+:\d+/);
  expect(loud.err).toMatch(/:\d+:\d+/);
  expect([quiet.code, loud.code]).toEqual([1, 1]);
});

test('the command, not built yet, says how to build it', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'wristpin-bin-'));
  mkdirSync(join(folder, 'bin'));
  copyFileSync(resolve(import.meta.dirname, '../../bin/wristpin.js'), join(folder, 'bin', 'wristpin.mjs'));
  const { code, err } = await new Promise<{ code: unknown; err: string }>((done) =>
    execFile(process.execPath, [join(folder, 'bin', 'wristpin.mjs')], (error, _out, err) =>
      done({ code: error?.code, err }),
    ),
  );
  expect(code).toBe(1);
  expect(err).toContain('npm run build');
  rmSync(folder, { recursive: true });
});
