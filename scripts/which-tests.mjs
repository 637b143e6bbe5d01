// Which test files a word means, and what must be made before they can run. Node's own modules only: a word that
// means nothing is said before anything is installed or built.
import { relative, sep } from 'node:path';
import { filesBelow, root } from './lib.mjs';

/** Every test file, as a path in the repository with forward slashes. */
export const testFiles = () =>
  filesBelow(['test'])
    .map((path) => relative(root, path).split(sep).join('/'))
    .filter((path) => path.endsWith('.test.ts'));

const isBrowser = (path) => path.startsWith('test/e2e/');

/** What runs the built program instead of its source: the browser's tests and those of what is packed. */
const needsBuild = (path) => isBrowser(path) || /^test\/package(d-folder)?\.test\.ts$/.test(path);

/**
 * What to run for the given words: a file is meant when its path contains one of them. Without words all are meant.
 * { core, browser, build, missing }: the files of both projects, whether they need dist/, and the words that no path
 * contains.
 */
export function whichTests(words, files = testFiles()) {
  const meant = words.length ? files.filter((path) => words.some((word) => path.includes(word))) : files;
  return {
    core: meant.filter((path) => !isBrowser(path)),
    browser: meant.filter(isBrowser),
    build: meant.some(needsBuild),
    missing: words.filter((word) => !files.some((path) => path.includes(word))),
  };
}
