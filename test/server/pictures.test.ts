import { createHash } from 'node:crypto';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { picture, startServer, type TestServer } from './support.js';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.close());

const hash = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const put = (bytes: Uint8Array, name = hash(bytes)) => server.send('PUT', `/api/pictures/${name}`, bytes);

async function refused(bytes: Uint8Array, message: RegExp): Promise<void> {
  const answer = await put(bytes);
  expect(answer.status).toBe(422);
  expect(answer.json.error).toMatchObject({ code: 'bad-picture', message: expect.stringMatching(message) });
  expect(await server.store.hasPicture(hash(bytes))).toBe(false);
}

describe('a picture', () => {
  test.each(['jpeg', 'png', 'webp'] as const)('as %s comes back byte for byte', async (format) => {
    const bytes = await picture(format);
    const answer = await put(bytes);
    const facts = { mime: `image/${format}`, bytes: bytes.length, width: 640, height: 480 };
    expect(answer.json).toEqual({ sha256: hash(bytes), ...facts });
    const back = await server.get(`/api/pictures/${hash(bytes)}`);
    expect(back.headers.get('content-type')).toBe(`image/${format}`);
    expect(back.headers.get('cache-control')).toContain('immutable');
    expect(Buffer.compare(back.bytes, bytes)).toBe(0);
  });

  test('sent twice is kept once and answered alike', async () => {
    const bytes = await picture('jpeg', { seed: 7 });
    expect((await put(bytes)).json).toEqual((await put(bytes)).json);
  });

  test('taken with the camera turned has the size it is shown in, and small it stands upright', async () => {
    const bytes = await picture('jpeg', { width: 640, height: 480, seed: 2, orientation: 6 });
    expect((await put(bytes)).json).toMatchObject({ width: 480, height: 640 });
    const small = await server.get(`/api/pictures/${hash(bytes)}?width=120`);
    expect(small.headers.get('content-type')).toBe('image/webp');
    const { width, height, format, orientation } = await sharp(small.bytes).metadata();
    expect({ width, height, format, orientation }).toEqual({
      width: 120,
      height: 160,
      format: 'webp',
      orientation: undefined,
    });
  });

  test('is never made wider than it is', async () => {
    const bytes = await picture('png', { width: 100, height: 50, seed: 3 });
    await put(bytes);
    const small = await server.get(`/api/pictures/${hash(bytes)}?width=320`);
    expect((await sharp(small.bytes).metadata()).width).toBe(100);
  });
});

describe('what is no picture for the log', () => {
  const text = (words: string) => new TextEncoder().encode(words);

  test('a text that is called .jpg', () => refused(text('just a few words\n'), /not a picture, whatever/));
  test('nothing at all', () => refused(new Uint8Array(0), /not a picture/));
  test('a PDF', () =>
    refused(text('%PDF-1.4\n1 0 obj\n<<>>\nendobj\n'), /of the type PDF.*JPEG, PNG or WebP/));
  test('a drawing that could carry a script', () =>
    refused(text('<svg xmlns="http://www.w3.org/2000/svg"><script>1</script></svg>'), /nothing was stored/));

  test.each(['heic', 'mif1', 'heix'])('a phone’s HEIC picture (brand %s), with the way out', (brand) =>
    refused(
      new Uint8Array([
        0,
        0,
        0,
        24,
        ...text(`ftyp${brand}`),
        0,
        0,
        0,
        0,
        ...text('mif1heic'),
        ...new Array(64).fill(0),
      ]),
      /HEIC.*most compatible.*JPEG/,
    ),
  );

  test('a JPEG that was cut off on the way', async () => {
    const whole = await picture('jpeg', { seed: 4 });
    await refused(whole.slice(0, whole.length / 2), /damaged or cut off/);
  });

  test('a PNG with a broken middle', async () => {
    const whole = await picture('png', { seed: 5 });
    whole.fill(0, whole.length / 2, whole.length / 2 + 2000);
    await refused(whole, /damaged or cut off/);
  });

  test('a few kilobytes that unfold to hundreds of millions of pixels', async () => {
    const create = { width: 16_000, height: 16_000, channels: 3 as const, background: '#000' };
    const bomb = await sharp({ create, limitInputPixels: false }).png({ compressionLevel: 9 }).toBuffer();
    expect(bomb.length).toBeLessThan(2_000_000);
    await refused(new Uint8Array(bomb), /more than 150 million pixels/);
  });

  test('bytes that are not those that were named', async () => {
    const bytes = await picture('jpeg', { seed: 6 });
    const answer = await put(bytes, '0'.repeat(64));
    expect(answer.status).toBe(422);
    expect(answer.json.error).toMatchObject({ code: 'bad-picture', field: 'sha256' });
    expect(await server.store.hasPicture('0'.repeat(64))).toBe(false);
  });
});

describe('asking for a picture', () => {
  test('that is not there', async () => {
    const answer = await server.get(`/api/pictures/${'f'.repeat(64)}`);
    expect(answer.status).toBe(404);
    expect(answer.headers.get('cache-control')).not.toContain('immutable');
  });

  test.each(['abc', 'F'.repeat(64), '..%2fshop.db'])('by the name %s, which is no hash', async (name) => {
    const answer = await server.get(`/api/pictures/${name}`);
    expect(answer.status).toBe(404);
    expect(answer.json.error.message).toContain('SHA-256');
  });

  test.each(['0', '15', '4097', '-5', '1e3', 'wide', ''])('in the width “%s”', async (width) => {
    const answer = await server.get(`/api/pictures/${'f'.repeat(64)}?width=${width}`);
    expect(answer.status).toBe(422);
    expect(answer.json.error).toMatchObject({ field: 'width' });
  });
});
