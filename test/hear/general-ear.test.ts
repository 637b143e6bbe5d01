import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { type OpenEar, openEar } from '../../src/cli/commands/open-ear.js';
import { type GeneralEar, generalEar } from '../../src/hear/index.js';
import { readWav } from '../../src/listen/index.js';
import { noise, sounding } from './syllables.js';

let ear: OpenEar;
let general: GeneralEar;
beforeAll(async () => {
  ear = await openEar();
  general = generalEar(ear.decoder);
});

/** Real people's single words as the Speech Commands data set has them (P. Warden, 2017), where they lie beside the project. */
const spoken = [process.env.HEAR_SPOKEN, '../shared/spoken'].find((each) => each && existsSync(each)) ?? '';
const words = ['go', 'stop', 'yes', 'no', 'left', 'right', 'up', 'down'];

describe('the general ear', () => {
  test.skipIf(!spoken)(
    'tells nine in ten of eight words by ten real people each [skips where the recordings are not beside the project]',
    () => {
      let right = 0;
      let all = 0;
      for (const word of words)
        for (const file of readdirSync(join(spoken, word))) {
          const sound = readWav(new Uint8Array(readFileSync(join(spoken, word, file))));
          all += 1;
          if (general(sound, words)?.phrase === word) right += 1;
        }
      expect(all).toBe(80);
      expect(right).toBeGreaterThanOrEqual(72);
    },
  );

  test('knows the words of a bench and not any row of letters', () => {
    for (const word of ['spark', 'gasket', 'missing', 'tight', 'carburetor'])
      expect(ear.knows(word)).toBe(true);
    expect(ear.knows('flurbgax')).toBe(false);
  });

  test('hears the same sound the same way, whatever was asked in between', () => {
    const sound = sounding(noise(1.5, 0.05, 3));
    const first = general(sound, ['go back', 'next one']);
    general(sound, ['spark strong', 'no spark']);
    expect(general(sound, ['go back', 'next one'])).toEqual(first);
  });

  test('leaves this program’s own way with what nobody caught as it was', () => {
    // the library by itself does add one: if it no longer does, what takes it out can go
    expect(() =>
      execFileSync(
        process.execPath,
        [
          '--input-type=module',
          '-e',
          `import m from 'soundswallower'; await m(); process.exit(process.listeners('uncaughtException').length)`,
        ],
        { stdio: 'ignore' },
      ),
    ).toThrow();
    expect(process.listeners('uncaughtException').map(String).join()).not.toContain('ExitStatus');
  });
});
