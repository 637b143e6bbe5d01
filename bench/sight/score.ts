import type { Seen } from '../../src/sight/index.js';
import type { Case } from './scenes.js';

/** How far off one scene was read; lengths in millimetres. */
export interface Score {
  readonly name: string;
  readonly refused?: string;
  /** every two holes: seen less true distance */
  readonly distances: number[];
  readonly diameters: number[];
  /** of each hole: error of x, y and d over the stated ± */
  readonly overStated: number[];
  /** of each place of the outline */
  readonly outline: number[];
  /** the longest stretch of it off by more than 0.25 mm */
  readonly worstRun: number;
  readonly missed: number;
  readonly invented: number;
  readonly lengths: number[];
  readonly boltDiameters: number[];
  readonly wrongClass: number;
  readonly boltsOverStated: number[];
}

export function score({ name, truth }: Case, seen: Seen): Score {
  const out: Score = {
    name,
    ...(seen.refused && { refused: seen.refused.kind }),
    distances: [],
    diameters: [],
    overStated: [],
    outline: [],
    worstRun: 0,
    missed: 0,
    invented: 0,
    lengths: [],
    boltDiameters: [],
    wrongClass: 0,
    boltsOverStated: [],
  };
  if (seen.refused) return out;
  if (truth.plate && seen.plate) return plateScore(out, truth.plate, seen.plate);
  if (truth.bolts && seen.bolts) return boltScore(out, truth.bolts, seen.bolts);
  return out;
}

function plateScore(
  out: Score,
  truth: NonNullable<Case['truth']['plate']>,
  plate: NonNullable<Seen['plate']>,
): Score {
  const pairs = truth.holes.flatMap((hole) => {
    const found = plate.holes.find((each) => Math.hypot(each.x - hole.x, each.y - hole.y) < 2);
    return found ? [{ hole, found }] : [];
  });
  for (const [i, a] of pairs.entries()) {
    out.diameters.push(a.found.d - a.hole.d);
    for (const key of ['x', 'y', 'd'] as const)
      out.overStated.push(Math.abs(a.found[key] - a.hole[key]) / a.found.u);
    for (const b of pairs.slice(i + 1)) {
      const seen = Math.hypot(a.found.x - b.found.x, a.found.y - b.found.y);
      out.distances.push(seen - Math.hypot(a.hole.x - b.hole.x, a.hole.y - b.hole.y));
    }
  }
  let run = 0;
  let worstRun = 0;
  for (const [i, a] of plate.outline.entries()) {
    const b = plate.outline[(i + 1) % plate.outline.length]!;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const steps = Math.max(1, Math.round(length / 0.2));
    for (let k = 0; k < steps; k += 1) {
      const miss = truth.outline(a.x + ((b.x - a.x) * k) / steps, a.y + ((b.y - a.y) * k) / steps);
      out.outline.push(miss);
      run = Math.abs(miss) > 0.25 ? run + length / steps : 0;
      worstRun = Math.max(worstRun, run);
    }
  }
  return {
    ...out,
    worstRun,
    missed: truth.holes.length - pairs.length,
    invented: plate.holes.length - pairs.length,
  };
}

const classes = [4, 5, 6, 8, 10, 12];
const classOf = (d: number) => classes.reduce((a, b) => (Math.abs(b - d) < Math.abs(a - d) ? b : a));

function boltScore(
  out: Score,
  truth: NonNullable<Case['truth']['bolts']>,
  bolts: NonNullable<Seen['bolts']>,
): Score {
  let wrongClass = 0;
  let matched = 0;
  for (const bolt of truth) {
    const half = (bolt.length - bolt.head) / 2;
    const x = bolt.x + half * Math.cos(bolt.turn);
    const y = bolt.y + half * Math.sin(bolt.turn);
    const found = bolts.find((each) => Math.hypot(each.x - x, each.y - y) < 6);
    if (!found) continue;
    matched += 1;
    out.lengths.push(found.length - bolt.length);
    out.boltDiameters.push(found.d - bolt.d);
    out.boltsOverStated.push(
      Math.abs(found.length - bolt.length) / found.u,
      Math.abs(found.d - bolt.d) / found.uDiameter,
    );
    if (classOf(found.d) !== classOf(bolt.d)) wrongClass += 1;
  }
  return { ...out, wrongClass, missed: truth.length - matched, invented: bolts.length - matched };
}

const share = (values: readonly number[], p: number) =>
  [...values].map(Math.abs).sort((a, b) => a - b)[
    Math.min(values.length - 1, Math.floor(p * values.length))
  ] ?? Number.NaN;

export function table(title: string, scores: readonly Score[]): string {
  const all = <
    K extends
      | 'distances'
      | 'diameters'
      | 'outline'
      | 'lengths'
      | 'boltDiameters'
      | 'overStated'
      | 'boltsOverStated',
  >(
    key: K,
  ) => scores.flatMap((each) => each[key]);
  const mm = (values: readonly number[]) =>
    `95 % ${share(values, 0.95).toFixed(3)}, worst ${share(values, 1).toFixed(3)} (${values.length})`;
  const covered = (values: readonly number[]) =>
    `${((100 * values.filter((v) => v <= 1).length) / values.length).toFixed(1)} % of ${values.length}`;
  const lines = [
    `${title}: ${scores.length} scenes, refused ${
      scores
        .filter((s) => s.refused)
        .map((s) => `${s.name} (${s.refused})`)
        .join(', ') || 'none'
    }`,
    `  holes missed ${sum(scores, 'missed')}, invented ${sum(scores, 'invented')}`,
  ];
  if (all('diameters').length > 0)
    lines.push(
      `  center to center ${mm(all('distances'))}`,
      `  diameter ${mm(all('diameters'))}`,
      `  outline ${mm(all('outline'))}, longest run over 0.25: ${Math.max(...scores.map((s) => s.worstRun)).toFixed(2)}`,
      `  within the stated ±: ${covered(all('overStated'))}`,
    );
  if (all('lengths').length > 0)
    lines.push(
      `  length ${mm(all('lengths'))}`,
      `  diameter ${mm(all('boltDiameters'))}, wrong class ${sum(scores, 'wrongClass')}`,
      `  within the stated ±: ${covered(all('boltsOverStated'))}`,
    );
  return lines.join('\n');
}

const sum = (scores: readonly Score[], key: 'missed' | 'invented' | 'wrongClass') =>
  scores.reduce((total, each) => total + each[key], 0);
