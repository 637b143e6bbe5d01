/** What a bundle would do to one job. */
export interface PlannedJob {
  readonly job: string;
  readonly tag?: number;
  readonly title?: string;
  /** lines that are not here yet, and lines that are */
  readonly fresh: number;
  readonly known: number;
  /** whether the job is here already: lines are then added to it only by a yes */
  readonly here: boolean;
  /** whether its lines are the very ones, and the first ones, that were kept here */
  readonly asKept: boolean;
}

/** What a bundle would do, were it taken in. */
export interface ImportPlan {
  readonly jobs: readonly PlannedJob[];
  /** lines of the shop's own log: its name, tools, packs; taken only by a yes */
  readonly shopLines: { readonly fresh: number; readonly known: number };
  readonly pictures: number;
  /** of spoken notes, where there are any */
  readonly sounds?: number;
  /** of the bundle's lines */
  readonly digest: string;
}
