import { create } from 'fontkit';
import type { ContentText } from 'pdfmake/interfaces.js';
import { RecordError } from '../error.js';
import type { FontFace, RecordFonts } from './fonts.js';
import { color, type Density, type Sizes, sizes } from './theme.js';

/** A stretch of text that one face can set. */
export interface Run {
  readonly text: string;
  readonly font: string;
}

/** Sets any text in the faces and sizes at hand. `missed` tells whether a sign had to be replaced by words or a mark. */
export interface Typesetter {
  readonly size: Sizes;
  /** the style of what explains, in small type */
  readonly small: { readonly fontSize: number; readonly color: string };
  runs(text: string): Run[];
  /** a text node of the document */
  text(text: string, style?: Omit<ContentText, 'text'>): ContentText;
  missed(): boolean;
}

export const faceName = (index: number) => `face${index}`;

/** What stands for a sign that no face holds. */
export const missingMark = '[?]';

/** Signs that people type at a bench and that few faces hold, in plain writing. */
const plainWriting: Readonly<Record<string, string>> = {
  '→': '->',
  '←': '<-',
  '✓': '(yes)',
  '✔': '(yes)',
  '✗': '(no)',
  '✘': '(no)',
  '⌀': 'Ø',
  '\u2011': '-',
  '\ufb01': 'fi',
  '\ufb02': 'fl',
};

/**
 * A typesetter over the given faces. Each character goes to the first face that holds it in every cut, so that bold
 * text never falls back where regular text does not. Throws RecordError for bytes that are not a font.
 */
export function typesetter(fonts: RecordFonts, density: Density = 'easy'): Typesetter {
  const size = sizes[density];
  if (fonts.length === 0)
    throw new RecordError('A document needs at least one type face; none was given.', 'fonts');
  const holds = fonts.map(coverage);
  const faceOf = remembering((sign) => holds.findIndex((has) => has(sign)));
  let missed = false;

  function runs(text: string): Run[] {
    const out: { text: string; face: number }[] = [];
    for (const sign of printable(text)) {
      const known = faceOf(sign) >= 0;
      const plain = known ? sign : (plainWriting[sign] ?? missingMark);
      if (plain === missingMark) missed = true;
      append(out, plain, known ? faceOf(sign) : 0);
    }
    return out.map((run) => ({ text: run.text, font: faceName(run.face) }));
  }

  return {
    size,
    small: { fontSize: size.small, color: color.soft },
    runs,
    text: (text, style = {}) => ({ text: runs(text), ...style }),
    missed: () => missed,
  };
}

/** Composed letters, and no unseen signs but the line break. */
function printable(text: string): string {
  return text
    .normalize('NFC')
    .replaceAll('\t', ' ')
    .replaceAll(/(?!\n)[\p{Cc}\p{Cf}]|\ufe0f/gu, '');
}

function append(out: { text: string; face: number }[], text: string, face: number): void {
  const last = out.at(-1);
  // a space or a line break stays with the run it follows: every face has it, and a lone one would be lost
  if (last && (last.face === face || text.trim() === '')) last.text += text;
  else out.push({ text, face });
}

function coverage(face: FontFace, index: number): (sign: string) => boolean {
  const cuts = [face.regular, face.bold, face.italic].map((bytes) => openFont(bytes, index));
  return (sign) => sign === '\n' || cuts.every((cut) => cut.hasGlyphForCodePoint(sign.codePointAt(0)!));
}

type Font = ReturnType<typeof create>;

/** Opening unpacks a face; it is done once for bytes that stay in memory. */
const opened = new WeakMap<Uint8Array, Font>();

function openFont(bytes: Uint8Array, index: number): Font {
  try {
    const font = opened.get(bytes) ?? create(bytes);
    opened.set(bytes, font);
    return font;
  } catch (cause) {
    throw new RecordError(`Face ${index + 1} is not a font that can be read: ${String(cause)}`, 'fonts');
  }
}

function remembering(work: (sign: string) => number): (sign: string) => number {
  const known = new Map<string, number>();
  return (sign) => {
    const found = known.get(sign) ?? work(sign);
    known.set(sign, found);
    return found;
  };
}
