// Builds dist/: the rooms as JavaScript with types, the browser application, and the files they need at run time.
import { copyFileSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { compileCatalog } from './catalog.mjs';
import { at, fail, node } from './lib.mjs';

export async function build() {
  rmSync(at('dist'), { recursive: true, force: true });
  await compileCatalog();
  await node(at('node_modules', 'typescript', 'bin', 'tsc'), '-p', at('tsconfig.build.json'));
  await node(at('node_modules', 'vite', 'bin', 'vite.js'), 'build', '--logLevel', 'warn');
  copyFonts();
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
