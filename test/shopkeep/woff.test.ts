import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { create } from 'fontkit';
import { expect, test } from 'vitest';
import { unpackedFont } from '../../src/shopkeep/woff.js';

const folder = createRequire(import.meta.url).resolve('@fontsource/atkinson-hyperlegible-next/package.json');
const file = new Uint8Array(
  readFileSync(folder.replace('package.json', 'files/atkinson-hyperlegible-next-latin-400-normal.woff')),
);
interface Whole {
  readonly numGlyphs: number;
  layout(text: string): { readonly advanceWidth: number };
}
const open = (bytes: Uint8Array): Whole => create(Buffer.from(bytes)) as unknown as Whole;

test('a font unpacked here sets text exactly as the packed one (fontkit reads both)', () => {
  const packed = open(file);
  const unpacked = open(unpackedFont(file));
  expect(unpacked.numGlyphs).toBe(packed.numGlyphs);
  for (const text of ['Head gasket: 140 in-lb', 'Spark plug, 0.030 in', 'AVATAR fi fl'])
    expect(unpacked.layout(text).advanceWidth).toBe(packed.layout(text).advanceWidth);
});

// W3C, WOFF File Format 1.0, section 4: totalSfntSize is the size of the font once unpacked, padding counted
test('it is as large as the file says, and begins as the font that the file names', () => {
  const out = unpackedFont(file);
  expect(out.length).toBe(new DataView(file.buffer, file.byteOffset).getUint32(16));
  expect([...out.subarray(0, 4)]).toEqual([...file.subarray(4, 8)]);
});

test('bytes that are no WOFF file are given back as they are', () => {
  const plain = new Uint8Array([0, 1, 0, 0, 9]);
  expect(unpackedFont(plain)).toBe(plain);
});
