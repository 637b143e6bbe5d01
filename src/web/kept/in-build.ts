import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import type { Plugin } from 'vite';

/** Writes into the built service worker which files the application is made of, and the same list for pages without one. */
export function keptInBuild(): Plugin {
  let folder = '';
  return {
    name: 'kept-on-the-device',
    apply: 'build',
    configResolved: ({ build, root }) => {
      folder = join(root, build.outDir);
    },
    closeBundle: () => {
      const worker = join(folder, 'sw.js');
      if (!existsSync(worker)) return; // a build that broke off, or the workers' own
      const files = filesOf(folder);
      const whole = createHash('sha256');
      for (const file of files) whole.update(`${file}\n`).update(readFileSync(join(folder, file)));
      const kept = {
        version: whole.digest('hex').slice(0, 12),
        files: ['/', ...files.filter((file) => file !== 'index.html').map((file) => `/${file}`)],
      };
      const code = readFileSync(worker, 'utf8');
      writeFileSync(worker, `const KEPT=${JSON.stringify(kept)};${code}`);
      writeFileSync(join(folder, 'files.json'), JSON.stringify(kept.files.filter((file) => !isReader(file))));
    },
  };
}

/** The readers of letters and of speech are as large as all the rest: a page that can keep nothing fetches them when they are asked for. */
const isReader = (file: string) => /tesseract-core|eng\.traineddata|soundswallower|\/dict-|\.bin$/.test(file);

/** Not the service worker itself, and of each type face the form that every browser of today takes. */
function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map((each) => relative(folder, join(each.parentPath, each.name)).replaceAll('\\', '/'))
    .filter((file) => !/(^sw\.js|^files\.json|\.woff|\.map)$/.test(file))
    .sort();
}
