import type { Catalog } from '../../catalog/index.js';
import type { Body, EntryKind } from '../entry.js';
import type { IntakeFacts } from '../job.js';

/** What a body says that cannot be so: in which field, in words. */
export interface Broken {
  readonly field: string;
  readonly words: string;
}

/** What is known beside the line: the facts of the job that it is written to, and the catalog. */
export interface RuleContext {
  readonly facts: IntakeFacts;
  readonly catalog: Catalog;
}

/** Holds of a line by itself; for whoever reads a log as well as for whoever writes it. */
export type Rule<K extends EntryKind> = (body: Body<K>) => Broken | undefined;
/** Holds of a line on this engine: asked where it is written, never where an older log is read. */
export type RuleHere<K extends EntryKind> = (body: Body<K>, context: RuleContext) => Broken | undefined;
