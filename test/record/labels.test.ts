import fc from 'fast-check';
import { expect, test } from 'vitest';
import { labelsOf, labelsPdf } from '../../src/record/index.js';
import { campaign } from '../support/campaign.js';
import { shippedFonts } from './fonts.js';
import { Log } from './log.js';
import { ordinaryJob } from './ordinary-job.js';
import { hasPoppler, pdfRightEdge, pdfText } from './poppler.js';

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
  const labels = labelsOf(job, 'bag');
  expect(labels.map((label) => label.bag)).toEqual(['1', '2', '3', '4', '5', '6']);
  expect(labels[5]).toEqual({
    tag: 17,
    bag: '6',
    title: 'Water pump, overhead-valve, 195 cc',
    what: ['Cylinder head off'],
    contents: ['6 × 5/16-18 bolt'],
    count: '6 pieces',
    code: 'wristpin tag 17 bag 6',
    invented: true,
  });
});

test('steps in one bag share its label, bag 10 comes after bag 9, and a step without a bag has none', () => {
  const labels = labelsOf(
    bagged([
      ['10', 1],
      ['9', 2],
      ['10', 3],
      [undefined, 4],
    ]),
    'bag',
  );
  expect(labels.map(({ bag, what, count }) => [bag, what, count])).toEqual([
    ['9', ['Piece 1'], '2 pieces'],
    ['10', ['Piece 0', 'Piece 2'], '4 pieces'],
  ]);
});

test('a part that is ordered or here and not fitted has a label; its code opens what is found under it', () => {
  const log = new Log();
  log.add('open', { tag: 8, title: 'Saw' });
  const part = (name: string, state: 'wanted' | 'ordered' | 'arrived' | 'fitted', number?: string) =>
    log.add('part', { part: name.toLowerCase(), name, count: 2, state, ...(number && { number }) });
  part('Rope', 'wanted');
  part('Ring', 'arrived', 'OX-195-32');
  part('Plug', 'ordered');
  part('Gasket', 'fitted');
  const labels = labelsOf(log.fold(), 'part', 'http://wristpin.local:4747');
  expect(labels.map(({ what, count, contents, code }) => [what, count, contents, code])).toEqual([
    [['Ring'], '2 pieces', ['OX-195-32'], 'http://wristpin.local:4747/?find=%238%20OX-195-32'],
    [['Plug'], '2 pieces', [], 'http://wristpin.local:4747/?find=%238%20Plug'],
  ]);
});

const pages = (pdf: Uint8Array) =>
  Buffer.from(pdf)
    .toString('latin1')
    .match(/\/Type \/Page\b(?!s)/g)?.length;

test('the sheet holds ten labels a page and says so when there is nothing to label', async () => {
  const fonts = await shippedFonts();
  const sheet = (count: number) =>
    labelsPdf(bagged(Array.from({ length: count }, (_, i) => [String(i + 1), 2] as const)), 'bag', {
      fonts,
      printedAt,
    });
  expect(pages(await sheet(10))).toBe(1);
  expect(pages(await sheet(11))).toBe(2);
  const none = await sheet(0);
  expect(pages(none)).toBe(1);
  if (hasPoppler) expect(pdfText(none)).toContain('nothing to label');
});

/** Much on one label: many pieces, long names, a long bag. */
const crowded = () => {
  const log = new Log();
  log.add('open', { tag: 1234, title: 'Walk-behind tiller with a title as long as anybody would write one' });
  for (let i = 0; i < 8; i += 1) {
    const fasteners = [{ what: 'bolt', size: '5/16-18', length: '1-1/2 in', count: 3 }];
    const step = {
      step: `s${i}`,
      stage: 'teardown',
      title: `Blower housing and shroud, piece ${i}`,
    } as const;
    log.add('step', { ...step, state: 'done', bag: 'left tray', fasteners });
    log.add('step', { ...step, step: `t${i}`, state: 'done', bag: '2', fasteners });
  }
  return log.fold();
};

// millimetres to points: 72 to the inch, 25.4 mm to the inch
test.each([
  [62, 29],
  [62, 60],
  [40, 30],
  [29, 90],
  [25, 25],
  [102, 51],
])(
  'on a roll of %i mm each label is a page %i mm long, and all of it stands on it',
  async (width, length) => {
    const pdf = await labelsPdf(crowded(), 'bag', {
      fonts: await shippedFonts(),
      printedAt,
      paper: { width, length },
    });
    expect(pages(pdf)).toBe(2);
    const box = /MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(Buffer.from(pdf).toString('latin1'));
    expect(Math.abs((Number(box?.[1]) / 72) * 25.4 - width)).toBeLessThan(0.5);
    expect(Math.abs((Number(box?.[2]) / 72) * 25.4 - length)).toBeLessThan(0.5);
    if (!hasPoppler) return;
    expect(pdfText(pdf).match(/1234/g)).toHaveLength(2);
    expect((pdfRightEdge(pdf) / 72) * 25.4).toBeLessThanOrEqual(width);
  },
);

/** The same, of an invented machine or with bolts that nobody counted. */
const anyJob = (invented: boolean, count: number) => {
  const log = new Log();
  log.add('open', { tag: 17, title: 'Tiller', ...(invented && { invented }) });
  const fasteners = [{ what: 'bolt', size: 'M6', count: count + 1 }];
  for (let i = 0; i <= count; i += 1)
    for (const bag of ['1', 'left tray'])
      log.add('step', {
        ...{ step: `${bag.at(0)}${i}`, stage: 'teardown', title: `Piece ${i}`, state: 'done', bag },
        ...(i > 0 && { fasteners }),
      });
  return log.fold();
};

test('on a roll of any size a label is one page, whatever stands on it', async () => {
  const fonts = await shippedFonts();
  const side = (most: number) => fc.integer({ min: 20, max: most });
  const address = fc.constantFrom(undefined, 'http://wristpin.local:4310');
  await fc.assert(
    fc.asyncProperty(
      ...([fc.boolean(), fc.nat(6), side(120), side(200), address] as const),
      async (invented, count, width, length, found) => {
        const options = { fonts, printedAt, paper: { width, length }, address: found };
        expect(pages(await labelsPdf(anyJob(invented, count), 'bag', options))).toBe(2);
      },
    ),
    { seed: 41, numRuns: campaign(60, 600) },
  );
});

test('a sheet on A4 is A4, and a roll that no printer takes is refused', async () => {
  const fonts = await shippedFonts();
  const a4 = await labelsPdf(crowded(), 'bag', { fonts, printedAt, paper: 'a4' });
  // ISO 216: 210 × 297 mm
  expect(Buffer.from(a4).toString('latin1')).toMatch(/MediaBox \[0 0 595\.28 841\.89\]/);
  for (const paper of [
    { width: 5, length: 30 },
    { width: 62, length: Number.NaN },
  ])
    await expect(labelsPdf(crowded(), 'bag', { fonts, printedAt, paper })).rejects.toThrow(/20 to \d+ mm/);
});
