import type { TDocumentDefinitions, TFontDictionary } from 'pdfmake/interfaces.js';
import printerModule, { type Printer as PdfPrinter } from 'pdfmake/js/Printer.js';
import { concatenated } from '../bytes.js';
import type { FontFace, RecordFonts } from './fonts.js';
import { faceName } from './typesetter.js';

// CommonJS: Node hands over the whole module, a bundler its default export.
const Printer = typeof printerModule === 'function' ? printerModule : printerModule.default;

/**
 * Turns a document into PDF bytes, from memory only.
 *
 * The library's own front door keeps fonts and pictures in one file system for the whole process and may fetch URLs;
 * its printer is used directly instead, with a file system of this one document, no URLs and no local files. The
 * same document gives the same bytes.
 */
export async function printPdf(
  document: TDocumentDefinitions,
  fonts: RecordFonts,
  pictures: ReadonlyMap<string, Uint8Array>,
): Promise<Uint8Array> {
  const files = new Map([...fontEntries(fonts), ...pictures]);
  const virtualFiles = {
    existsSync: (name: string) => files.has(name),
    readFileSync: (name: string) => files.get(name)!,
  };
  const noUrls = { resolve: () => {}, resolved: async () => {} };
  const printer = new Printer(dictionary(fonts), virtualFiles, noUrls, () => false);
  const images = Object.fromEntries([...pictures.keys()].map((name) => [name, name]));
  return collected(await printer.createPdfKitDocument({ ...document, images }));
}

const cuts = ['regular', 'bold', 'italic'] as const satisfies readonly (keyof FontFace)[];
const fileName = (index: number, cut: keyof FontFace) => `${faceName(index)}-${cut}`;

function fontEntries(fonts: RecordFonts): [string, Uint8Array][] {
  return fonts.flatMap((face, i) => cuts.map((cut): [string, Uint8Array] => [fileName(i, cut), face[cut]]));
}

function dictionary(fonts: RecordFonts): TFontDictionary {
  const entries = fonts.map((_, i) => [
    faceName(i),
    {
      normal: fileName(i, 'regular'),
      bold: fileName(i, 'bold'),
      italics: fileName(i, 'italic'),
      bolditalics: fileName(i, 'bold'),
    },
  ]);
  return Object.fromEntries(entries);
}

type Pdf = Awaited<ReturnType<PdfPrinter['createPdfKitDocument']>>;

function collected(pdf: Pdf): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    pdf.on('data', (chunk) => chunks.push(chunk));
    pdf.on('end', () => resolve(concatenated(chunks)));
    pdf.on('error', reject);
    pdf.end();
  });
}
