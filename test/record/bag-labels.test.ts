import { expect, test } from 'vitest';
import { bagLabels, bagLabelsPdf } from '../../src/record/index.js';
import { shippedFonts } from './fonts.js';
import { Log } from './log.js';
import { ordinaryJob } from './ordinary-job.js';
import { hasPoppler, pdfText } from './poppler.js';

const { job } = await ordinaryJob();
const printedAt = '2025-11-05T16:20:00-05:00';

const bagged = (steps: readonly (readonly [bag: string | undefined, count: number])[]) => {
  const log = new Log();
  log.add('open', { tag: 8, title: 'Saw' });
  steps.forEach(([bag, count], i) => {
    const fasteners = count > 0 ? [{ what: 'bolt', size: 'M6', count }] : [];
    log.add('step', {
      step: `s${i}`,
      stage: 'teardown',
      title: `Piece ${i}`,
      state: 'done',
      fasteners,
      ...(bag && { bag }),
    });
  });
  return log.fold();
};

test('each bag of the teardown has one label with its steps, its contents and their count', () => {
  const labels = bagLabels(job);
  expect(labels.map((label) => label.bag)).toEqual(['1', '2', '3', '4', '5', '6']);
  expect(labels[5]).toEqual({
    tag: 17,
    bag: '6',
    title: 'Water pump, overhead-valve, 195 cc',
    steps: ['Cylinder head off'],
    contents: ['6 × 5/16-18 bolt'],
    count: 6,
    code: 'wristpin tag 17 bag 6',
    invented: true,
  });
});

test('steps in one bag share its label, bag 10 comes after bag 9, and a step without a bag has none', () => {
  const labels = bagLabels(
    bagged([
      ['10', 1],
      ['9', 2],
      ['10', 3],
      [undefined, 4],
    ]),
  );
  expect(labels.map(({ bag, steps, count }) => [bag, steps, count])).toEqual([
    ['9', ['Piece 1'], 2],
    ['10', ['Piece 0', 'Piece 2'], 4],
  ]);
});

test('the sheet holds ten labels a page and says so when there is nothing to label', async () => {
  const fonts = await shippedFonts();
  const pages = (pdf: Uint8Array) =>
    Buffer.from(pdf)
      .toString('latin1')
      .match(/\/Type \/Page\b(?!s)/g)?.length;
  const sheet = (count: number) =>
    bagLabelsPdf(bagged(Array.from({ length: count }, (_, i) => [String(i + 1), 2] as const)), {
      fonts,
      printedAt,
    });
  expect(pages(await sheet(10))).toBe(1);
  expect(pages(await sheet(11))).toBe(2);
  const none = await sheet(0);
  expect(pages(none)).toBe(1);
  if (hasPoppler) expect(pdfText(none)).toContain('nothing to label');
});
