import jsqr from 'jsqr';
import { describe, expect, test } from 'vitest';
import { labelsOf, labelsPdf } from '../../src/record/index.js';
import { shippedFonts } from './fonts.js';
import { Log } from './log.js';
import { hasPoppler, noPoppler } from './poppler.js';
import { dashedLines, mmPerDot, type Page, rasterPages } from './raster.js';

/** A general reader of codes; its types name its default export, which Node gives whole. */
const readCode = jsqr as unknown as typeof jsqr.default;

const printedAt = '2025-11-05T16:20:00-05:00';
const address = 'http://wristpin.local:4310';

/** Ten bags and an eleventh, of which some are crowded: a full label must not push the next one off its place. */
function bags() {
  const log = new Log();
  log.add('open', { tag: 1234, title: 'Walk-behind tiller with a title as long as anybody would write one' });
  for (let bag = 1; bag <= 11; bag += 1)
    for (let i = 0; i < (bag % 3 === 0 ? 8 : 1); i += 1)
      log.add('step', {
        ...{
          step: `s${bag}-${i}`,
          stage: 'teardown',
          title: `Blower housing and shroud, piece ${i}`,
          state: 'done',
        },
        fasteners: [{ what: 'bolt', size: '5/16-18', length: '1-1/2 in', count: 3 }],
        bag: String(bag),
      });
  return log.fold();
}

/** The words of a code, as a phone reads them off a piece of the page, in millimeters. */
function codeIn(
  page: Page,
  [left, right]: readonly number[],
  [top, bottom]: readonly number[],
): string | undefined {
  const [x, y, width, height] = [left!, top!, right! - left!, bottom! - top!].map((mm) =>
    Math.round(mm / mmPerDot),
  );
  const dots = new Uint8ClampedArray(4 * width! * height!);
  for (let row = 0; row < height!; row += 1)
    for (let column = 0; column < width!; column += 1) {
      const gray = page.gray[(y! + row) * page.width + x! + column]!;
      dots.set([gray, gray, gray, 255], 4 * (row * width! + column));
    }
  return readCode(dots, width!, height!)?.data;
}

const between = (lines: readonly number[]) => lines.slice(1).map((line, i) => [lines[i]!, line] as const);
const sizes = (lines: readonly number[]) => between(lines).map(([from, to]) => to - from);

describe.skipIf(!hasPoppler)(`label sheets as they are printed (${noPoppler})`, () => {
  // Letter: ANSI, 8.5 × 11 in; A4: ISO 216
  test.each([
    ['letter', [215.9, 279.4], [93.1, 51.1]],
    ['a4', [210, 297], [90.2, 54.7]],
  ] as const)(
    'on %s of %j mm each label is %j mm within 0.5 mm, two beside each other and five down',
    async (paper, [width, height], label) => {
      const job = bags();
      const pdf = await labelsPdf(job, 'bag', { fonts: await shippedFonts(), printedAt, paper, address });
      const pages = rasterPages(pdf);
      expect(pages).toHaveLength(2);
      const [page] = pages;
      expect(page!.width * mmPerDot).toBeCloseTo(width, 0);
      expect(page!.height * mmPerDot).toBeCloseTo(height, 0);
      const { down, across } = dashedLines(pdf);
      expect([down.length, across.length]).toEqual([3, 6]);
      const apart = [down, across].flatMap((lines, i) =>
        sizes(lines).map((each) => Math.abs(each - label[i]!)),
      );
      expect(Math.max(...apart)).toBeLessThan(0.5);
      // no printer prints to the edge
      expect(Math.min(down[0]!, across[0]!, width - down.at(-1)!, height - across.at(-1)!)).toBeGreaterThan(
        5,
      );
      // one column as far from the left edge as the other from the right
      expect(Math.abs(down[0]! - (width - down.at(-1)!))).toBeLessThan(0.5);

      const codes = between(across).flatMap((rows) =>
        between(down).map((columns) => codeIn(page!, columns, rows)),
      );
      expect(codes).toEqual(
        labelsOf(job, 'bag', address)
          .slice(0, 10)
          .map(({ code }) => code),
      );
    },
  );

  test.each([
    [62, 29],
    [50, 30],
    [102, 51],
    [29, 90],
  ])('on a roll of %i mm each label of %i mm has its code, which a phone reads', async (width, length) => {
    const job = bags();
    const paper = { width, length };
    const pages = rasterPages(
      await labelsPdf(job, 'bag', { fonts: await shippedFonts(), printedAt, paper, address }),
    );
    const codes = labelsOf(job, 'bag', address).map(({ code }) => code);
    expect(pages.map((page) => codeIn(page, [0, width - 1], [0, length - 1]))).toEqual(codes);
    for (const page of pages) {
      expect(Math.abs(page.width * mmPerDot - width)).toBeLessThan(0.5);
      expect(Math.abs(page.height * mmPerDot - length)).toBeLessThan(0.5);
    }
  });
});
