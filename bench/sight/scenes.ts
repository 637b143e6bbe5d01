import { matPapers } from '../../src/sight/index.js';
import { bumps, type Dice, dice } from './random.js';
import { type Scene, type Stain, seenAt } from './render.js';
import {
  type BoltTruth,
  bolt,
  type PlateShape,
  type PlateTruth,
  plate,
  plateTruth,
  type Rgb,
  type Round,
  type Thing,
} from './things.js';

/** What a scene holds, for whoever measures how well it was read. */
export interface Truth {
  readonly plate?: PlateTruth;
  readonly bolts?: readonly BoltTruth[];
  /** a refusal is the right answer, for one of these reasons */
  readonly refuse?: readonly string[];
}
export interface Case {
  readonly name: string;
  readonly group: string;
  readonly scene: Scene;
  readonly truth: Truth;
  /** as the person would give it */
  readonly thickness?: { readonly mm: number; readonly u: number };
}

const sizes = [
  [1200, 1600],
  [1500, 2000],
  [1500, 2000],
  [1944, 2592],
] as const;

export interface CameraLimits {
  readonly size?: readonly [number, number];
  readonly mostTilt?: number;
}

/** A camera that sees the whole ring, at least 4 pixels a millimetre, and light from a flash or all round. */
export function baseScene(d: Dice, seed: number, limits: CameraLimits = {}): Scene {
  const [short, long] = limits.size ?? d.one(sizes);
  const lying = d.chance(0.4);
  const [width, height] = lying ? [long, short] : [short, long];
  const focal = d.between(0.72, 1.1) * long;
  const flashed = d.chance(0.6);
  const scene: Scene = {
    seed,
    paper: d.one(matPapers),
    width,
    height,
    lens: { focal, k1: d.between(-0.08, 0.08), x: 0.003 * long * d.normal(), y: 0.003 * long * d.normal() },
    tilt: d.between(0, limits.mostTilt ?? 30),
    towards: d.between(0, 360),
    roll: (lying ? 90 : 0) + (d.chance(0.5) ? 180 : 0) + d.between(-8, 8),
    distance: (focal * 252) / (0.93 * long),
    aim: { x: d.between(-6, 6), y: d.between(-6, 6) },
    things: [],
    stains: [],
    table: d.one([
      [0.12, 0.08, 0.05],
      [0.3, 0.3, 0.32],
      [0.05, 0.06, 0.06],
    ] as Rgb[]),
    flash: flashed ? d.between(0.6, 0.9) : d.between(0, 0.15),
    slope: flashed ? { x: 0, y: 0 } : { x: d.between(-0.3, 0.3), y: d.between(-0.3, 0.3) },
    exposure: d.between(0.75, 0.95),
    tint: [1, d.between(0.94, 1), d.between(0.8, 1)],
    blur: d.between(0.5, 1.1),
    noise: d.between(0.004, 0.014),
    quality: d.whole(86, 96),
  };
  return fitting(scene);
}

/** Steps back until the corners of the ring are in the picture. */
function fitting(scene: Scene): Scene {
  const corners = [-1, 1].flatMap((x) => [-1, 1].map((y) => ({ x: x * 97, y: y * 127, z: 0 })));
  let now = scene;
  for (let i = 0; i < 60; i += 1) {
    const inside = corners.every((corner) => {
      const { x, y } = seenAt(now, corner);
      return x > 4 && y > 4 && x < now.width - 4 && y < now.height - 4;
    });
    if (inside) return now;
    now = { ...now, distance: now.distance * 1.03 };
  }
  return now;
}

/** Fitted, and with as many pixels as four a millimetre take. */
function fineEnough(scene: Scene): Scene {
  const now = fitting(scene);
  const { lens } = now;
  const more = Math.max(1, (4.1 * now.distance) / lens.focal);
  const width = Math.ceil(now.width * more);
  const height = Math.ceil(now.height * more);
  return {
    ...now,
    width,
    height,
    lens: { ...lens, focal: more * lens.focal, x: more * lens.x, y: more * lens.y },
  };
}

const stainsOn = (d: Dice, count: number, clear: (x: number, y: number) => number): Stain[] => {
  const out: Stain[] = [];
  for (let i = 0; i < 200 && out.length < count; i += 1) {
    const stain = {
      x: d.between(-65, 65),
      y: d.between(-95, 95),
      r: d.between(2, 7),
      color: d.one([
        [0.6, 0.5, 0.35],
        [0.35, 0.3, 0.22],
        [0.8, 0.75, 0.6],
        [0.5, 0.5, 0.5],
      ] as Rgb[]),
      soft: d.between(0.5, 3),
    };
    if (clear(stain.x, stain.y) > 1.4 * stain.r + 3) out.push(stain);
  }
  return out;
};

const plateColors: readonly Rgb[] = [
  [0.05, 0.05, 0.055],
  [0.16, 0.16, 0.17],
  [0.22, 0.12, 0.05],
  [0.07, 0.16, 0.1],
  [0.25, 0.05, 0.04],
  [0.06, 0.1, 0.25],
  [0.3, 0.29, 0.27],
  [0.35, 0.27, 0.16],
];

function shapeOf(d: Dice, thickness: number): PlateShape {
  const a = d.between(22, 48);
  const b = d.between(30, 72);
  const bore = d.between(0.55, 1.2) * Math.min(a, b);
  const holes: Round[] = [];
  const ears = d.chance(0.6);
  const bolts = d.whole(3, 8);
  const hole = d.between(4.5, 11);
  const lobes: Round[] = [];
  for (let i = 0; i < bolts; i += 1) {
    const angle = (2 * Math.PI * i) / bolts + 0.3;
    const edge = Math.min(a / Math.abs(Math.cos(angle) || 1e-9), b / Math.abs(Math.sin(angle) || 1e-9));
    const far = ears ? edge + d.between(-2, 2) : edge - hole / 2 - d.between(2.5, 4);
    const x = far * Math.cos(angle) * (ears ? 0.97 : 0.94);
    const y = far * Math.sin(angle) * (ears ? 0.97 : 0.94);
    if (holes.every((other) => Math.hypot(other.x - x, other.y - y) > hole + 4)) {
      holes.push({ x, y, d: hole + (d.chance(0.2) ? d.between(-1, 1) : 0) });
      if (ears) lobes.push({ x, y, d: hole + d.between(6, 12) });
    }
  }
  if (d.chance(0.8)) {
    const middle = { x: d.between(-3, 3), y: d.between(-8, 8), d: bore };
    if (holes.every((o) => Math.hypot(o.x - middle.x, o.y - middle.y) > (o.d + bore) / 2 + 2.5))
      holes.push(middle);
  }
  const turn = d.between(-0.3, 0.3) + (d.chance(0.5) ? Math.PI : 0);
  const at = { x: d.between(-6, 6), y: d.between(-10, 10), turn };
  return { at, box: { a, b, r: d.between(2, 14) }, lobes, holes, thickness };
}

export interface PlateWishes extends CameraLimits {
  readonly thickness: readonly [number, number];
  readonly stains?: number;
}

/** A gasket, a cover or a head face; `u` of its thickness as a caliper gives it, and the true one within it. */
export function plateCase(seed: number, wishes: PlateWishes): Case {
  const d = dice(seed);
  const scene = baseScene(d, seed, wishes);
  const told = d.between(...wishes.thickness);
  const u = told > 8 ? 0.5 : Math.max(0.03, 0.03 * told);
  const thickness = Math.max(0.1, told + (told > 8 ? d.between(-0.5, 0.5) : (u / 2) * d.normal()));
  let truth: PlateTruth;
  do truth = plateTruth(shapeOf(d, thickness));
  while (!wholly(truth));
  return {
    ...lyingOn(d, seed, scene, truth, wishes.stains ?? d.whole(0, 3)),
    thickness: { mm: Math.round(told * 100) / 100, u },
  };
}

function lyingOn(d: Dice, seed: number, scene: Scene, truth: PlateTruth, stained: number): Case {
  const [r, g, b] = d.one(plateColors);
  const grain = d.between(0.02, 0.2);
  const color = (x: number, y: number): Rgb => {
    const v = 1 + grain * bumps(x / 3, y / 3, seed + 1) + 0.5 * grain * bumps(x * 1.5, y * 1.5, seed + 2);
    return [r * v, g * v, b * v];
  };
  const thing = plate(truth, {
    color,
    wall: d.between(0.5, 0.95),
    gloss: d.chance(0.3) ? d.between(0.02, 0.12) : 0,
  });
  const clear = (x: number, y: number) => truth.outline(x, y);
  return {
    name: `plate ${seed}`,
    group: truth.thickness > 8 ? 'deep plates' : 'plates',
    scene: { ...scene, things: [thing], stains: stainsOn(d, stained, clear) },
    truth: { plate: truth },
  };
}

/** A gasket whose ears stand far out of it, so that paper runs into deep and narrow inner corners. */
export function cornered(seed: number, limits: CameraLimits & { readonly stains?: number } = {}): Case {
  const d = dice(seed);
  const scene = baseScene(d, seed, limits);
  const mm = Math.round(d.between(0.4, 2.5) * 100) / 100;
  const thickness = Math.max(0.1, mm + 0.025 * d.normal());
  const [a, b] = [d.between(20, 32), d.between(30, 55)];
  const lobes: Round[] = [];
  const holes: Round[] = [];
  for (let i = 0; i < 7; i += 1) {
    const size = d.between(9, 17);
    const out = d.between(0.3, 0.97) * (size / 2);
    const along = d.between(-1, 1);
    const [x, y] = d.chance(0.6)
      ? [(d.chance(0.5) ? 1 : -1) * (a + out), along * (b - 8)]
      : [along * (a - 8), (d.chance(0.5) ? 1 : -1) * (b + out)];
    const hole = d.between(4, size - 4.5);
    if (holes.some((o) => Math.hypot(o.x - x, o.y - y) < (o.d + hole) / 2 + 4)) continue;
    lobes.push({ x, y, d: size });
    holes.push({ x, y, d: hole });
  }
  const at = { x: d.between(-5, 5), y: d.between(-8, 8), turn: d.between(-0.3, 0.3) };
  const truth = plateTruth({ at, box: { a, b, r: d.between(2, 12) }, lobes, holes, thickness });
  return {
    ...lyingOn(d, seed, scene, truth, limits.stains ?? 0),
    name: `inner corners ${seed}`,
    group: 'inner corners',
    thickness: { mm, u: 0.05 },
  };
}

/** A head gasket with a bore and six bolt holes, one of them so far off; the seed is that of camera and light. */
export function headGasket(seed: number, off: number): Case {
  const d = dice(seed);
  const at = { x: d.between(-4, 4), y: d.between(-6, 6), turn: 0.1 };
  const places = [
    [-34, 46],
    [34, 46],
    [40, 0],
    [34, -46],
    [-34, -46],
    [-40, 0],
  ] as const;
  const bolts = places.map(([x, y], i): Round => ({ x: x + (i === 1 ? off : 0), y, d: 8.6 }));
  const holes = [...bolts, { x: -2, y: 3, d: 52 }];
  const lobes = places.map(([x, y]): Round => ({ x, y, d: 18 }));
  const truth = plateTruth({ at, box: { a: 38, b: 50, r: 12 }, lobes, holes, thickness: 1.2 });
  const scene = baseScene(d, seed, { size: [900, 1200], mostTilt: 20 });
  return { ...lyingOn(d, seed, scene, truth, 0), thickness: { mm: 1.2, u: 0.05 } };
}

export const twinChanges = ['none', 'hole moved', 'hole wider', 'edge', 'turned over'] as const;
export type TwinChange = (typeof twinChanges)[number];

export interface Twins {
  readonly first: Case;
  readonly second: Case;
  /** by how much they truly differ, mm: a bump may lie hidden in an ear */
  readonly differs: number;
}

/** Two gaskets of one shape, or of two that differ by half a millimetre in one thing, each on its own photograph. */
export function twins(seed: number, change: TwinChange, limits: CameraLimits = {}): Twins {
  const d = dice(seed);
  const thickness = d.between(0.4, 1.6);
  let shape: PlateShape;
  do shape = shapeOf(d, thickness);
  while (!wholly(plateTruth(shape)) || shape.holes.length < 4);
  const one = (changed: PlateShape, n: number): Case => {
    const own = dice(seed + n);
    let truth: PlateTruth;
    do {
      const turn = own.between(-0.35, 0.35) + (own.chance(0.5) ? Math.PI : 0);
      truth = plateTruth({ ...changed, at: { x: own.between(-6, 6), y: own.between(-10, 10), turn } });
    } while (!wholly(truth));
    const told = { mm: Math.round(thickness * 100) / 100, u: 0.05 };
    return { ...lyingOn(own, seed + n, baseScene(own, seed + n, limits), truth, 0), thickness: told };
  };
  const changed = changedBy(d, shape, change);
  return { first: one(shape, 1), second: one(changed, 2), differs: differenceOf(shape, changed, change) };
}

function differenceOf(shape: PlateShape, changed: PlateShape, change: TwinChange): number {
  if (change === 'none' || change === 'turned over') return 0;
  if (change !== 'edge') return half;
  const bump = changed.lobes.at(-1)!;
  const flat = plateTruth({ ...shape, at: { x: 0, y: 0, turn: 0 } });
  return Math.max(0, flat.outline(bump.x + bump.d / 2, bump.y));
}

/** What one of two look-alikes has otherwise, mm. */
const half = 0.5;

function changedBy(d: Dice, shape: PlateShape, change: TwinChange): PlateShape {
  const turned = (round: Round): Round => ({ ...round, x: -round.x });
  const which = d.whole(0, shape.holes.length - 1);
  const angle = d.between(0, 2 * Math.PI);
  const hole = shape.holes[which]!;
  const other = (now: Round) => shape.holes.map((each, i) => (i === which ? now : each));
  switch (change) {
    case 'none':
      return shape;
    case 'hole moved':
      return {
        ...shape,
        holes: other({ ...hole, x: hole.x + half * Math.cos(angle), y: hole.y + half * Math.sin(angle) }),
      };
    case 'hole wider':
      return { ...shape, holes: other({ ...hole, d: hole.d + half }) };
    case 'edge':
      return {
        ...shape,
        lobes: [...shape.lobes, { x: shape.box.a - 20 + half, y: d.between(-0.2, 0.2) * shape.box.b, d: 40 }],
      };
    case 'turned over':
      return { ...shape, lobes: shape.lobes.map(turned), holes: shape.holes.map(turned) };
  }
}

/** inside the white middle with 6 mm to spare */
function wholly({ outline }: PlateTruth): boolean {
  for (let x = -66; x <= 66; x += 2) if (outline(x, -96) < 0 || outline(x, 96) < 0) return false;
  for (let y = -96; y <= 96; y += 2) if (outline(-66, y) < 0 || outline(66, y) < 0) return false;
  return true;
}

const threads = [
  { d: 5, flats: 8, head: 3.5 },
  { d: 6, flats: 10, head: 4 },
  { d: 8, flats: 13, head: 5.3 },
  { d: 10, flats: 16, head: 6.4 },
] as const;
const boltColors: readonly Rgb[] = [
  [0.09, 0.09, 0.1],
  [0.22, 0.22, 0.23],
  [0.3, 0.27, 0.18],
  [0.33, 0.33, 0.34],
];

export function boltCase(seed: number, limits: CameraLimits = {}): Case {
  const d = dice(seed);
  const scene = baseScene(d, seed, limits);
  const bolts: BoltTruth[] = [];
  const wanted = d.whole(1, 8);
  for (let i = 0; i < 400 && bolts.length < wanted; i += 1) {
    const thread = d.one(threads);
    const truth: BoltTruth = {
      x: d.between(-58, 58),
      y: d.between(-88, 88),
      turn: d.between(0, 2 * Math.PI),
      length: d.one([16, 20, 25, 30, 35, 40, 45, 50, 60, 70]),
      d: thread.d - d.between(0.02, 0.15),
      flats: thread.flats - d.between(0.02, 0.2),
      head: thread.head,
      round: false,
    };
    if (
      ends(truth).every(({ x, y }) => Math.abs(x) < 62 && Math.abs(y) < 92) &&
      bolts.every((o) => apart(o, truth))
    )
      bolts.push(truth);
  }
  const color = d.one(boltColors);
  const gloss = d.between(0, 0.25);
  const things: Thing[] = bolts.map((truth) => bolt(truth, { color, gloss }));
  const clear = (x: number, y: number) =>
    Math.min(...bolts.flatMap((b) => along(b).map((p) => Math.hypot(p.x - x, p.y - y) - b.flats)));
  return {
    name: `bolts ${seed}`,
    group: 'bolts',
    scene: { ...scene, things, stains: stainsOn(d, d.whole(0, 2), clear) },
    truth: { bolts },
  };
}

const point = (b: BoltTruth, s: number) => ({ x: b.x + s * Math.cos(b.turn), y: b.y + s * Math.sin(b.turn) });
const ends = (b: BoltTruth) => [point(b, -b.head - b.flats), point(b, b.length + 4)];
const along = (b: BoltTruth) =>
  Array.from({ length: 12 }, (_, i) => point(b, -b.head + (i / 11) * (b.length + b.head)));
const apart = (a: BoltTruth, b: BoltTruth) =>
  along(a).every((p) =>
    along(b).every((q) => Math.hypot(p.x - q.x, p.y - q.y) > 0.7 * (a.flats + b.flats) + 6),
  );

const otherSizes = [
  [900, 1200],
  [900, 1200],
  [1200, 1600],
] as const;

const otherColors: readonly Rgb[] = [
  [0.52, 0.52, 0.5],
  [0.44, 0.43, 0.4],
  [0.5, 0.4, 0.26],
  [0.025, 0.025, 0.028],
  [0.04, 0.042, 0.045],
  [0.3, 0.3, 0.31],
  [0.4, 0.4, 0.41],
  [0.4, 0.22, 0.12],
];

/** The same kind of scene by another camera, other light and another material than those of `plateCase`. */
export function otherLook(seed: number): Case {
  const d = dice(seed ^ 0x2f6e2b1);
  const deep = d.chance(0.2);
  const from = plateCase(seed, { thickness: deep ? [10, 15] : [0.4, 3], size: d.one(otherSizes) });
  const plateOf = from.truth.plate!;
  const [r, g, b] = d.one(otherColors);
  const grain = d.between(0.01, 0.25);
  const metal = r > 0.28 && r < 0.42 && d.chance(0.7);
  const fine = d.between(0.4, 4);
  const color = (x: number, y: number): Rgb => {
    const v = 1 + grain * bumps(x / fine, y / fine, seed + 1);
    return [r * v, g * v, b * v];
  };
  const look = { color, wall: d.between(0.35, 1), gloss: metal ? d.between(0.1, 0.3) : d.between(0, 0.08) };
  const { scene } = from;
  const flashed = d.chance(0.7);
  return {
    ...from,
    name: `other ${seed}`,
    group: 'other looks',
    scene: fineEnough({
      ...scene,
      things: [plate(plateOf, look)],
      aim: { x: d.between(-14, 14), y: d.between(-14, 14) },
      roll: scene.roll + (d.chance(0.5) ? 180 : 0) + d.between(-6, 6),
      flash: flashed ? d.between(0.5, 1) : d.between(0, 0.2),
      slope: flashed ? { x: 0, y: 0 } : { x: d.between(-0.5, 0.5), y: d.between(-0.4, 0.4) },
      exposure: d.between(0.4, 1.08),
      tint: [d.between(0.85, 1), d.between(0.9, 1), d.between(0.7, 1)],
      blur: d.between(0.3, 1.5),
      noise: d.between(0.001, 0.025),
      quality: d.whole(72, 98),
      develop: {
        mixedInFile: d.chance(0.4),
        sharpen: d.chance(0.5) ? d.between(0.1, 0.8) : 0,
        contrast: d.chance(0.5) ? d.between(0, 0.35) : 0,
        vignette: d.between(0, 0.35),
        chroma: d.one(['4:2:0', '4:4:4']),
      },
    }),
  };
}
