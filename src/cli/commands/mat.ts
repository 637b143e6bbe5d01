import { matPdf } from '../../record/index.js';
import { packaged, recordFonts } from '../../shopkeep/index.js';
import { type MatPaper, matOf, matPapers, matSvg } from '../../sight/index.js';
import { type Call, type Command, flag, text, WronglyCalled } from '../command.js';
import { forceOption, requireFree, writeWhole } from './out-file.js';

export const mat: Command = {
  usage: 'wristpin mat --pdf FILE | --png FILE [--paper letter|a4] [--dpi N]',
  options: {
    pdf: { type: 'string', value: 'FILE', help: 'where to write the sheet for the printer' },
    png: { type: 'string', value: 'FILE', help: 'the same sheet, edge to edge, as a picture' },
    paper: { type: 'string', value: 'letter|a4', help: 'letter when left out' },
    dpi: { type: 'string', value: 'N', help: 'dots an inch of the picture, 72 to 1200; 300 when left out' },
    force: forceOption,
  },
  examples: ['wristpin mat --pdf mat.pdf', 'wristpin mat --png mat.png --paper a4 --dpi 600'],
  takes: { least: 0, most: 0 },
  run: async (call, around) => {
    const wanted = [text(call, 'pdf'), text(call, 'png')];
    if (!wanted.some(Boolean)) throw new WronglyCalled('Say where to: --pdf FILE or --png FILE.');
    const paper = paperOf(call);
    const dpi = dpiOf(call);
    const force = flag(call, 'force');
    const [pdf, png] = wanted.map((file) => (file ? requireFree(file, force) : undefined));
    if (pdf) writeWhole(pdf, await matPdf(paper, await recordFonts(packaged().fonts)), force);
    if (png) writeWhole(png, await matPng(paper, dpi), force);
    for (const path of [pdf, png]) if (path) around.out(`The mat is in ${path}`);
    if (pdf)
      around.out(
        'Print it at 100 %, then measure the 100 mm bar and the 200 mm bar: their true lengths go into “wristpin sight --bars”.',
      );
  },
};

function paperOf(call: Call): MatPaper {
  const given = text(call, 'paper') ?? 'letter';
  const paper = matPapers.find((each) => each === given.toLowerCase());
  if (paper) return paper;
  throw new WronglyCalled(`--paper takes letter or a4, not “${given}”.`);
}

function dpiOf(call: Call): number {
  const given = text(call, 'dpi') ?? '300';
  const dpi = Number(given);
  if (/^\d+$/.test(given) && dpi >= 72 && dpi <= 1200) return dpi;
  throw new WronglyCalled(`--dpi takes a whole number from 72 to 1200, not “${given}”.`);
}

async function matPng(paper: MatPaper, dpi: number): Promise<Uint8Array> {
  const { default: sharp } = await import('sharp');
  const mat = matOf(paper);
  const pixels = (mm: number) => String(Math.round((mm / 25.4) * dpi));
  const svg = matSvg(mat, {
    size: { width: pixels(mat.width), height: pixels(mat.height) },
    font: 'sans-serif',
  });
  return sharp(Buffer.from(svg), { unlimited: true })
    .grayscale()
    .withMetadata({ density: dpi })
    .png()
    .toBuffer();
}
