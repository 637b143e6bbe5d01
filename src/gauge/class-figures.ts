import { type Origin, of, to } from '../quantity/index.js';
import type { Limit } from './decide.js';

/** What engines of this class usually have. Never this engine's own figure: two of equal power may differ twofold. */
export interface ClassFigure {
  readonly what: string;
  /** inches */
  readonly minIn?: number;
  readonly maxIn?: number;
  readonly source: string;
}

const noSource = 'trade judgement, no source';
const secondHand = 'public manual excerpts, read second-hand';

/** Small air-cooled single-cylinder engines of about 2 to 13 hp. */
export const classFigures = {
  boreWear: { what: 'bore wear before resizing', maxIn: 0.003, source: noSource },
  boreTaper: { what: 'bore taper', maxIn: 0.002, source: `0.05 mm on a 50 mm bore, ${secondHand}` },
  boreOutOfRound: { what: 'bore out-of-round', maxIn: 0.0015, source: noSource },
  ringGap: {
    what: 'compression ring end gap',
    minIn: 0.007,
    maxIn: 0.03,
    source: `new 0.007 in up: TM 5-4310-226-15; reject 0.030 in: ${secondHand}`,
  },
  pistonClearance: { what: 'piston skirt clearance', minIn: 0.0015, maxIn: 0.006, source: noSource },
  crankpinClearance: {
    what: 'rod big-end running clearance',
    minIn: 0.001,
    maxIn: 0.0025,
    source: secondHand,
  },
  journalWear: { what: 'crankpin under its standard size', maxIn: 0.001, source: noSource },
  journalOutOfRound: { what: 'crankpin out-of-round', maxIn: 0.0005, source: secondHand },
  guideClearance: {
    what: 'stem-to-guide clearance',
    minIn: 0.002,
    maxIn: 0.0045,
    source: 'TM 5-4310-276-14',
  },
  endPlay: { what: 'crank end play', minIn: 0.002, maxIn: 0.008, source: 'TM 5-4240-501-14P' },
  faceFlatness: { what: 'head or block face flatness', maxIn: 0.003, source: noSource },
  sideValveIntake: {
    what: 'side-valve intake clearance, cold',
    minIn: 0.005,
    maxIn: 0.007,
    source: noSource,
  },
  sideValveExhaust: {
    what: 'side-valve exhaust clearance, cold',
    minIn: 0.007,
    maxIn: 0.011,
    source: noSource,
  },
  overheadIntake: {
    what: 'overhead-valve intake clearance, cold',
    minIn: 0.0031,
    maxIn: 0.0047,
    source: `0.08 to 0.12 mm, ${secondHand}`,
  },
  overheadExhaust: {
    what: 'overhead-valve exhaust clearance, cold',
    minIn: 0.0051,
    maxIn: 0.0067,
    source: `0.13 to 0.17 mm, ${secondHand}`,
  },
} as const satisfies Readonly<Record<string, ClassFigure>>;

/** The mark that goes with every use of a class figure. */
export const notThisEngines = "typical of the class, not this engine's";

export function classOrigin({ what, source }: ClassFigure): Origin {
  return { from: 'rule of thumb', detail: `${what}: ${notThisEngines}; ${source}` };
}

/** The figure as a limit in a unit of length. */
export function classLimit(figure: ClassFigure, unit: string): Limit {
  const { minIn, maxIn } = figure;
  const inUnit = (inches: number) => to(of(inches, 'in'), unit);
  return {
    ...(minIn !== undefined && { min: inUnit(minIn) }),
    ...(maxIn !== undefined && { max: inUnit(maxIn) }),
  };
}
