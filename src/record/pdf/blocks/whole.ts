/**
 * A row or block is kept on one page only while it is sure to fit there: the PDF library drops what is taller than a
 * page and may not be broken.
 */
const longestWhole = 1200;

export function staysWhole(texts: readonly (string | undefined)[]): boolean {
  return texts.reduce((sum, text) => sum + (text?.length ?? 0), 0) <= longestWhole;
}
