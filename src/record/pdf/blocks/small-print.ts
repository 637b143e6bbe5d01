import type { Content } from 'pdfmake/interfaces.js';
import type { Typesetter } from '../typesetter.js';

/** What explains a text, in small type behind it: origin, place, conditions. */
export function explanation(words: string | undefined, type: Typesetter): Content[] {
  return words ? type.runs(`  ${words}`).map((run) => ({ ...run, ...type.small })) : [];
}
