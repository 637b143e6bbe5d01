import type { Answers } from '../job/index.js';
import type { RecordFonts } from './pdf/fonts.js';
import { type Printable, type PrintablePicture, pictureProblem } from './pdf/picture.js';
import type { Density, Paper } from './pdf/theme.js';
import { requireTime } from './printed-at.js';
import {
  type ContentOptions,
  type Detail,
  type RecordContent,
  recordContent,
} from './service-record/index.js';

export interface ServiceRecordOptions extends ContentOptions {
  readonly fonts: RecordFonts;
  /** JPEG or PNG, the right way up; a picture in another form is converted by the caller */
  readonly pictures: (sha256: string) => Promise<PrintablePicture | undefined>;
  /** letter when left out */
  readonly paper?: Paper;
  /** full: every word. Left out: every word if two pages hold them, else the brief form. */
  readonly detail?: Detail;
}

/**
 * The service record of a job as PDF: what a customer can read and a colleague can trust.
 *
 * Two pages for an ordinary job; an empty job gives a short page, a huge one flows on. The same job, pictures and
 * printing time give the same bytes. A picture that is missing or damaged is said in its place and stops nothing.
 * Throws RecordError for fonts that cannot be read or a printing time that is not one.
 */
export async function serviceRecordPdf(answers: Answers, options: ServiceRecordOptions): Promise<Uint8Array> {
  requireTime(options.printedAt);
  // The PDF library is large and only needed here: whoever wants the content as data does not load it.
  const { drawServiceRecord } = await import('./pdf/draw.js');
  const { fonts, printedAt, paper = 'letter' } = options;
  const seen = new Map<string, Printable>();
  let kept: Uint8Array | undefined;
  for (const { detail, density } of formsToTry(options.detail)) {
    const record = recordContent(answers, { ...options, detail });
    if (isHopeless(record, options.detail)) continue;
    const pictures = await printablePictures(record, options.pictures, seen);
    const { bytes, pages } = await drawServiceRecord(record, { fonts, paper, printedAt, density, pictures });
    if (pages <= pagesWanted) return bytes;
    kept ??= detail === 'brief' || options.detail === 'full' ? bytes : undefined;
  }
  return kept!;
}

const pagesWanted = 2;

interface Form {
  readonly detail: Detail;
  readonly density: Density;
}

/** From the one that says most to the one that takes least; a job that fits none is printed in the first brief one. */
function formsToTry(detail: Detail | undefined): readonly Form[] {
  const full: Form = { detail: 'full', density: 'easy' };
  const brief: readonly Form[] = [
    { detail: 'brief', density: 'easy' },
    { detail: 'brief', density: 'tight' },
  ];
  if (detail === 'full') return [full];
  return detail === 'brief' ? brief : [full, ...brief];
}

/** More than this never fits two pages, so it is not set only to be thrown away. */
const mostSignsOnTwoPages = 14_000;

function isHopeless(record: RecordContent, asked: Detail | undefined): boolean {
  return asked === undefined && record.detail === 'full' && signsIn(record.sections) > mostSignsOnTwoPages;
}

function signsIn(value: unknown): number {
  if (typeof value === 'string') return value.length;
  if (typeof value !== 'object' || value === null) return 0;
  return Object.values(value).reduce((sum: number, inner) => sum + signsIn(inner), 0);
}

async function printablePictures(
  record: RecordContent,
  pictures: ServiceRecordOptions['pictures'],
  seen: Map<string, Printable>,
): Promise<ReadonlyMap<string, Printable>> {
  const wanted = [...new Set(shownPictures(record))];
  for (const hash of wanted) {
    if (!seen.has(hash)) seen.set(hash, checked(await pictures(hash)));
  }
  return new Map(wanted.map((hash) => [hash, seen.get(hash)!]));
}

function checked(picture: PrintablePicture | undefined): Printable {
  if (!picture) return { problem: 'it is not in the shop’s store' };
  const problem = pictureProblem(picture.bytes);
  return problem ? { problem } : picture;
}

function shownPictures(record: RecordContent): string[] {
  const blocks = record.sections.flatMap((section) => section.blocks);
  const groups = blocks.flatMap((block) => (block.type === 'pictures' ? block.groups : []));
  return groups.flatMap((group) => group.pictures.map((picture) => picture.sha256));
}
