import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** What is shipped beside the program: found from where this file lies, built or not. */
export interface Packaged {
  readonly version: string;
  /** the built pages */
  readonly web: string;
  /** the invented jobs */
  readonly demo: string;
  /** the type faces of the printed record */
  readonly fonts: string;
  /** the program of the threads that read what comes from outside */
  readonly reader: string;
}

export function packaged(): Packaged {
  const here = dirname(fileURLToPath(import.meta.url));
  const root = packageRoot(here);
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
  return {
    version,
    web: join(root, 'dist', 'web'),
    demo: join(root, 'demo'),
    fonts: join(root, 'dist', 'fonts'),
    reader: besideProgram(here, 'reader.js') ?? join(root, 'dist', 'cli', 'reader.js'),
  };
}

/** This file lies in one of the program's pieces, or in a folder of them. */
const besideProgram = (here: string, name: string): string | undefined =>
  [join(here, name), join(here, '..', name)].find((path) => existsSync(path));

/** The nearest folder upwards that holds the package; a bundle lies at another depth than the source. */
function packageRoot(from: string): string {
  if (existsSync(join(from, 'package.json'))) return from;
  const up = dirname(from);
  if (up === from) throw new Error('the package.json of wristpin is missing beside the program');
  return packageRoot(up);
}
