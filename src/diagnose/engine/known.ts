import type { MachineFacts, Repair, SeenCheck } from '../machine/case.js';

/** Somebody said or showed that a piece is there, or is not. */
export interface PieceTold {
  readonly piece: string;
  readonly fitted: boolean;
  /** how it is known: "said to be not there", "it was taken off", "on the maker’s sheet" */
  readonly why: string;
}

/** All that is known of one engine, from whatever log or file; everything else of it is worked out. */
export interface KnownOfEngine {
  readonly facts: MachineFacts;
  /** checks made, in the order made */
  readonly seen: readonly SeenCheck[];
  readonly complaints?: readonly string[];
  /** faults that are there and not repaired */
  readonly confirmed?: readonly string[];
  readonly excluded?: readonly string[];
  readonly repairs?: readonly Repair[];
  /** in the order told: the last word of a piece counts */
  readonly told?: readonly PieceTold[];
  /** components that are off now */
  readonly off?: ReadonlySet<string>;
  /** when fuel or oil was last filled in */
  readonly filled?: Readonly<Partial<Record<'fuel' | 'oil', string>>>;
  /** pieces of which new ones were put in */
  readonly renewed?: ReadonlySet<string>;
  /** pieces that were off at some time of this job */
  readonly opened?: ReadonlySet<string>;
  /** when it last ran */
  readonly ranAt?: string;
  /** whether it runs, where someone said so outright */
  readonly runs?: 'yes' | 'no' | 'unknown';
}
