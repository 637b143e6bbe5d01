import type { Content } from 'pdfmake/interfaces.js';
import { type Drawing, type Shape, short } from '../../draw/index.js';
import { color } from './theme.js';
import type { Typesetter } from './typesetter.js';

/** How each look is drawn in print: shape before color, so that it is told in black and white too. */
const looks: Readonly<Record<string, string>> = {
  face: `fill="none" stroke="${color.soft}" stroke-width="0.8"`,
  order: `fill="none" stroke="${color.rule}" stroke-width="0.9" stroke-dasharray="2 2"`,
  'hole clicked': `fill="${color.accent}"`,
  'hole not-complete': `fill="#ffffff" stroke="${color.open}" stroke-width="1" stroke-dasharray="2.5 1.8"`,
  'hole failed': `fill="#ffffff" stroke="${color.fail}" stroke-width="1.4"`,
  'cross failed': `fill="none" stroke="${color.fail}" stroke-width="1.2"`,
  metal: `fill="${color.rule}" stroke="${color.ink}" stroke-width="0.7"`,
  standard: `stroke="${color.accent}" stroke-width="0.9" stroke-dasharray="3 2"`,
  bound: `stroke="${color.fail}" stroke-width="0.9" stroke-dasharray="0.8 2"`,
  frame: `fill="none" stroke="${color.rule}" stroke-width="0.6"`,
  curve: `fill="none" stroke="${color.accent}" stroke-width="1.1"`,
};

/** A drawing as a block of the document. Its words are the document's own text laid over it: an SVG could not use a font from memory. */
export function onPaper({ width, height, shapes }: Drawing, type: Typesetter): Content[] {
  const size = `width="${short(width)}" height="${short(height)}" viewBox="0 0 ${short(width)} ${short(height)}"`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${shapes.map(element).join('')}</svg>`;
  return [{ svg, width }, ...shapes.flatMap((shape) => words(shape, { width, height }, type))];
}

function element(shape: Shape): string {
  switch (shape.is) {
    case 'text':
      return '';
    case 'path':
      return `<path d="${shape.d}" ${looks[shape.look]}/>`;
    case 'circle':
      return `<circle cx="${short(shape.x)}" cy="${short(shape.y)}" r="${short(shape.r)}" ${looks[shape.look]}/>`;
    case 'rect':
      return `<rect x="${short(shape.x)}" y="${short(shape.y)}" width="${short(shape.width)}" height="${short(shape.height)}" rx="${shape.round ?? 0}" ${looks[shape.look]}/>`;
  }
}

function words(
  shape: Shape,
  { width, height }: Pick<Drawing, 'width' | 'height'>,
  type: Typesetter,
): Content[] {
  if (shape.is !== 'text') return [];
  const fontSize = shape.size ?? type.size.body;
  const style = {
    fontSize,
    bold: true,
    alignment: 'center',
    color: shape.look === 'hole-turn clicked' ? '#ffffff' : color.ink,
  } as const;
  return [
    {
      relativePosition: { x: shape.x - width / 2, y: shape.y - height - fontSize * 0.62 },
      columns: [{ width, ...type.text(shape.words, style) }],
    },
  ];
}
