import { describe, expect, test } from 'vitest';
import { readWav } from '../../src/listen/wav.js';

interface Made {
  readonly coding: number;
  readonly bits: number;
  readonly channels?: number;
  readonly extensible?: boolean;
  readonly write: (view: DataView, at: number, value: number) => void;
}

function wav(
  { coding, bits, channels = 1, extensible = false, write }: Made,
  values: readonly number[],
): Uint8Array {
  const formatSize = extensible ? 40 : 16;
  const odd = 9;
  const width = bits / 8;
  const bytes = new Uint8Array(12 + 8 + formatSize + 8 + odd + 1 + 8 + values.length * width);
  const view = new DataView(bytes.buffer);
  const tag = (at: number, text: string) =>
    new Uint8Array(view.buffer).set(new TextEncoder().encode(text), at);
  tag(0, 'RIFF');
  tag(8, 'WAVE');
  tag(12, 'fmt ');
  view.setUint32(16, formatSize, true);
  view.setUint16(20, extensible ? 0xfffe : coding, true);
  view.setUint16(22, channels, true);
  view.setUint32(24, 8000, true);
  view.setUint16(34, bits, true);
  if (extensible) view.setUint16(44, coding, true);
  // a chunk of odd length between, which is padded to an even place
  const list = 20 + formatSize;
  tag(list, 'LIST');
  view.setUint32(list + 4, odd, true);
  const data = list + 8 + odd + 1;
  tag(data, 'data');
  view.setUint32(data + 4, values.length * width, true);
  values.forEach((value, i) => {
    write(view, data + 8 + i * width, value);
  });
  return bytes;
}

const int16: Made = {
  coding: 1,
  bits: 16,
  write: (v, at, x) => v.setInt16(at, Math.round(x * 2 ** 15), true),
};
const codings: readonly (readonly [string, Made])[] = [
  ['8 bits', { coding: 1, bits: 8, write: (v, at, x) => v.setUint8(at, Math.round(x * 128) + 128) }],
  ['16 bits', int16],
  [
    '24 bits',
    {
      coding: 1,
      bits: 24,
      write: (v, at, x) => {
        const whole = Math.round(x * 2 ** 23);
        v.setUint16(at, whole & 0xffff, true);
        v.setInt8(at + 2, whole >> 16);
      },
    },
  ],
  ['32 bits', { coding: 1, bits: 32, write: (v, at, x) => v.setInt32(at, Math.round(x * 2 ** 31), true) }],
  ['floats of 32 bits', { coding: 3, bits: 32, write: (v, at, x) => v.setFloat32(at, x, true) }],
  ['floats of 64 bits', { coding: 3, bits: 64, write: (v, at, x) => v.setFloat64(at, x, true) }],
];
const values = [0, 0.5, -0.5, 0.25, -1, 0.75];

describe('a sound written and read back is the same sound', () => {
  test.each(codings)('%s', (_name, made) => {
    for (const extensible of [false, true]) {
      const { samples, sampleRate } = readWav(wav({ ...made, extensible }, values));
      expect(sampleRate).toBe(8000);
      expect([...samples]).toEqual(values);
    }
  });

  test('channels are averaged', () => {
    expect([...readWav(wav({ ...int16, channels: 2 }, values)).samples]).toEqual([0.25, -0.125, -0.125]);
  });

  test('a file that lost more than a moment says how many seconds', () => {
    const tones = Array.from({ length: 8000 }, (_, i) => (i % 5) / 8);
    const whole = wav(int16, tones);
    expect(readWav(whole).missingS).toBeUndefined();
    expect(readWav(whole.slice(0, -8000)).missingS).toBeCloseTo(0.5, 6);
  });

  test('one whose header was never finished gives the samples that follow', () => {
    for (const size of [0, 0xffffffff]) {
      const bytes = wav(int16, values).slice();
      const at = new TextDecoder('latin1').decode(bytes).indexOf('data') + 4;
      new DataView(bytes.buffer).setUint32(at, size, true);
      expect([...readWav(bytes).samples]).toEqual(values);
    }
  });

  test('a file cut off in the middle of its samples gives those that are there', () => {
    expect([...readWav(wav(int16, values).slice(0, -4)).samples]).toEqual(values.slice(0, 4));
  });
});

describe('what is no readable WAV file is refused by its field', () => {
  const whole = wav(int16, values);
  test.each([
    ['bytes', new Uint8Array(3)],
    ['bytes', new TextEncoder().encode('this is not a sound at all')],
    ['data', whole.slice(0, 40)],
    ['data', wav(int16, [])],
    ['coding', wav({ ...int16, coding: 2 }, values)],
    ['bits', wav({ ...int16, bits: 8, coding: 3, write: () => {} }, values)],
    ['channels', wav({ ...int16, channels: 0 }, values)],
  ] as const)('%s', (field, bytes) => {
    expect(() => readWav(bytes)).toThrow(expect.objectContaining({ name: 'ListenError', field }));
  });
});
