import sharp from 'sharp';
import { expect, test } from 'vitest';
import { pictureProblem } from '../../../src/record/index.js';

const square = (channels: 3 | 4) =>
  sharp({ create: { width: 20, height: 10, channels, background: 'teal' } });

test('whole JPEG and PNG pictures of every common form can be printed', async () => {
  const whole = await Promise.all([
    square(3).jpeg().toBuffer(),
    square(3).jpeg({ progressive: true }).toBuffer(),
    square(3).grayscale().jpeg().toBuffer(),
    square(3).png().toBuffer(),
    square(4).png().toBuffer(),
    square(3).png({ palette: true }).toBuffer(),
    square(3).toColorspace('b-w').png().toBuffer(),
  ]);
  expect(whole.map(pictureProblem)).toEqual(whole.map(() => undefined));
});

test('a picture cut off anywhere before its pixel data ends is refused', async () => {
  const png = await square(3).png().toBuffer();
  for (let end = 0; end < png.length - 12; end++) {
    expect(pictureProblem(png.subarray(0, end)), `cut at ${end}`).toBeTypeOf('string');
  }
});

test('a JPEG without a frame, a form that is neither, and an interlaced PNG are refused in words', async () => {
  const jpeg = await square(3).jpeg().toBuffer();
  expect(pictureProblem(jpeg.subarray(0, 40))).toBe('a damaged JPEG');
  expect(pictureProblem(await square(3).webp().toBuffer())).toBe('neither JPEG nor PNG');
  expect(pictureProblem(await square(3).png({ progressive: true }).toBuffer())).toContain('interlaced');
  expect(pictureProblem(new Uint8Array())).toBe('neither JPEG nor PNG');
});
