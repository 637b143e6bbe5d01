import type { Sound } from './sound.js';

const headBytes = 44;

/**
 * The sound as a WAV file of one channel, whole numbers of 16 bits; what is louder than full scale stands at full scale.
 * Source: Multimedia Programming Interface and Data Specifications 1.0 (RIFF, WAVE). `readWav` reads it back to within half
 * a step of 2⁻¹⁵.
 */
export function writeWav({ samples, sampleRate }: Sound): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(headBytes + 2 * samples.length);
  const view = new DataView(bytes.buffer);
  const sign = (at: number, text: string) =>
    bytes.set(
      Uint8Array.from(text, (c) => c.charCodeAt(0)),
      at,
    );
  sign(0, 'RIFF');
  view.setUint32(4, bytes.length - 8, true);
  sign(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, 2 * sampleRate, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  sign(36, 'data');
  view.setUint32(40, 2 * samples.length, true);
  for (let n = 0; n < samples.length; n += 1) {
    const step = Math.round(samples[n]! * 2 ** 15);
    view.setInt16(headBytes + 2 * n, Math.max(-(2 ** 15), Math.min(2 ** 15 - 1, step)), true);
  }
  return bytes;
}
