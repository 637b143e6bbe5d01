import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readWav, writeWav } from '../../src/listen/index.js';

test('what was written is read back to within half a step of 16 bits, whatever the sound', () => {
  const sound = fc.record({
    samples: fc.float32Array({
      min: -1,
      max: Math.fround(0.9999),
      noNaN: true,
      minLength: 1,
      maxLength: 400,
    }),
    sampleRate: fc.constantFrom(8000, 16_000, 44_100, 48_000),
  });
  fc.assert(
    fc.property(sound, (given) => {
      const read = readWav(writeWav(given));
      expect(read.sampleRate).toBe(given.sampleRate);
      expect(read.samples).toHaveLength(given.samples.length);
      given.samples.forEach((sample, n) => {
        expect(Math.abs(read.samples[n]! - sample)).toBeLessThanOrEqual(2 ** -16 + 1e-9);
      });
    }),
  );
});

test('what is louder than full scale stands at full scale and does not turn over', () => {
  const { samples } = readWav(writeWav({ samples: Float32Array.of(1.7, -1.7, 1, -1), sampleRate: 16_000 }));
  expect([...samples]).toEqual([1 - 2 ** -15, -1, 1 - 2 ** -15, -1]);
});

test('its head has the fields of RIFF WAVE at their places (Multimedia Programming Interface 1.0, chapter 3)', () => {
  const bytes = writeWav({ samples: new Float32Array(10), sampleRate: 16_000 });
  const view = new DataView(bytes.buffer);
  const text = (at: number) => String.fromCharCode(...bytes.subarray(at, at + 4));
  expect([text(0), text(8), text(12), text(36)]).toEqual(['RIFF', 'WAVE', 'fmt ', 'data']);
  // what is left after the first eight; PCM, one channel, 16,000 a second, 32,000 bytes a second, 2 a moment, 16 bits
  expect(view.getUint32(4, true)).toBe(bytes.length - 8);
  expect([20, 22, 32, 34].map((at) => view.getUint16(at, true))).toEqual([1, 1, 2, 16]);
  expect([24, 28, 40].map((at) => view.getUint32(at, true))).toEqual([16_000, 32_000, 20]);
});
