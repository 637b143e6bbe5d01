import sharp, { type Sharp } from 'sharp';
import { describe, expect, test } from 'vitest';
import { isTooLarge, pictureFrame } from '../../src/job/index.js';

/** sharp is the reference for what a head says. */
const drawn = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: '#456' } });
const kinds = {
  'a JPEG line after line': [(p: Sharp) => p.jpeg(), false],
  'a JPEG in several scans': [(p: Sharp) => p.jpeg({ progressive: true }), true],
  'a turned JPEG': [(p: Sharp) => p.withMetadata({ orientation: 6 }).jpeg(), false],
  'a PNG': [(p: Sharp) => p.png(), true],
  'a lossy WebP': [(p: Sharp) => p.webp(), true],
  'a WebP without loss': [(p: Sharp) => p.webp({ lossless: true }), true],
  'a WebP with colors of its own': [(p: Sharp) => p.withIccProfile('p3').webp(), true],
} as const;

describe.each(Object.entries(kinds))('%s', (_, [made, isHeld]) => {
  test.each([
    [1, 1],
    [320, 200],
    [4000, 16],
    [17, 5000],
  ])('of %i by %i says so before it is unfolded', async (width, height) => {
    const bytes = new Uint8Array(await made(drawn(width, height)).toBuffer());
    expect(pictureFrame(bytes)).toEqual({ width, height, isHeld });
  });

  test('cut off anywhere says the same or nothing, and is no error', async () => {
    const bytes = new Uint8Array(await made(drawn(30, 20)).toBuffer());
    for (let end = 0; end < bytes.length; end += 1)
      expect([undefined, 30]).toContain(pictureFrame(bytes.subarray(0, end))?.width);
  });
});

test('words, and nothing, have no frame', () => {
  for (const text of ['', 'a letter that is long enough to be looked into'])
    expect(pictureFrame(new TextEncoder().encode(text))).toBeUndefined();
});

test('50 million pixels are held at most, 150 million line after line', () => {
  const frame = (millions: number, isHeld: boolean) => ({ width: 1000, height: millions * 1000, isHeld });
  expect([frame(50, true), frame(150, false)].map(isTooLarge)).toEqual([false, false]);
  expect([frame(51, true), frame(151, false)].map(isTooLarge)).toEqual([true, true]);
});
