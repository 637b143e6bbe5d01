import type { Typesetter } from '../typesetter.js';

/** What the drawing of a block needs to know. */
export interface Setting {
  readonly type: Typesetter;
  /** points */
  readonly width: number;
  /** by hash: a name in the document's files, or why the picture cannot be printed */
  readonly pictures: ReadonlyMap<string, { readonly name: string } | { readonly problem: string }>;
}
