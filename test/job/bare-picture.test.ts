import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { barePicture } from '../../src/job/index.js';

const place = 'N 59 26 12.0';
const serial = 'SN-4711-0815';

/** A picture such as a phone makes: turned, with place, device and serial number. sharp is the reference for all of it. */
async function fromACamera(format: 'jpeg' | 'png' | 'webp', orientation: number): Promise<Uint8Array> {
  const pixels = Buffer.alloc(
    64 * 48 * 3,
    Uint8Array.from({ length: 251 }, (_, i) => i),
  );
  const image = sharp(pixels, { raw: { width: 64, height: 48, channels: 3 } })
    .withMetadata({ orientation })
    .withExifMerge({
      IFD0: { Make: 'Invented', Model: 'Camera of nobody' },
      IFD2: { BodySerialNumber: serial },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '59/1 26/1 12/1', GPSProcessingMethod: place },
    });
  return new Uint8Array(await image.toFormat(format).toBuffer());
}

const pixelsOf = (bytes: Uint8Array) => sharp(bytes).raw().toBuffer();
const holds = (bytes: Uint8Array, words: string) => Buffer.from(bytes).includes(words);

describe('a picture without what the camera wrote beside it', () => {
  for (const format of ['jpeg', 'png', 'webp'] as const)
    for (const orientation of [1, 3, 6])
      test(`${format}, turn ${orientation}: the same pixels, the same turn, the same colors, and no place, device or serial number`, async () => {
        const given = await fromACamera(format, orientation);
        expect(holds(given, serial) && holds(given, 'Invented')).toBe(true);
        const bare = barePicture(given);
        for (const words of [serial, place, 'Invented', 'Camera of nobody'])
          expect(holds(bare, words)).toBe(false);
        expect(bare.length).toBeLessThan(given.length);
        const [before, after] = [await sharp(given).metadata(), await sharp(bare).metadata()];
        expect(after.orientation ?? 1).toBe(orientation);
        expect([after.width, after.height, after.hasProfile]).toEqual([
          before.width,
          before.height,
          before.hasProfile,
        ]);
        expect((await pixelsOf(bare)).equals(await pixelsOf(given))).toBe(true);
        expect(Buffer.compare(barePicture(bare), bare)).toBe(0);
      });

  test('neither comments, other programs’ segments, nor what was hung on after the end', async () => {
    const given = Buffer.from(await fromACamera('jpeg', 6));
    const segment = (kind: number, words: string) =>
      Buffer.concat([Buffer.from([0xff, kind, 0, words.length + 2]), Buffer.from(words)]);
    const more = Buffer.concat([
      given.subarray(0, 2),
      segment(0xfe, `said by hand: ${place}`),
      segment(0xe1, `http://ns.adobe.com/xap/1.0/\0<x>${place}</x>`),
      segment(0xed, `Photoshop 3.0\0${place}`),
      segment(0xe2, `MPF\0${place}`),
      given.subarray(2),
      Buffer.from(`a film of ${place}`),
    ]);
    const bare = barePicture(more);
    expect(holds(bare, place)).toBe(false);
    expect(Buffer.compare(bare, barePicture(given))).toBe(0);
  });

  test('a progressive one, of several scans, keeps all of them', async () => {
    const pixels = Buffer.alloc(
      64 * 48 * 3,
      Uint8Array.from({ length: 251 }, (_, i) => i),
    );
    const image = sharp(pixels, { raw: { width: 64, height: 48, channels: 3 } });
    const given = new Uint8Array(
      await image.jpeg({ progressive: true }).withMetadata({ orientation: 8 }).toBuffer(),
    );
    const bare = barePicture(given);
    expect((await sharp(bare).metadata()).orientation).toBe(8);
    expect((await pixelsOf(bare)).equals(await pixelsOf(given))).toBe(true);
  });

  test('what is no picture, or cut off anywhere, comes back as it is or shorter, and never with an error', async () => {
    for (const format of ['jpeg', 'png', 'webp'] as const) {
      const given = await fromACamera(format, 6);
      for (let end = 0; end < given.length; end += 7) {
        const bare = barePicture(given.subarray(0, end));
        expect(bare.length).toBeLessThanOrEqual(Math.max(end, 60));
      }
    }
    const words = new TextEncoder().encode('a letter');
    expect(barePicture(words)).toBe(words);
  });
});
