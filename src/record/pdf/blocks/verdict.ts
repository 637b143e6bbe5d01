import type { Content } from 'pdfmake/interfaces.js';
import type { Verdict } from '../../service-record/index.js';
import { signColor, signDrawing } from '../sign.js';
import type { Typesetter } from '../typesetter.js';

/** The sign and its word, side by side: never the one without the other. */
export function verdictLine({ sign, word }: Verdict, type: Typesetter): Content {
  return {
    columns: [
      { width: 10, stack: [signDrawing(sign)], margin: [0, 1.4, 0, 0] },
      {
        width: '*',
        ...type.text(word, { color: signColor(sign), fontSize: type.size.small + 0.4, bold: true }),
      },
    ],
    columnGap: 0,
  };
}
