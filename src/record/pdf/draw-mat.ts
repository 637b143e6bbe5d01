import type { Content } from 'pdfmake/interfaces.js';
import { type Label, labelSize, type Mat, matLabels, matSvg } from '../../sight/index.js';
import type { RecordFonts } from './fonts.js';
import { printPdf } from './print.js';
import { faceName, typesetter } from './typesetter.js';

const pointsPerMm = 72 / 25.4;

export function drawMat(mat: Mat, fonts: RecordFonts): Promise<Uint8Array> {
  const page = { width: mat.width * pointsPerMm, height: mat.height * pointsPerMm };
  const size = { width: String(page.width), height: String(page.height) };
  const type = typesetter(fonts);
  const fontSize = labelSize * pointsPerMm;
  const label = ({ x, y, words }: Label): Content => ({
    ...type.text(words, { fontSize }),
    absolutePosition: { x: x * pointsPerMm, y: y * pointsPerMm - fontSize },
  });
  return printPdf(
    {
      pageSize: page,
      pageMargins: 0,
      info: { title: 'Mat for photographs', creator: 'Wristpin', creationDate: new Date(0) },
      content: [
        { svg: matSvg(mat, { size }), absolutePosition: { x: 0, y: 0 } },
        ...matLabels(mat).map(label),
      ],
      defaultStyle: { font: faceName(0) },
    },
    fonts,
    new Map(),
  );
}
