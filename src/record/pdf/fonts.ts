/** The bytes of one type face in the three cuts the documents use (TrueType, OpenType or WOFF). */
export interface FontFace {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
  readonly italic: Uint8Array;
}

/**
 * The faces in order of preference: a character is set in the first one that holds it. The record's own face comes
 * in two subsets and lacks Ω, ≥, ″ and all letters beyond Latin; the last face is there for those.
 */
export type RecordFonts = readonly FontFace[];

const own = (subset: string) => ({
  regular: `atkinson-hyperlegible-next-${subset}-400-normal.woff`,
  bold: `atkinson-hyperlegible-next-${subset}-700-normal.woff`,
  italic: `atkinson-hyperlegible-next-${subset}-400-italic.woff`,
});

/** File names of the faces that are shipped with the program, for whoever reads them from disk. */
const fontFiles = [
  own('latin'),
  own('latin-ext'),
  { regular: 'Roboto-Regular.ttf', bold: 'Roboto-Medium.ttf', italic: 'Roboto-Italic.ttf' },
] as const;

/** The shipped faces, each file read by the caller's own means. */
export async function readFonts(
  read: (file: string) => Promise<Uint8Array> | Uint8Array,
): Promise<RecordFonts> {
  return Promise.all(
    fontFiles.map(async (face) => ({
      regular: await read(face.regular),
      bold: await read(face.bold),
      italic: await read(face.italic),
    })),
  );
}
