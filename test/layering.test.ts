import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

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

const entry = {
  'src/quantity/index.ts': 'export const one = 1;\n',
  'src/job/index.ts': "export { one } from '../quantity/index.js';\n",
};

test('a room that imports a room above it is let through', () => {
  const { code, said } = judge(entry);
  expect(said).toMatch(/no dependency violations found \(2 modules/);
  expect(code).toBe(0);
});

test.each([
  [
    'a room that imports a room below it',
    {
      'src/quantity/index.ts': "export * from '../job/index.js';\n",
      'src/job/index.ts': 'export const a = 1;\n',
    },
    'quantity-imports-only-rooms-above-it',
  ],
  [
    'core that reads a file',
    { 'src/fasten/index.ts': "import { readFileSync } from 'node:fs';\nexport const a = readFileSync;\n" },
    'core-has-no-file-network-clock',
  ],
  [
    'a page that knows the store',
    {
      'src/store/index.ts': 'export const a = 1;\n',
      'src/web/page.ts': "export * from '../store/index.js';\n",
    },
    'the-page-knows-no-sql',
  ],
  [
    'a shopkeep that knows the server',
    {
      'src/server/index.ts': 'export const a = 1;\n',
      'src/shopkeep/index.ts': "export * from '../server/index.js';\n",
    },
    'shopkeep-imports-only-rooms-above-it',
  ],
  [
    'a command other than serve that knows the server',
    {
      'src/server/index.ts': 'export const a = 1;\n',
      'src/cli/commands/jobs.ts': "export * from '../../server/index.js';\n",
    },
    'only-serve-knows-the-server',
  ],
  [
    'a room entered past its index',
    {
      'src/quantity/inner.ts': 'export const a = 1;\n',
      'src/job/index.ts': "export * from '../quantity/inner.js';\n",
    },
    'a-room-is-entered-by-its-index',
  ],
])('%s is refused', (_, files, rule) => {
  const { code, said } = judge(files);
  expect(said).toContain(rule);
  expect(code).not.toBe(0);
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
