import type { Page } from 'tesseract.js';
import type { PageLine } from '../../sight/index.js';

/** The reader's blocks and paragraphs as plain lines, empty ones left out. */
export const pageLines = ({ blocks }: Page): PageLine[] =>
  (blocks ?? [])
    .flatMap(({ paragraphs }) => paragraphs.flatMap(({ lines }) => lines))
    .map(({ text, bbox, words }) => ({
      text: text.trim(),
      box: { x: bbox.x0, y: bbox.y0, width: bbox.x1 - bbox.x0, height: bbox.y1 - bbox.y0 },
      words: words.map((word) => ({ text: word.text, sure: word.confidence })),
    }))
    .filter(({ text }) => text !== '');
