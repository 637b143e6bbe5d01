/** A line of a straightened page as a reader of letters took it. */
export interface PageLine {
  readonly text: string;
  /** pixels of the straightened page */
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly words: readonly { readonly text: string; readonly sure: number }[];
}

export interface PageRefusal {
  readonly why: string;
  readonly do: string;
}

/** Under this on the average, letters are guessed: stamped and worn plates come out so, printed ones above 90. */
const leastSure = 75;

/**
 * Why a page as it was read is not worth looking through, or undefined where it is. `sure` is 0 to 100 a word; words of
 * several letters count, each by its length.
 */
export function pageRefusal(lines: readonly PageLine[], hasEdges: boolean): PageRefusal | undefined {
  const words = lines.flatMap((line) => line.words).filter(({ text }) => /[\p{L}\d]/u.test(text));
  const letters = words.reduce((sum, { text }) => sum + text.length, 0);
  const edges = hasEdges
    ? ''
    : ' Lay it on something darker or brighter, with all four corners in the picture.';
  if (letters === 0)
    return {
      why: 'No printed letters are seen in this picture.',
      do: `Hold the camera straight above, nearer.${edges}`,
    };
  const sure = words.reduce((sum, word) => sum + word.sure * word.text.length, 0) / letters;
  if (sure >= leastSure) return undefined;
  return {
    why: 'These letters cannot be read with any certainty: stamped, worn, blurred or too small.',
    do: `Type what stands there. For another try: light from one side, straight above, as near as it is still sharp.${edges}`,
  };
}
