/**
 * The service record as plain data: what a page says, not how it looks. The PDF is drawn from it, the web can show
 * the same, and tests read it.
 */
/** How much is said: every word that was logged, or what fits a customer's two pages. */
export type Detail = 'full' | 'brief';

export interface RecordContent {
  readonly detail: Detail;
  readonly head: Head;
  readonly sections: readonly Section[];
  readonly foot: Foot;
}

export interface Head {
  readonly tag: number;
  readonly title: string;
  /** "Water pump, overhead-valve engine" */
  readonly machine: string;
  readonly shopName: string;
  readonly shopAddress: string;
  readonly facts: readonly Fact[];
  readonly invented: boolean;
}

export interface Foot {
  readonly tag: string;
  readonly printed: string;
}

export interface Section {
  readonly id: SectionId;
  readonly title: string;
  /** the whole width, or a column: sections between two whole ones share two columns */
  readonly place: 'full' | 'column';
  readonly blocks: readonly Block[];
}

/** In the order in which they are printed. */
export const sectionIds = [
  'summary',
  'open',
  'machine',
  'complaint',
  'findings',
  'decisions',
  'work',
  'parts',
  'charge',
  'specs',
  'measurements',
  'torques',
  'photographs',
  'run-up',
  'advice',
  'next',
  'signature',
] as const;
export type SectionId = (typeof sectionIds)[number];

/** Signs stand beside a word, never alone. */
export type Sign = 'pass' | 'fail' | 'cannot-decide';
export interface Verdict {
  readonly sign: Sign;
  readonly word: string;
}

/** A label, what is so, and where that comes from. */
export interface Fact {
  readonly label: string;
  readonly value: string;
  readonly origin?: string;
}

export interface Cell {
  readonly text: string;
  readonly strong?: boolean;
  /** smaller, under the text: place, origin, conditions */
  readonly sub?: string;
  readonly verdict?: Verdict;
  /** a warning in words: "doubtful" */
  readonly care?: string;
}

export interface Item {
  readonly lead?: string;
  readonly words: string;
  /** a warning in words, as in a cell */
  readonly care?: string;
  readonly verdict?: Verdict;
  readonly origin?: string;
}

export type Block =
  | { readonly type: 'words'; readonly words: string; readonly soft?: boolean }
  | { readonly type: 'quote'; readonly words: string; readonly by: string }
  | { readonly type: 'facts'; readonly facts: readonly Fact[] }
  | { readonly type: 'list'; readonly items: readonly Item[] }
  | {
      readonly type: 'trio';
      readonly parts: readonly { readonly title: string; readonly lines: readonly string[] }[];
    }
  | Table
  | JointBlock
  | BoreBlock
  | PicturesBlock
  | Box
  | SpeedsBlock
  | { readonly type: 'signature'; readonly lines: readonly string[]; readonly words: string };

export interface Table {
  readonly type: 'table';
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  /** verdicts stand beside their numbers, not under them */
  readonly inline?: boolean;
}
export interface Column {
  readonly title: string;
  /** share of the width */
  readonly share: number;
  readonly figures?: boolean;
}

/** What must not be overlooked: `care` comes back or waits, `stop` is unsafe. */
export interface Box {
  readonly type: 'box';
  readonly tone: 'care' | 'stop';
  readonly title: string;
  readonly items: readonly Item[];
}

export interface JointBlock {
  readonly type: 'joint';
  /** two stand side by side */
  readonly half: boolean;
  readonly name: string;
  readonly holes: readonly Hole[];
  readonly bottomEdge?: string;
  readonly facts: readonly Fact[];
  readonly verdict: Verdict;
}
export interface Hole {
  readonly xMm: number;
  readonly yMm: number;
  readonly number: number;
  /** places in the tightening order, from 1; none when the order leaves it out */
  readonly turns: readonly number[];
  readonly state: 'clicked' | 'not-complete' | 'failed';
}

/** The bore as each direction saw it: the wall's shift from standard is drawn large, the diameter stands at its height. */
export interface BoreBlock {
  readonly type: 'bore';
  readonly half: boolean;
  readonly name: string;
  /** in which the diameters stand */
  readonly unit: string;
  readonly panels: readonly BorePanel[];
  /** most that is allowed over standard, in the same unit as the growth */
  readonly bound?: number;
  /** the size that the growth is counted from */
  readonly standard: number;
  readonly facts: readonly Fact[];
}
export interface BorePanel {
  readonly direction: string;
  /** from the top down */
  readonly walls: readonly { readonly height: string; readonly text: string; readonly growth: number }[];
}

export interface PicturesBlock {
  readonly type: 'pictures';
  readonly groups: readonly PictureGroup[];
  /** under the pictures: how many more there are, and films */
  readonly more: string;
}
/** One picture, or the same thing before and after. */
export interface PictureGroup {
  readonly about: string;
  readonly pictures: readonly RecordedPicture[];
}
export interface RecordedPicture {
  readonly sha256: string;
  readonly label: string;
  readonly caption: string;
  readonly width: number;
  readonly height: number;
}

/** Engine speed over time out of recordings, all against one scale. */
export interface SpeedsBlock {
  readonly type: 'speeds';
  readonly curves: readonly SpeedCurve[];
}
export interface SpeedCurve {
  readonly label: string;
  readonly seconds: number;
  /** in time order; a gap in what was heard parts the curve */
  readonly points: readonly { readonly t: number; readonly rpm: number }[];
}
