import type { Quantity } from '../quantity/index.js';
import type { Body, Entry, EntryKind, RawEntry, Stage, Written } from './entry.js';

/** One line of the log as the reader sees it. */
export interface LogLine {
  readonly entry: RawEntry;
  /** the strike that stands against it, if any */
  readonly struck?: {
    readonly by: string;
    readonly at: string;
    readonly reason: string;
    readonly entry: string;
  };
  /** the typed entry; absent when this version does not know the kind: kept and shown, never dropped */
  readonly known?: Entry;
}

/** The number of a bolt wherever it is named; of a joint that nobody laid out, the hole's. */
export const boltOf = ({ bolt, hole }: Body<'torque'>): number => bolt ?? hole;

/** A body with the entry it came from, so that every number on a screen can show its origin. */
export type From<K extends EntryKind> = Body<K> & {
  readonly entry: string;
  readonly at: string;
  readonly by: string;
};

/** The latest state of the facts told at intake, each with the entry that said it. */
export type IntakeFacts = Body<'intake'>;

/**
 * A job, computed from its log by `fold`. Nothing here is stored. Keyed collections (parts, steps, joints, specs)
 * hold the latest standing entry of each handle; lists hold every standing entry in order.
 */
export interface Job {
  readonly id: string;
  readonly tag: number;
  readonly title: string;
  readonly invented: boolean;
  readonly opened?: string;
  readonly lastAt?: string;
  readonly log: readonly LogLine[];
  readonly intake: IntakeFacts;
  /** which entry said each intake fact last */
  readonly intakeFrom: Readonly<Partial<Record<keyof IntakeFacts, string>>>;
  readonly identities: readonly From<'identity'>[];
  readonly specs: ReadonlyMap<string, From<'spec'>>;
  readonly observations: readonly From<'observation'>[];
  readonly measurements: readonly From<'measurement'>[];
  readonly photographs: readonly From<'photograph'>[];
  readonly decisions: readonly From<'decision'>[];
  readonly parts: ReadonlyMap<string, From<'part'>>;
  readonly offers: ReadonlyMap<string, From<'offer'>>;
  /** by component: what the taking apart must reach */
  readonly goals: ReadonlyMap<string, From<'goal'>>;
  /** how this engine differs from the catalog's graph, in the order told */
  readonly differs: readonly From<'differs'>[];
  readonly cleanings: ReadonlyMap<string, From<'cleaning'>>;
  readonly recordings: ReadonlyMap<string, From<'recording'>>;
  /** in the order in which each step was first logged */
  readonly steps: ReadonlyMap<string, From<'step'>>;
  readonly joints: ReadonlyMap<string, From<'joint'>>;
  readonly torques: readonly From<'torque'>[];
  readonly runUp: ReadonlyMap<string, From<'run-up'>>;
  readonly stages: ReadonlyMap<Stage, From<'stage'>>;
  readonly notes: readonly From<'note'>[];
  readonly spokenNotes: readonly From<'spoken-note'>[];
  readonly handOver?: From<'hand-over'>;
}

/** The shop, computed from its own log. */
export interface Shop {
  readonly log: readonly LogLine[];
  readonly wrenches: readonly From<'wrench'>[];
  readonly instruments: readonly From<'instrument'>[];
  readonly suppliers: readonly From<'supplier'>[];
  readonly places: readonly From<'place'>[];
  /** catalog packs of the shop's own */
  readonly packs: readonly From<'pack'>[];
  /** by job: whether it counts among the shop's own frequencies; every finished job does unless this says no */
  readonly learning: ReadonlyMap<string, From<'learning'>>;
  readonly settings: Readonly<Partial<Record<Body<'setting'>['key'], string>>>;
}

/** The quantity that a written number stands for. */
export function quantityOf(w: Written): Quantity {
  return { kind: w.kind, si: w.si, unit: w.unit, written: w.written };
}
