import type { Facts } from '../../catalog/index.js';

/** What is known of a machine before anything is looked at. */
export interface MachineFacts extends Facts {
  readonly fuelLeftIn?: string | undefined;
}

/** A check that was made. */
export interface SeenCheck {
  readonly check: string;
  /** the catalog's ids or its words */
  readonly outcomes: readonly string[];
  /**
   * For a ladder read by an instrument: how strongly the reading speaks for each outcome, by its id, in place of one
   * outcome taken for certain. Only their proportions matter; an outcome left out was ruled out.
   */
  readonly weights?: Readonly<Record<string, number>>;
  readonly doubtful?: boolean | undefined;
  /** ISO time; decides which repairs came before and which of two readings counts */
  readonly at: string;
}

export interface Repair {
  readonly fault: string;
  readonly at: string;
}

/** What else the log says of a machine. */
export interface CaseHistory {
  /** complaint ids of the catalog; one that was not said says nothing */
  readonly complaints?: readonly string[];
  /** faults found by looking */
  readonly confirmed?: readonly string[];
  /** faults ruled out by looking */
  readonly excluded?: readonly string[];
  readonly repairs?: readonly Repair[];
  /** whether it ran when somebody last tried, where no check says so */
  readonly tried?: 'yes' | 'no' | undefined;
  /** the shop's own frequencies, 0 … 1, in place of the catalog's, by fault; before the facts of the machine shift them */
  readonly frequencies?: ReadonlyMap<string, number>;
}
