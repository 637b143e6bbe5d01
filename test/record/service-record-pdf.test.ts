import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Job } from '../../src/job/index.js';
import {
  RecordError,
  type RecordFonts,
  type ServiceRecordOptions,
  serviceRecordPdf,
} from '../../src/record/index.js';
import { door } from '../job/door.js';
import { shippedFonts } from './fonts.js';
import { Log } from './log.js';
import { drawnPicture, type Fixture, ordinaryJob, sha256 } from './ordinary-job.js';
import { emptyJob, hugeJob } from './other-jobs.js';
import { hasPoppler, noPoppler, pdfFonts, pdfRightEdge, pdfText } from './poppler.js';

let fonts: RecordFonts;
let fixture: Fixture;
beforeAll(async () => {
  fonts = await shippedFonts();
  fixture = await ordinaryJob();
});

const options = (more: Partial<ServiceRecordOptions> = {}): ServiceRecordOptions => ({
  fonts,
  printedAt: '2025-11-05T16:20:00-05:00',
  pictures: async (hash) => fixture.pictures.get(hash),
  ...more,
});
const inShop = (job: Job) => door(job, { shop: fixture.shop });
const ordinaryPdf = (more: Partial<ServiceRecordOptions> = {}) =>
  serviceRecordPdf(inShop(fixture.job), options(more));

const raw = (pdf: Uint8Array) => Buffer.from(pdf).toString('latin1');
const pages = (pdf: Uint8Array) => raw(pdf).match(/\/Type \/Page\b(?!s)/g)?.length ?? 0;
const mediaBoxes = (pdf: Uint8Array) => new Set(raw(pdf).match(/\/MediaBox \[[^\]]*\]/g));
const images = (pdf: Uint8Array) => raw(pdf).match(/\/Subtype \/Image\b/g)?.length ?? 0;

describe('the pages', () => {
  test('an ordinary job takes two pages, on letter and on A4', async () => {
    const letter = await ordinaryPdf();
    const a4 = await ordinaryPdf({ paper: 'a4', system: 'metric' });
    expect([pages(letter), pages(a4)]).toEqual([2, 2]);
    expect([...mediaBoxes(letter)]).toEqual(['/MediaBox [0 0 612 792]']);
    expect([...mediaBoxes(a4)]).toEqual(['/MediaBox [0 0 595.28 841.89]']);
  });

  test('a job with only a tag takes one page', async () => {
    expect(pages(await serviceRecordPdf(door(emptyJob()), options()))).toBe(1);
  });

  test('a huge job flows over many pages; its sixty photographs are cut to the stated number', async () => {
    const picture = await drawnPicture('view', 100);
    const job = hugeJob(picture.bytes);
    const print = (detail?: 'full') =>
      serviceRecordPdf(inShop(job), options({ pictures: async () => picture, ...(detail && { detail }) }));
    const [full, fitted] = [await print('full'), await print()];
    expect(job.photographs).toHaveLength(60);
    expect(pages(full)).toBeGreaterThan(8);
    expect(pages(fitted)).toBeLessThan(pages(full));
    expect([images(full), images(fitted)]).toEqual([1, 1]); // many places, one set of bytes
    if (!hasPoppler) return;
    expect(pdfText(full)).toContain('48 more in the shop’s log');
    expect(pdfText(fitted)).toContain('54 more in the shop’s log');
    expect(pdfText(fitted)).toContain('This is the brief form');
  });

  test('a job that two pages hold in full is printed in full', async () => {
    const print = (detail?: 'full' | 'brief') => ordinaryPdf({ pictureLimit: 0, ...(detail && { detail }) });
    expect(Buffer.compare(await print(), await print('full'))).toBe(0);
    expect(Buffer.compare(await print(), await print('brief'))).not.toBe(0);
  });

  test('the same job printed at the same time gives the same bytes', async () => {
    expect(Buffer.compare(await ordinaryPdf(), await ordinaryPdf())).toBe(0);
  });

  test('two records made at once do not mix', async () => {
    const other = serviceRecordPdf(inShop(emptyJob()), options());
    const [a, b] = await Promise.all([ordinaryPdf(), other]);
    expect(Buffer.compare(a, await ordinaryPdf())).toBe(0);
    expect(pages(b)).toBe(1);
  });
});

describe.skipIf(!hasPoppler)(`read back by another program (${noPoppler})`, () => {
  test('every page says which machine, when it was printed, how many pages, and that it is invented', async () => {
    const text = pdfText(await ordinaryPdf());
    expect(text.match(/INVENTED — demonstration/g)).toHaveLength(2);
    expect(text).toContain('page 1 of 2');
    expect(text).toContain('page 2 of 2');
    expect(text).toContain('printed November 5, 2025, 16:20');
    expect(text.match(/Tag 17 · Water pump/g)?.length).toBeGreaterThanOrEqual(2);
  });

  test('a real job carries no such band', async () => {
    const { job, pictures } = await ordinaryJob({ invented: false });
    const pdf = await serviceRecordPdf(
      inShop(job),
      options({ pictures: async (hash) => pictures.get(hash) }),
    );
    expect(pdfText(pdf)).not.toMatch(/invented/i);
  });

  test('figures come back as figures', async () => {
    const text = pdfText(await ordinaryPdf());
    for (const words of [
      '140 in-lb (15.8 N·m)',
      '0.005 in to 0.007 in',
      '± 0.0005 in',
      '2.5990 in',
      '3600 rpm',
      '± 4 %',
    ]) {
      expect(text).toContain(words);
    }
    expect(text).not.toContain('85 psi');
  });

  test('the fonts are embedded as subsets', async () => {
    const lines = pdfFonts(await ordinaryPdf())
      .trim()
      .split('\n')
      .slice(2);
    expect(lines.length).toBeGreaterThanOrEqual(3);
    for (const line of lines)
      expect(line).toMatch(/^[A-Z]{6}\+AtkinsonHyperlegibleNext-\w+ +CID TrueType +Identity-H +yes yes yes/);
  });

  test('letters and signs beyond the record’s own face come from the next one that holds them', async () => {
    const text = pdfText(await pdfOfNote('Jiří Kováč: coil 3.2 kΩ, gap ≥ 0.010″, Жук, 0.25 µF'));
    for (const words of ['Jiří Kováč: coil 3.2 kΩ', 'gap ≥ 0.010″', 'Жук', '0.25 µF'])
      expect(text).toContain(words);
    expect(text).not.toContain('[?]');
  });

  test('a text of any length is printed to its last word, inside the margins', async () => {
    const log = new Log();
    log.add('open', { tag: 3, title: 'M'.repeat(120) });
    const long = (end: string) => `${'word '.repeat(1200)}${end}`;
    const noSpace = 'W'.repeat(390);
    log.add('intake', {
      machine: 'M'.repeat(200),
      complaint: long('end-complaint'),
      tried: long('end-tried'),
    });
    log.add('observation', { title: noSpace, outcomes: ['seen'], words: long('end-observation') });
    log.add('decision', { about: 'fault', title: noSpace, choice: 'repair', reason: long('end-reason') });
    log.add('decision', {
      about: 'part',
      title: 'Spring',
      choice: 'provisional',
      reason: long('end-provisional'),
    });
    log.add('step', { step: 'off', stage: 'teardown', title: 'Off', state: 'done', words: long('end-step') });
    log.add('part', { part: 'p', name: 'P', count: 1, state: 'fitted', words: long('end-part') });
    log.add('run-up', { item: 'r', title: 'R', result: 'ok', words: long('end-run-up') });
    log.add('hand-over', { receivedBy: 'A', told: long('end-told'), declined: [noSpace], nextDue: [] });
    const pdf = await serviceRecordPdf(inShop(log.fold()), options({ detail: 'full' }));
    const ends = new Set(pdfText(pdf).match(/end-[a-z-]+/g));
    expect([...ends].sort()).toEqual(
      ['complaint', 'observation', 'part', 'provisional', 'reason', 'run-up', 'step', 'told', 'tried'].map(
        (e) => `end-${e}`,
      ),
    );
    expect(pdfRightEdge(pdf)).toBeLessThanOrEqual(612 - 42 + 0.01);
  });

  test('a sign that no face holds is marked, and the record says so', async () => {
    const text = pdfText(await pdfOfNote('runs 漢 then → dies ✓'));
    expect(text).toContain('runs [?] then -> dies (yes)');
    expect(text).toContain('Signs that this document’s type does not hold are printed as [?]');
  });
});

describe('pictures', () => {
  const withPicture = async (bytes: Uint8Array | undefined) => {
    const log = new Log();
    log.add('open', { tag: 3, title: 'Blower' });
    const hash = sha256(bytes ?? new Uint8Array([1]));
    log.add('photograph', {
      picture: { sha256: hash, mime: 'image/png', bytes: 100, width: 40, height: 30 },
      caption: 'Reed plate',
      stage: 'intake',
      when: 'before',
    });
    return serviceRecordPdf(
      inShop(log.fold()),
      options({ pictures: async () => (bytes ? { bytes, mime: 'image/png' } : undefined) }),
    );
  };
  const square = sharp({
    create: { width: 40, height: 30, channels: 4, background: { r: 9, g: 90, b: 90, alpha: 0.5 } },
  });

  test('PNG with transparency is printed', async () => {
    expect(images(await withPicture(await square.png().toBuffer()))).toBeGreaterThan(0);
  });

  test('one that is missing, damaged or of another form is said in its place and stops nothing', async () => {
    const png = await square.png().toBuffer();
    const damaged = Buffer.from(png);
    damaged.fill(0xaa, damaged.indexOf('IDAT') + 8, damaged.indexOf('IEND') - 8);
    for (const bytes of [undefined, damaged, await square.webp().toBuffer(), Buffer.from('not a picture')]) {
      const pdf = await withPicture(bytes);
      expect(images(pdf)).toBe(0);
      if (hasPoppler) expect(pdfText(pdf).replaceAll(/\s+/g, ' ')).toContain('This picture cannot');
    }
  });
});

describe('refusals', () => {
  test('no fonts, bytes that are no font, and a time that is none are refused by name', async () => {
    await expect(ordinaryPdf({ fonts: [] })).rejects.toThrow(RecordError);
    const broken = { ...fonts[0]!, bold: new Uint8Array([1, 2, 3]) };
    await expect(ordinaryPdf({ fonts: [broken] })).rejects.toMatchObject({
      name: 'RecordError',
      field: 'fonts',
    });
    await expect(ordinaryPdf({ printedAt: 'yesterday' })).rejects.toMatchObject({
      name: 'RecordError',
      field: 'printedAt',
    });
  });
});

function pdfOfNote(words: string): Promise<Uint8Array> {
  const log = new Log();
  log.add('open', { tag: 3, title: 'Blower' });
  log.add('decision', { about: 'fault', title: words, choice: 'repair', reason: 'shown' });
  return serviceRecordPdf(inShop(log.fold()), options());
}
