import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

/** A small tree with one planted import, judged by the repo's own rules. */
const root = process.cwd();
let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(root, 'test-results-layering-'));
  cpSync(join(root, '.dependency-cruiser.mjs'), join(dir, '.dependency-cruiser.mjs'));
  writeFileSync(
    join(dir, 'tsconfig.json'),
    '{"compilerOptions":{"module":"NodeNext","moduleResolution":"NodeNext"}}',
  );
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

function judge(files: Record<string, string>): { code: number | null; said: string } {
  rmSync(join(dir, 'src'), { recursive: true, force: true });
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(dir, name)), { recursive: true });
    writeFileSync(join(dir, name), text);
  }
  const cruise = join(root, 'node_modules', 'dependency-cruiser', 'bin', 'dependency-cruise.mjs');
  const run = spawnSync(process.execPath, [cruise, '--config', '.dependency-cruiser.mjs', 'src'], {
    cwd: dir,
    encoding: 'utf8',
  });
  return { code: run.status, said: run.stdout + run.stderr };
}

test('a room that imports a room above it is let through', () => {
  const { code, said } = judge({
    'src/quantity/index.ts': 'export const one = 1;\n',
    'src/job/index.ts': "export { one } from '../quantity/index.js';\n",
  });
  expect(said).toMatch(/no dependency violations found \(2 modules/);
  expect(code).toBe(0);
});

/** All planted in one tree, so that the judge is started once; each is found by its rule and its two files. */
describe('refused is', () => {
  let said: string;
  beforeAll(() => {
    const file = 'export const a = 1;\n';
    const judged = judge({
      'src/quantity/index.ts': "export * from '../job/index.js';\n",
      'src/quantity/inner.ts': file,
      'src/job/index.ts': file,
      'src/fasten/index.ts': "import { readFileSync } from 'node:fs';\nexport const a = readFileSync;\n",
      'src/store/index.ts': file,
      'src/web/page.ts': "export * from '../store/index.js';\n",
      'src/server/index.ts': file,
      'src/shopkeep/index.ts': "export * from '../server/index.js';\n",
      'src/cli/commands/jobs.ts': "export * from '../../server/index.js';\n",
      'src/gauge/index.ts': "export * from '../quantity/inner.js';\n",
    });
    expect(judged.code).not.toBe(0);
    said = judged.said;
  });

  test.each([
    [
      'a room that imports a room below it',
      'quantity-imports-only-rooms-above-it',
      ['quantity/index', 'job/index'],
    ],
    ['core that reads a file', 'core-has-no-file-network-clock', ['fasten/index', 'fs']],
    ['a page that knows the store', 'the-page-knows-no-sql', ['web/page', 'store/index']],
    [
      'a shopkeep that knows the server',
      'shopkeep-imports-only-rooms-above-it',
      ['shopkeep/index', 'server/index'],
    ],
    [
      'a command other than serve that knows the server',
      'only-serve-knows-the-server',
      ['cli/commands/jobs', 'server/index'],
    ],
    ['a room entered past its index', 'a-room-is-entered-by-its-index', ['gauge/index', 'quantity/inner']],
  ])('%s', (_, rule, [from, to]) => {
    const found = said.split('\n').filter((line) => line.includes(rule));
    expect(found).toEqual([expect.stringMatching(new RegExp(`${from}.*→.*${to}`))]);
  });
});

test('core names no clock, no chance and no process', () => {
  const core = [
    'phrase',
    'quantity',
    'worksheet',
    'fasten',
    'gauge',
    'engine',
    'listen',
    'catalog',
    'infer',
    'diagnose',
    'worth',
    'plan',
    'supply',
    'job',
    'draw',
    'desk',
    'record',
  ];
  const forbidden = /\b(Date\.now\(|new Date\(\)|Math\.random\(|process\.|localStorage|fetch\()/;
  const files = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
    .map((f) => f.replaceAll('\\', '/'))
    .filter((f) => core.includes(f.split('/')[0]!) && f.endsWith('.ts'));
  expect(files.length).toBeGreaterThan(40);
  const found = files.filter((f) =>
    forbidden.test(readFileSync(join(root, 'src', f), 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')),
  );
  expect(found).toEqual([]);
});
