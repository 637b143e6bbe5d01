import { resolve } from 'node:path';
import type { BrowserContext } from 'playwright-core';
import sharp from 'sharp';

/** Films of which each picture carries its number as twelve bars of a Gray code, first bar first: one bit a step. */
export const filmBars = 12;

export interface MadeFilm {
  readonly seconds: number;
  readonly picturesPerSecond: number;
  readonly container: 'webm' | 'mp4';
}

const library = resolve('node_modules/mediabunny/dist/bundles/mediabunny.min.cjs');

/** Encoded by Chromium itself, put into its container by a general library. */
export async function madeFilm(context: BrowserContext, film: MadeFilm): Promise<Buffer> {
  const page = await context.newPage();
  // an address of this computer is a secure context, without which there is no encoder
  const address = 'http://127.0.0.1:9/';
  await page.route(address, (route) =>
    route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>Film</title>' }),
  );
  await page.goto(address);
  await page.addScriptTag({ path: library });
  const base64 = await page.evaluate(encode, { ...film, bars: filmBars });
  await page.close();
  return Buffer.from(base64, 'base64');
}

/** Runs in the page. */
async function encode({
  seconds,
  picturesPerSecond,
  container,
  bars,
}: MadeFilm & { bars: number }): Promise<string> {
  const media = (globalThis as unknown as { Mediabunny: typeof import('mediabunny') }).Mediabunny;
  const canvas = Object.assign(document.createElement('canvas'), { width: 384, height: 216 });
  const on = canvas.getContext('2d')!;
  const output = new media.Output({
    format: container === 'webm' ? new media.WebMOutputFormat() : new media.Mp4OutputFormat(),
    target: new media.BufferTarget(),
  });
  const codec = container === 'webm' ? 'vp8' : 'vp9';
  const source = new media.CanvasSource(canvas, { codec, bitrate: 1e6, keyFrameInterval: 5 });
  output.addVideoTrack(source, { frameRate: picturesPerSecond });
  await output.start();
  for (let n = 0; n < seconds * picturesPerSecond; n += 1) {
    const code = n ^ (n >> 1);
    for (let bar = 0; bar < bars; bar += 1) {
      on.fillStyle = (code >> (bars - 1 - bar)) & 1 ? 'white' : 'black';
      on.fillRect((bar * canvas.width) / bars, 0, canvas.width / bars, canvas.height);
    }
    await source.add(n / picturesPerSecond, 1 / picturesPerSecond);
  }
  await output.finalize();
  const bytes = new Uint8Array(output.target.buffer!);
  let text = '';
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return btoa(text);
}

/** The number that a picture carries. */
export async function numberOn(picture: Buffer): Promise<number> {
  const { data, info } = await sharp(picture).greyscale().raw().toBuffer({ resolveWithObject: true });
  let code = 0;
  for (let bar = 0; bar < filmBars; bar += 1) {
    const x = Math.floor(((bar + 0.5) * info.width) / filmBars);
    const y = Math.floor(info.height / 2);
    code = (code << 1) | (data[(y * info.width + x) * info.channels]! > 128 ? 1 : 0);
  }
  let number = code;
  for (let shifted = code >> 1; shifted > 0; shifted >>= 1) number ^= shifted;
  return number;
}
