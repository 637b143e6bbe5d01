import { writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { engineSound } from '../listen/engine-sound.js';
import { cliWithFolder } from '../support/built-cli.js';

const { cli, inFolder } = cliWithFolder();

function wav(samples: Float32Array, sampleRate: number): Uint8Array {
  const view = new DataView(new ArrayBuffer(44 + 2 * samples.length));
  const tag = (at: number, text: string) =>
    new Uint8Array(view.buffer).set(new TextEncoder().encode(text), at);
  tag(0, 'RIFF');
  view.setUint32(4, 36 + 2 * samples.length, true);
  tag(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, 2 * sampleRate, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  tag(36, 'data');
  view.setUint32(40, 2 * samples.length, true);
  samples.forEach((x, i) => {
    view.setInt16(44 + 2 * i, Math.max(-32768, Math.min(32767, Math.round(x * 32768))), true);
  });
  return new Uint8Array(view.buffer);
}

const file = (name: string, bytes: Uint8Array | string) => {
  const path = inFolder(name);
  writeFileSync(path, bytes);
  return path;
};
const running = () => {
  const { samples, sampleRate } = engineSound({
    strokes: 4,
    rpm: () => 3000,
    seconds: 3,
    seed: 1,
    snrDb: 15,
  });
  return file('running.wav', wav(samples, sampleRate));
};

test('a recording is answered with speed, uncertainty, track, events and segments', async () => {
  const { code, out, err } = await cli.run(['listen', running(), '--strokes', '4', '--json']);
  expect(code, err).toBe(0);
  const answer = JSON.parse(out);
  expect(Math.abs(answer.meanRpm / 3000 - 1)).toBeLessThan(0.003);
  expect(answer.uncertaintyRpm).toBeGreaterThan(0);
  expect(answer.ambiguous).toBe(false);
  expect(Object.keys(answer.track[0])).toEqual(['t', 'rpm', 'u', 'confidence']);
  expect(answer.events).toEqual([]);
  expect(answer.segments).toHaveLength(1);
});

test('for people the speed stands in a sentence', async () => {
  const { code, out } = await cli.run(['listen', running(), '--strokes', '4', '--cylinders', '1']);
  expect(code).toBe(0);
  expect(out).toMatch(/^The engine turns at (29|30)\d\d rpm/);
});

test('silence is answered with no speed, in words', async () => {
  const { code, out } = await cli.run([
    'listen',
    file('still.wav', wav(new Float32Array(16_000), 16_000)),
    '--strokes',
    '2',
    '--json',
  ]);
  expect(code).toBe(0);
  expect(JSON.parse(out)).toMatchObject({ meanRpm: null, uncertaintyRpm: null, track: [] });
});

describe('what cannot be listened to is refused in one sentence', () => {
  test.each([
    ['no such file', () => inFolder('none.wav'), ['--strokes', '4'], 1, /there is no such file/],
    ['an empty file', () => file('empty.wav', ''), ['--strokes', '4'], 1, /is empty/],
    [
      'a text',
      () => file('text.wav', 'not a sound, only words'),
      ['--strokes', '4'],
      1,
      /not a sound that can be read/,
    ],
    [
      'too short',
      () => file('short.wav', wav(new Float32Array(800), 16_000)),
      ['--strokes', '4'],
      1,
      /at least 0\.2 s/,
    ],
    ['strokes left out', running, [], 2, /--strokes 4 or --strokes 2/],
    ['three strokes', running, ['--strokes', '3'], 2, /4 or 2, not “3”/],
    ['no cylinders', running, ['--strokes', '4', '--cylinders', '0'], 2, /1 to 16, not “0”/],
  ] as const)('%s', async (_name, path, args, exit, message) => {
    const { code, out, err } = await cli.run(['listen', path(), ...args]);
    expect(code).toBe(exit);
    expect(out).toBe('');
    expect(err).toMatch(message);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
  });

  test('a form that only the browser takes', async () => {
    const mp4 = new Uint8Array([
      0,
      0,
      0,
      24,
      ...new TextEncoder().encode('ftypM4A '),
      0,
      0,
      0,
      0,
      ...new TextEncoder().encode('M4A mp42'),
    ]);
    const { code, err } = await cli.run(['listen', file('phone.m4a', mp4), '--strokes', '4']);
    expect(code).toBe(1);
    expect(err).toMatch(/WAV, MP3, OGG .* in the browser takes this one too/);
  });
});
