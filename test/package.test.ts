import { spawn, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { campaign } from './support/campaign.js';

/** The package as a stranger gets it: packed, then run and imported from an empty folder. */
const root = process.cwd();
const dir = mkdtempSync(join(tmpdir(), 'wristpin-package-'));
let tarball: string;
let installed: string;

/** npm without what the surrounding npm put into the environment. */
function npm(args: readonly string[], cwd: string) {
  const env = Object.fromEntries(
    Object.entries(process.env).filter(([k]) => !/^npm_(config|package|lifecycle)_/i.test(k)),
  );
  const cli = process.env.npm_execpath;
  const [command, first] = cli ? [process.execPath, [cli]] : ['npm', []];
  return {
    command,
    args: [...first, ...args],
    options: { cwd, env, encoding: 'utf8' as const, shell: !cli && process.platform === 'win32' },
  };
}

beforeAll(() => {
  const { command, args, options } = npm(['pack', '--ignore-scripts', '--pack-destination', dir], root);
  const packed = spawnSync(command, args, options);
  expect(packed.status, packed.stderr).toBe(0);
  tarball = join(dir, readdirSync(dir).find((f) => f.endsWith('.tgz'))!);
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

describe('the packed package', () => {
  // npx compiles the database anew, which takes a minute: the short form lays the package beside what is compiled
  const way = campaign(0, 1) ? byNpx : bySide;

  test(`${way.words} opens the application`, { timeout: 400_000 }, async () => {
    const empty = mkdtempSync(join(dir, 'empty-'));
    const { command, args, options } = way.start(empty, [
      'serve',
      '--port',
      '0',
      '--store',
      join(dir, 'shop.db'),
    ]);
    const child = spawn(command, args, {
      ...options,
      stdio: ['ignore', 'pipe', 'pipe'],
      detached: process.platform !== 'win32',
    });
    const address = await new Promise<string>((resolve, reject) => {
      let said = '';
      const listen = (chunk: Buffer) => {
        said += chunk;
        const found = /http:\/\/127\.0\.0\.1:\d+/.exec(said);
        if (found) resolve(found[0]);
      };
      child.stdout!.on('data', listen);
      child.stderr!.on('data', listen);
      child.on('exit', (code) => reject(new Error(`the program ended with ${code}: ${said}`)));
    });
    const health = (await (await fetch(`${address}/api/health`)).json()) as { ok: boolean };
    const page = await (await fetch(address)).text();
    const gone = new Promise((resolve) => child.once('exit', resolve));
    if (process.platform === 'win32') child.kill();
    else process.kill(-child.pid!, 'SIGTERM');
    await gone;
    expect(health.ok).toBe(true);
    expect(page).toContain('<div id="root">');
    installed = way.installed(empty);
  });

  test('its exports open each core room, with types', { timeout: 120_000 }, () => {
    const { exports } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
      exports: Record<string, unknown>;
    };
    const rooms = Object.keys(exports)
      .filter((e) => !e.endsWith('.json'))
      .map((e) => e.slice(2));
    expect(rooms.length).toBeGreaterThanOrEqual(10);
    const imports = rooms.map((r, i) => `import * as room${i} from 'wristpin/${r}';`).join('\n');
    const use = `const counts: number[] = [${rooms.map((_, i) => `Object.keys(room${i}).length`).join(', ')}];\nconsole.log(JSON.stringify(counts));\n`;
    const typed =
      "import { parse, type Quantity } from 'wristpin/quantity';\nconst q: Quantity = parse('140 in-lb', 'torque');\n// @ts-expect-error a torque is not a room\nconst wrong: string = q;\nvoid wrong;\n";
    writeFileSync(join(installed, 'rooms.mts'), `${imports}\n${typed}${use}`);
    writeFileSync(
      join(installed, 'tsconfig.json'),
      JSON.stringify({
        compilerOptions: {
          module: 'nodenext',
          target: 'es2022',
          strict: true,
          skipLibCheck: true,
          types: [],
          outDir: 'out',
          rootDir: '.',
        },
        files: ['rooms.mts'],
      }),
    );
    const tsc = spawnSync(
      process.execPath,
      [join(root, 'node_modules/typescript/bin/tsc'), '-p', installed],
      { encoding: 'utf8' },
    );
    expect(tsc.stdout, tsc.stdout).toBe('');
    const ran = spawnSync(process.execPath, [join(installed, 'out/rooms.mjs')], {
      encoding: 'utf8',
      cwd: installed,
    });
    expect(ran.stderr).toBe('');
    expect((JSON.parse(ran.stdout) as number[]).every((n) => n > 0)).toBe(true);
  });

  test('nothing of the workshop travels with it', () => {
    const listed = spawnSync('tar', ['-tzf', tarball], { encoding: 'utf8' }).stdout.trim().split('\n');
    expect(listed).toContain('package/dist/web/index.html');
    expect(listed).toContain('package/LICENSE');
    expect(listed.filter((f) => /^package\/(src|test|scripts|bench)\//.test(f))).toEqual([]);
  });
});

/** As a stranger starts it. */
const byNpx = {
  words: 'npx of the tarball in an empty folder',
  start: (empty: string, words: readonly string[]) =>
    npm(['exec', '--yes', `--package=${tarball}`, '--', 'wristpin', ...words], empty),
  installed: newestNpxFolder,
};

/** Unpacked beside the libraries that package.json names, and no others. */
const bySide = {
  words: 'the unpacked tarball beside its libraries',
  start(empty: string, words: readonly string[]) {
    const { dependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
      dependencies: Record<string, string>;
    };
    const modules = join(empty, 'node_modules');
    for (const name of Object.keys(dependencies)) {
      mkdirSync(dirname(join(modules, name)), { recursive: true });
      symlinkSync(join(root, 'node_modules', name), join(modules, name), 'junction');
    }
    spawnSync('tar', ['-xzf', tarball, '-C', modules]);
    const home = join(modules, 'wristpin');
    renameSync(join(modules, 'package'), home);
    return {
      command: process.execPath,
      args: [join(home, 'bin', 'wristpin.js'), ...words],
      options: { cwd: empty, env: process.env, encoding: 'utf8' as const },
    };
  },
  installed: (empty: string) => empty,
};

/** npx keeps what it installed in a folder of its own below the cache; ours names the tarball. */
function newestNpxFolder(): string {
  const { command, args, options } = npm(['config', 'get', 'cache'], root);
  const below = join(spawnSync(command, args, options).stdout.trim(), '_npx');
  const ours = readdirSync(below)
    .map((name) => join(below, name))
    .filter((folder) => existsSync(join(folder, 'package.json')))
    .filter((folder) => readFileSync(join(folder, 'package.json'), 'utf8').includes(dir));
  return ours.sort((a, b) => statSync(b).mtimeMs - statSync(a).mtimeMs)[0]!;
}
