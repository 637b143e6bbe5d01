// Builds dist/: the rooms as JavaScript with types, the command in one piece, the browser application, and the files they need at run time.
import { copyFileSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { brotliCompress, gzip } from 'node:zlib';
import { compileCatalog } from './catalog.mjs';
import { bundleCli } from './cli.mjs';
import { at, fail, filesBelow, node } from './lib.mjs';

export async function build() {
  rmSync(at('dist'), { recursive: true, force: true });
  await compileCatalog();
  await node(at('node_modules', 'typescript', 'bin', 'tsc'), '-p', at('tsconfig.build.json'));
  for (const room of ['cli', 'server', 'shopkeep'])
    rmSync(at('dist', room), { recursive: true, force: true });
  await bundleCli(at('dist', 'cli'));
  await node(at('node_modules', 'vite', 'bin', 'vite.js'), 'build', '--logLevel', 'warn');
  await compressPages();
  copyFonts();
}

/** Once here, as small as it goes, so that the server only hands the files out. */
async function compressPages() {
  const files = filesBelow([join('dist', 'web')]).filter((file) =>
    /\.(js|css|html|svg|json|wasm|txt|bin)$/.test(file),
  );
  const forms = [
    ['.br', promisify(brotliCompress)],
    ['.gz', promisify(gzip)],
  ];
  const compress = async (file, ending, form) => {
    const whole = readFileSync(file);
    const small = await form(whole);
    if (small.length < whole.length) writeFileSync(file + ending, small);
  };
  await Promise.all(files.flatMap((file) => forms.map(([ending, form]) => compress(file, ending, form))));
}

/** The faces of the printed record; the browser application carries its own copies. */
function copyFonts() {
  const from = at('node_modules', '@fontsource', 'atkinson-hyperlegible-next');
  mkdirSync(at('dist', 'fonts'), { recursive: true });
  for (const file of readdirSync(`${from}/files`)) {
    if (/-(latin|latin-ext)-(400|700)-(normal|italic)\.woff$/.test(file))
      copyFileSync(`${from}/files/${file}`, at('dist', 'fonts', file));
  }
  copyFileSync(`${from}/LICENSE`, at('dist', 'fonts', 'LICENSE'));
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await build().catch(fail);
