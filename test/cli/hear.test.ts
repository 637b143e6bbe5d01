import { writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { writeWav } from '../../src/listen/index.js';
import { inRoom, noise, saying, sounding } from '../hear/syllables.js';
import { cliWithFolder } from '../support/built-cli.js';

const { cli, inFolder } = cliWithFolder();

const file = (name: string, content: string | Uint8Array) => {
  const path = inFolder(name);
  writeFileSync(path, content);
  return path;
};
const phrases = () => file('answers.txt', '# what may be said\nSpark strong\ngo back\n');
const voice = () => file('voice.wav', writeWav(inRoom(saying('oaieu'))));

describe('wristpin hear', () => {
  test('hears nothing where nobody speaks, and says so', async () => {
    const still = file('still.wav', writeWav(sounding(noise(2, 1e-3))));
    expect(await cli.run(['hear', still, '--phrases', phrases()])).toMatchObject({
      code: 0,
      out: 'Nobody speaks in it.\n',
    });
    const { out } = await cli.run(['hear', still, '--phrases', phrases(), '--json']);
    expect(JSON.parse(out)).toEqual({ heard: null, agree: false, doubt: 1, why: 'nothing said' });
  });

  test('gives one of the phrases or none, and never more surely than one ear can', async () => {
    const { code, out } = await cli.run(['hear', voice(), '--phrases', phrases(), '--json']);
    expect(code).toBe(0);
    const { heard, agree, doubt } = JSON.parse(out);
    expect([null, 'spark strong', 'go back']).toContain(heard);
    expect(agree).toBe(false);
    expect(doubt).toBeGreaterThanOrEqual(0);
  });

  test.each([
    ['without phrases', () => [voice()], 2, '--phrases FILE says what may have been said'],
    [
      'with an empty list',
      () => [voice(), '--phrases', file('none.txt', '\n')],
      1,
      'There is no phrase in it',
    ],
    [
      'with a word that nobody knows',
      () => [voice(), '--phrases', file('odd.txt', 'flurbgax now')],
      1,
      '“flurbgax”',
    ],
    ['with a file that is none', () => ['nowhere.wav', '--phrases', phrases()], 1, 'there is no such file'],
    [
      'with a file that is no sound',
      () => [phrases(), '--phrases', phrases()],
      1,
      'not a sound that can be read',
    ],
    [
      'with takes of other phrases',
      () => [voice(), '--phrases', phrases(), '--takes', inFolder('.')],
      1,
      'spark-strong-1.wav',
    ],
    [
      'with a time before that is none',
      () => [voice(), '--phrases', phrases(), '--before', 'soon'],
      2,
      '“soon”',
    ],
    [
      'with a time before that takes all',
      () => [voice(), '--phrases', phrases(), '--before', '60'],
      1,
      'ends before',
    ],
  ])('%s is refused in words', async (_, call, code, words) => {
    const answer = await cli.run(['hear', ...call()]);
    expect(answer.code).toBe(code);
    expect(answer.err).toContain(words);
  });
});
