import { applies, type Catalog, type Measurement } from '../../../catalog/index.js';
import type { Job } from '../../../job/index.js';

/** What a mechanic is working on when a reading is taken. Every measure of the catalog has its place; a test holds it to that. */
export const measureGroups: readonly { readonly title: string; readonly measures: readonly string[] }[] = [
  {
    title: 'Cylinder, piston, rings',
    measures: [
      'bore-diameter',
      'bore-taper',
      'bore-out-of-round',
      'oversize-stamp',
      'piston-skirt-clearance',
      'ring-end-gap',
      'ring-side-clearance',
      'piston-pin-clearance',
    ],
  },
  {
    title: 'Crankshaft, rod, bearings',
    measures: [
      'crankpin-diameter',
      'crankpin-out-of-round',
      'rod-running-clearance',
      'rod-side-play',
      'crankshaft-end-play',
      'crankshaft-run-out',
      'main-journal-clearance',
      'flywheel-taper-contact',
    ],
  },
  {
    title: 'Valves and cam',
    measures: [
      'valve-clearance-side-valve',
      'valve-clearance-overhead-valve',
      'clearance-check-position',
      'valve-seat-width',
      'valve-margin',
      'stem-to-guide-clearance',
      'valve-spring-length',
      'cam-lobe-height',
    ],
  },
  { title: 'Faces', measures: ['head-flatness', 'carburetor-flange-flatness'] },
  {
    title: 'Spark',
    measures: ['coil-air-gap', 'coil-resistance', 'points-gap', 'condenser-capacitance', 'spark-plug-gap'],
  },
  {
    title: 'Squeeze and leaks',
    measures: ['compression', 'leak-down', 'crankcase-vacuum', 'sealed-case-hold'],
  },
  { title: 'Fuel', measures: ['float-level', 'fuel-flow'] },
  {
    title: 'Running',
    measures: ['governed-top-speed', 'governed-idle-speed', 'head-temperature'],
  },
  { title: 'Bolts', measures: ['torque-reading', 'blade-bolt-torque'] },
];

/** One measure with the words by which a person may look for it. */
export interface Findable {
  readonly measure: Measurement;
  /** false when it does not belong to this kind of engine as written down */
  readonly fits: boolean;
  readonly text: string;
}

/** Shorter than the catalog's name, where that says how as well as what. */
export function shortName({ id, name }: Pick<Measurement, 'id' | 'name'>): string {
  return id === 'bore-diameter' ? 'Bore, at heights and directions' : name;
}

export function findable({ measurements, specs }: Catalog, job: Job): Findable[] {
  return measurements.map((measure) => ({
    measure,
    fits: applies(measure.when, job.intake) !== 'no',
    text: [
      measure.name,
      measure.id.replaceAll('-', ' '),
      measure.decision,
      ...measure.instruments.map((i) => i.name),
      ...(measure.components ?? []).map((c) => c.replaceAll('-', ' ')),
      ...[measure.spec, measure.rejectSpec].flatMap((id) => specs.find((s) => s.id === id)?.spellings ?? []),
    ]
      .join(' ')
      .toLowerCase(),
  }));
}

/** Those that have every word typed. */
export function found(all: readonly Findable[], typed: string): Findable[] {
  const words = typed
    .trim()
    .toLowerCase()
    .split(/[\s,-]+/)
    .filter(Boolean);
  return all.filter(({ text }) => words.every((word) => text.includes(word)));
}
