import type { RecordContent } from '../service-record/index.js';
import { recordDocument } from './document.js';
import type { RecordFonts } from './fonts.js';
import type { Printable } from './picture.js';
import { printPdf } from './print.js';
import type { Density, Paper } from './theme.js';
import { typesetter } from './typesetter.js';

export interface DrawOptions {
  readonly fonts: RecordFonts;
  readonly paper: Paper;
  readonly density: Density;
  readonly printedAt: string;
  readonly pictures: ReadonlyMap<string, Printable>;
}

export interface Drawn {
  readonly bytes: Uint8Array;
  readonly pages: number;
}

export async function drawServiceRecord(record: RecordContent, options: DrawOptions): Promise<Drawn> {
  const entries = [...options.pictures];
  const named = entries.map(([hash, p]) => [hash, 'problem' in p ? p : { name: hash }] as const);
  const files = entries.flatMap(([hash, p]) => ('problem' in p ? [] : [[hash, p.bytes] as const]));
  const setting = { type: typesetter(options.fonts, options.density), pictures: new Map(named) };
  let pages = 0;
  const document = recordDocument(record, setting, {
    paper: options.paper,
    printedAt: options.printedAt,
    onPages: (count) => {
      pages = count;
    },
  });
  return { bytes: await printPdf(document, options.fonts, new Map(files)), pages };
}
