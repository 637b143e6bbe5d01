import { type MatPaper, matOf } from '../sight/index.js';
import type { RecordFonts } from './pdf/fonts.js';

/** The mat on which parts are photographed, one page of its own size, without a margin: 1 mm of it is 1 mm of paper. */
export async function matPdf(paper: MatPaper, fonts: RecordFonts): Promise<Uint8Array> {
  const { drawMat } = await import('./pdf/draw-mat.js');
  return drawMat(matOf(paper), fonts);
}
