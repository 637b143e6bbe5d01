import { answersFor, fold, type Job, nothingTaught } from '../job/index.js';
import { type Detail, serviceRecordPdf } from '../record/index.js';
import type { Store } from '../store/index.js';
import { recordFonts } from './fonts.js';
import { entriesOf } from './job-entries.js';
import { printable } from './picture.js';
import { shopNow } from './shop-now.js';

export interface PrintedRecord {
  readonly job: Job;
  readonly bytes: Uint8Array;
}

export interface RecordAsked {
  /** the folder of the type faces */
  readonly fonts: string;
  readonly printedAt: string;
  /** left out: every word if two pages hold them, else the brief form */
  readonly detail?: Detail | undefined;
}

/** The service record of a job as PDF, with the pictures that the store has. @throws ShopkeepError */
export async function printRecord(
  store: Store,
  id: string,
  { fonts, printedAt, detail }: RecordAsked,
): Promise<PrintedRecord> {
  const job = fold(id, await entriesOf(store, id));
  // nothing that the shop's other jobs taught is printed, so they are not read
  const answers = answersFor({ job, ...(await shopNow(store)), jobs: nothingTaught });
  const bytes = await serviceRecordPdf(answers, {
    fonts: await recordFonts(fonts),
    printedAt,
    ...(detail && { detail }),
    pictures: async (sha256) => {
      const picture = await store.picture(sha256);
      return picture && { bytes: await printable(picture.bytes), mime: 'image/jpeg' };
    },
  });
  return { job, bytes };
}
