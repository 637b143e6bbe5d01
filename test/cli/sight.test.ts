import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { photograph } from '../../bench/sight/render.js';
import { plateCase } from '../../bench/sight/scenes.js';
import { cliWithFolder } from '../support/built-cli.js';

const { cli, inFolder } = cliWithFolder();

describe('wristpin mat', () => {
  test('the picture file has the sheet edge to edge, black where the upper left square is printed', async () => {
    const file = inFolder('mat.png');
    expect((await cli.run(['mat', '--png', file, '--paper', 'a4', '--dpi', '254'])).code).toBe(0);
    const { data, info } = await sharp(readFileSync(file))
      .grayscale()
      .raw()
      .toBuffer({ resolveWithObject: true });
    // 254 dots an inch are ten a millimetre; ISO 216: A4 is 210 × 297 mm
    expect([info.width, info.height]).toEqual([2100, 2970]);
    const at = (xMm: number, yMm: number) => data[Math.round(yMm * 10) * info.width + Math.round(xMm * 10)]!;
    expect([at(9 + 6, 22.5 + 6), at(105, 148), at(4, 4)]).toEqual([0, 255, 255]);
  });

  test('the printed page has its bars 100 and 200 mm long, to a tenth', async () => {
    const file = inFolder('mat.pdf');
    expect((await cli.run(['mat', '--pdf', file])).code).toBe(0);
    // rendered by poppler at ten dots a millimetre; letter is 215.9 × 279.4 mm (ANSI/ASME Y14.1)
    const picture = execFileSync('pdftoppm', ['-r', '254', '-gray', file], { maxBuffer: 2e7 });
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(picture.subarray(0, 40).toString('latin1'))!;
    const width = Number(head[1]);
    const pixels = picture.subarray(head[0].length);
    expect([width, Number(head[2])]).toEqual([2159, 2794]);
    const dark = (values: readonly number[]) => values.filter((value) => value < 128).length / 10;
    const row = Math.round((139.7 + 126 + 3) * 10);
    const column = Math.round((107.95 + 96 + 3) * 10);
    const across = Array.from(pixels.subarray(row * width, row * width + 1590));
    const along = Array.from({ length: 2405 }, (_, y) => pixels[y * width + column]!);
    expect(Math.abs(dark(across) - 100)).toBeLessThan(0.11);
    expect(Math.abs(dark(along) - 200)).toBeLessThan(0.11);
  });

  test('says what is missing or wrong', async () => {
    expect(await cli.run(['mat'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('--pdf FILE or --png FILE'),
    });
    expect((await cli.run(['mat', '--png', inFolder('x.png'), '--paper', 'a3'])).code).toBe(2);
    expect((await cli.run(['mat', '--png', inFolder('x.png'), '--dpi', '0'])).code).toBe(2);
  });
});

describe('wristpin sight', () => {
  const gasket = plateCase(31, { thickness: [1, 2], size: [900, 1200], stains: 0 });
  let jpeg: Uint8Array;
  beforeAll(async () => {
    jpeg = await photograph(gasket.scene);
  });
  const taken = () => {
    const photo = inFolder('gasket.jpg');
    writeFileSync(photo, jpeg);
    return photo;
  };

  test('prints what it saw as JSON and draws it at 1:1, as other readers find', async () => {
    const photo = taken();
    const [svg, dxf] = [inFolder('gasket.svg'), inFolder('gasket.dxf')];
    const drawn = [
      '--svg',
      svg,
      '--dxf',
      dxf,
      '--bars',
      '100 mm,200 mm',
      '--thickness',
      `${gasket.thickness!.mm} mm`,
    ];
    const { code, out, err } = await cli.run(['sight', photo, '--json', ...drawn]);
    expect(code, err).toBe(0);
    const seen = JSON.parse(out);
    expect(Object.keys(seen)).toEqual(['camera', 'plate', 'uScale']);
    expect(seen.uScale).toBeCloseTo(0.001, 9);
    expect(Object.keys(seen.plate.holes[0])).toEqual(['x', 'y', 'd', 'u']);
    const true0 = gasket.truth.plate!.holes[0]!;
    const near = seen.plate.holes.find(
      (h: { x: number; y: number }) => Math.hypot(h.x - true0.x, h.y - true0.y) < 0.5,
    );
    expect(Math.abs(near.d - true0.d)).toBeLessThan(0.15);
    // librsvg, through sharp: on a page as wide as it says it is, the check line is 50 mm long
    const { data, info } = await sharp(svg, { density: 150 })
      .flatten({ background: '#fff' })
      .grayscale()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const perMm = info.width / Number(/width="([\d.]+)mm"/.exec(readFileSync(svg, 'utf8'))![1]);
    const rows = Array.from({ length: info.height }, (_, y) =>
      data.subarray(y * info.width, (y + 1) * info.width),
    );
    const low = rows.slice(-Math.round(12 * perMm));
    const longest = Math.max(...low.map((row) => row.filter((value) => value < 200).length));
    expect(Math.abs(longest / perMm - 50)).toBeLessThan(0.5);
    const circles = circlesOf(readFileSync(dxf, 'latin1'));
    expect(circles).toHaveLength(seen.plate.holes.length);
    for (const [i, { x, y, d }] of seen.plate.holes.entries()) {
      expect(circles[i]!.x).toBeCloseTo(x, 3);
      expect(circles[i]!.y).toBeCloseTo(y, 3);
      expect(Math.abs(2 * circles[i]!.r - d)).toBeLessThan(0.003);
    }
  });

  test('without the bars no size is claimed', async () => {
    const photo = taken();
    const { code, out } = await cli.run(['sight', photo, '--thickness', '1.5 mm']);
    expect(code).toBe(0);
    expect(out).toContain('The bars of the mat were not measured');
    expect(JSON.parse((await cli.run(['sight', photo, '--json'])).out).uScale).toBeNull();
  });

  test('against itself there is no difference; bolts are not compared', async () => {
    const photo = taken();
    const { out, code } = await cli.run(['sight', photo, '--against', photo, '--json']);
    expect(code).toBe(0);
    expect(JSON.parse(out).comparison).toMatchObject({ differences: [], turnedOver: false, turnDeg: 0 });
    expect((await cli.run(['sight', photo, '--as', 'bolts', '--against', photo])).code).toBe(2);
  });

  test('what is no picture, empty or wrongly asked is said in words', async () => {
    const photo = taken();
    const empty = inFolder('empty.jpg');
    const words = inFolder('words.jpg');
    const blank = inFolder('blank.png');
    writeFileSync(empty, '');
    writeFileSync(words, 'not a picture');
    writeFileSync(
      blank,
      await sharp({ create: { width: 640, height: 480, channels: 3, background: '#777' } })
        .png()
        .toBuffer(),
    );
    expect(await cli.run(['sight', empty])).toMatchObject({
      code: 1,
      err: expect.stringContaining('is empty'),
    });
    expect(await cli.run(['sight', words])).toMatchObject({
      code: 1,
      err: expect.stringContaining('not a picture'),
    });
    expect((await cli.run(['sight', blank])).code).toBe(1);
    const asked = await cli.run(['sight', blank, '--json']);
    expect(asked.code).toBe(0);
    expect(JSON.parse(asked.out).refused).toMatchObject({ why: 'There is no mat in the picture.' });
    expect((await cli.run(['sight', photo, '--bars', '100 mm'])).code).toBe(2);
    expect((await cli.run(['sight', photo, '--bars', '100 mm,20 mm'])).err).toContain('The bar of 200 mm');
    expect((await cli.run(['sight', photo, '--thickness', 'thin'])).code).toBe(2);
  });
});

/** Pairs of lines, code and value, as the DXF reference has them; of each circle its middle and radius. */
function circlesOf(dxf: string): { x: number; y: number; r: number }[] {
  const lines = dxf.split('\r\n');
  const pairs = Array.from(
    { length: lines.length >> 1 },
    (_, i) => [Number(lines[2 * i]), lines[2 * i + 1]!] as const,
  );
  return pairs.flatMap(([code, value], i) => {
    if (code !== 0 || value !== 'CIRCLE') return [];
    const of = (wanted: number) => Number(pairs.slice(i + 1).find(([each]) => each === wanted)![1]);
    return [{ x: of(10), y: of(20), r: of(40) }];
  });
}
