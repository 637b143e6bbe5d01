// Where `npm run trust` stands: which campaigns were passed and, written by the campaigns themselves, how far each came.
// It holds for one state of the program only; Node's own modules, so that it can be asked before anything is installed.
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { at, filesBelow, hashOf } from './lib.mjs';

/** A folder of its own for each choice of campaigns. */
export const trustFolder = (words) =>
  at('node_modules', '.cache', 'wristpin-trust', [...words, 'all'].join('-').replaceAll(/[^\w]+/g, '-'));
const passedFile = (folder) => join(folder, 'passed.txt');
const programFile = (folder) => join(folder, 'program.txt');

/** Figures of another program, or of other campaigns, must not be added to those of this one. */
export const programNow = () =>
  hashOf(
    filesBelow(['src', 'test', 'demo', 'package-lock.json'], (path) => path.endsWith('.gen.ts')),
    process.version,
  );

/**
 * Makes the folder ready, and says in words with what the run begins: anew, or where the last one was broken off.
 * { passed, words }: the files that need not run again.
 */
export function beginTrust({ again, program, folder }) {
  const known = existsSync(programFile(folder)) ? readFileSync(programFile(folder), 'utf8') : undefined;
  if (!again && known === program) {
    const passed = readLines(passedFile(folder));
    const begun = readdirSync(folder).filter((name) => name.endsWith('.json')).length;
    return {
      passed,
      words: `Goes on where it was broken off: ${passed.length} campaigns have passed, ${begun} in rounds are begun or done (--again begins anew).`,
    };
  }
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  writeFileSync(programFile(folder), program);
  const changed = known !== undefined && !again;
  return { passed: [], words: changed ? 'The program has changed since: begins anew.' : 'Begins anew.' };
}

const readLines = (file) =>
  existsSync(file)
    ? readFileSync(file, 'utf8')
        .split('\n')
        .filter((line) => line !== '')
    : [];

/** Put in place whole: a kill must not leave half of a name. */
export function notePassed(file, folder) {
  const passed = new Set([...readLines(passedFile(folder)), file]);
  writeFileSync(`${passedFile(folder)}.part`, [...passed, ''].join('\n'));
  renameSync(`${passedFile(folder)}.part`, passedFile(folder));
}

/** Every campaign that is played in rounds, as far as it came. */
export const figures = (folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map((name) => JSON.parse(readFileSync(join(folder, name), 'utf8')));

/** All have passed: the next run has nothing to go on with. */
export const endTrust = (folder) => rmSync(folder, { recursive: true, force: true });
