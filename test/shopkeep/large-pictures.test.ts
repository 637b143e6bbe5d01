import sharp from 'sharp';
import { expect, test, vi } from 'vitest';
import { openImport } from '../../src/shopkeep/index.js';
import { inspectPicture, narrowed } from '../../src/shopkeep/picture.js';

/** Of one color: about a megabyte at most, whatever it unfolds to. */
const plain = (side: number) =>
  sharp({ create: { width: side, height: side, channels: 3, background: '#456' }, limitInputPixels: false });

/** The most that this process held while it worked. */
async function peakMegabytes(work: () => Promise<unknown>): Promise<number> {
  let peak = 0;
  const look = setInterval(() => (peak = Math.max(peak, process.memoryUsage.rss())), 5);
  await work();
  clearInterval(look);
  return peak / 2 ** 20;
}

test('four pictures at once that each unfold to 200 MB take the memory of one', async () => {
  // an interlaced PNG is held whole before any of it can be shown (ISO/IEC 15948, section 8.2)
  const picture = plain(7000).ensureAlpha(0.5).png({ progressive: true, compressionLevel: 9 });
  const png = await picture.toBuffer();
  expect(png.length).toBeLessThan(1_000_000);
  const before = process.memoryUsage.rss() / 2 ** 20;
  const peak = await peakMegabytes(() => Promise.all([1, 2, 3, 4].map(() => inspectPicture(png))));
  expect(peak - before).toBeLessThan(500);
});

test('pictures that come in several scans, each held whole: four at once and six more take the memory of one, and none of it stays', async () => {
  // two bytes a coefficient (ITU-T T.81, G.1): 180 MB
  const scans = plain(5500).jpeg({ progressive: true, chromaSubsampling: '4:4:4' });
  const jpeg = new Uint8Array(await scans.toBuffer());
  await inspectPicture(jpeg.slice());
  const before = process.memoryUsage.rss() / 2 ** 20;
  const atOnce = await peakMegabytes(() => Promise.all([1, 2, 3, 4].map(() => narrowed(jpeg, 320))));
  expect(atOnce - before).toBeLessThan(450);
  for (let n = 0; n < 6; n += 1) await narrowed(jpeg, 320);
  expect(process.memoryUsage.rss() / 2 ** 20 - before).toBeLessThan(250);
});

test('60 million pixels that have to be held whole are refused, and taken where they come line after line', async () => {
  const large = plain(7800);
  const held = [
    await large.clone().png({ compressionLevel: 1 }).toBuffer(),
    await large.clone().jpeg({ progressive: true }).toBuffer(),
  ];
  for (const bytes of held)
    await expect(inspectPicture(bytes)).rejects.toThrow('unfolds to more than 50 million pixels');
  expect(await inspectPicture(await large.clone().jpeg().toBuffer())).toMatchObject({ width: 7800 });
});

test('the pictures of a bundle are looked at for a minute, and no longer', async () => {
  const bytes = new Uint8Array(await plain(8).png().toBuffer());
  const pictures = ['a', 'b', 'c'].map((sha256) => ({ sha256, mime: 'image/png' as const }));
  let asked = 0;
  const picture = async () => {
    asked += 1;
    return bytes;
  };
  let now = 0;
  const clock = vi.spyOn(performance, 'now').mockImplementation(() => (now += 31_000));
  const opened = openImport({} as never, { entries: [], pictures, digest: '', picture });
  await expect(opened).rejects.toThrow('could not be looked at within 60 seconds');
  expect(asked).toBe(2);
  clock.mockRestore();
});
