import { type Camera, pixelsPerMm, project, type Spot, standpoint } from '../camera/camera.js';
import { erf } from '../camera/crossing.js';
import type { Bead } from '../contours.js';
import type { Ground } from '../ground.js';
import type { Place } from '../mat/mat.js';
import { type Color, type Material, mixing } from '../material.js';
import { full, lightAt, linear, type Picture } from '../picture.js';

/** One place of a material’s edge, refined below a pixel. */
export interface EdgePoint extends Place {
  /** from material to paper, as seen on the mat */
  readonly nx: number;
  readonly ny: number;
  /** of the edge’s upper rim and its foot which one is seen here: the wall faces away from the camera, or towards it */
  readonly rim: 'top' | 'foot' | 'either';
  /** on the paper’s side, and on the material’s: 1 is bare paper, 0 the material’s middle color */
  readonly paper: number;
  readonly material: number;
  /** false where no single step was seen: a corner, another edge close by, dirt */
  readonly clean: boolean;
}

export interface EdgeReader {
  readonly picture: Picture;
  readonly camera: Camera;
  readonly eye: Spot;
  readonly ground: Ground;
  readonly colorAt: Material['colorAt'];
  /** standard deviation of the blur, pixels */
  readonly blur: number;
  /** height of the upper rim, millimetres */
  readonly height: number;
  /** of a round thing: so much of its width at the edge turns away and is of another brightness, millimetres */
  readonly limb: number;
}

export function edgeReader(
  picture: Picture,
  solved: { readonly camera: Camera; readonly blur: number },
  ground: Ground,
  colorAt: Material['colorAt'],
  { height = 0, limb = 0 },
): EdgeReader {
  const { camera } = solved;
  const blur = Math.max(sharpest, solved.blur);
  return { picture, camera, eye: standpoint(camera), ground, colorAt, blur, height, limb };
}

/** pixels: no file shows a sharper edge between its pixels, however much a camera sharpened it */
const sharpest = 0.45;

const plateau = 0.5;
const spacing = 0.07;

/** The edge near a bead, from the light along a line across it. Undefined where the line leaves the picture’s sense. */
export function refineEdge(reader: EdgeReader, bead: Bead): EdgePoint | undefined {
  const { eye, camera } = reader;
  const sigma = reader.blur / pixelsPerMm(camera, bead);
  const reach = Math.max(0.6, 3 * sigma);
  const away = bead.nx * (bead.x - eye.x) + bead.ny * (bead.y - eye.y);
  // seen from above, the upper rim stands off its foot by this, across the edge
  const lean = (away * reader.height) / (eye.z - reader.height);
  const rim = Math.abs(lean) < 0.03 ? 'either' : away > 0 ? 'top' : 'foot';
  const wall = rim === 'foot' ? -lean : reader.limb;
  // beside a broad wall its own brightness is what meets the paper; a narrow one is looked across, to the face
  const broad = wall > reach + plateau;
  const inner = broad ? reach : reach + wall;
  const profile = profileAt(reader, bead, -inner - plateau, reach + plateau);
  const material = middleOf(profile, -inner - plateau, -inner);
  const gap = gapIn(profile, reach);
  if (gap) return acrossGap(profile, { bead, rim, material, sigma, gap });
  const paper = middleOf(profile, reach, reach + plateau);
  if (paper - material < 0.2) return { ...place(bead, 0), rim, paper, material, clean: false };
  const { at, strip } =
    wall > 0.6 * sigma && !broad
      ? withWall(profile, { paper, material, wall, sigma, limb: reader.limb })
      : { at: byArea(profile, { paper, material, reach, inner }), strip: 0 };
  // the limb of a round thing darkens by degrees and has no width of its own
  const drawn =
    reader.limb > 0
      ? { at, paper, material: material + strip, sigma }
      : { at, paper, material, sigma, wall, strip };
  const clean = Math.abs(at) < 0.5 && Math.abs(paper - 1) < 0.3 && isAsDrawn(profile, drawn);
  return { ...place(bead, Math.abs(at) < 0.5 ? at : 0), rim, paper, material, clean };
}

/** of the step from material to paper: so much lower than before it the far end lies where another edge begins */
const backAgain = 0.2;

/** Where paper is brightest beside an edge. */
interface Gap {
  readonly t: number;
  readonly paper: number;
}

/** In an inner corner and in a slot the line runs out of the paper again: the brightest place of what it crosses. */
function gapIn(profile: Profile, reach: number): Gap | undefined {
  const { t, value } = profile;
  let gap: Gap = { t: 0, paper: Number.NEGATIVE_INFINITY };
  for (let i = 1; i < t.length - 1; i += 1) {
    if (t[i]! < -0.3 || t[i]! > reach) continue;
    const paper = (value[i - 1]! + value[i]! + value[i + 1]!) / 3;
    if (paper > gap.paper) gap = { t: t[i]!, paper };
  }
  return middleOf(profile, reach, reach + plateau) < gap.paper - backAgain ? gap : undefined;
}

interface Across {
  readonly bead: Bead;
  readonly rim: EdgePoint['rim'];
  readonly material: number;
  readonly sigma: number;
  readonly gap: Gap;
}

/**
 * The edge of a narrow gap of paper. What lies behind the gap must not count, so it is where half of the light is paper’s:
 * a blur leaves that place of a step where it is.
 */
function acrossGap(profile: Profile, { bead, rim, material, sigma, gap }: Across): EdgePoint {
  const { t, value } = profile;
  const level = (material + Math.max(1, gap.paper)) / 2;
  let i = t.findLastIndex((each) => each <= gap.t);
  while (i > 0 && value[i]! >= level) i -= 1;
  const at = t[i]! + (spacing * (level - value[i]!)) / (value[i + 1]! - value[i]!);
  const isSeen = gap.paper > level && Math.abs(at) < 0.5;
  const near = { t: t.filter((each) => each <= gap.t), value };
  const clean = isSeen && gap.paper > 0.7 && isAsDrawn(near, { at, paper: gap.paper, material, sigma });
  return { ...place(bead, isSeen ? at : 0), rim, paper: gap.paper, material, clean };
}

const place = ({ x, y, nx, ny }: Bead, at: number) => ({ x: x + at * nx, y: y + at * ny, nx, ny });

interface Profile {
  readonly t: Float64Array;
  readonly value: Float64Array;
  /** the value of no light at all */
  readonly black: number;
}

/** Shares of paper along a line across the edge; 0 is the bead, above it paper. */
function profileAt(reader: EdgeReader, { x, y, nx, ny }: Bead, from: number, to: number): Profile {
  const { picture, camera, ground } = reader;
  const color = reader.colorAt(x, y);
  const count = Math.round((to - from) / spacing) + 1;
  const t = new Float64Array(count);
  const value = new Float64Array(count);
  const light = new Float64Array(3);
  const white = new Float64Array(3);
  ground.white({ x, y }, white);
  const weights = unclipped(color, white, picture);
  // over three millimetres a lens bends nothing: the places between are shared out
  const a = project(camera, { x: x + from * nx, y: y + from * ny, z: 0 });
  const m = project(camera, { x: x + 0.5 * (from + to) * nx, y: y + 0.5 * (from + to) * ny, z: 0 });
  const b = project(camera, { x: x + to * nx, y: y + to * ny, z: 0 });
  for (let i = 0; i < count; i += 1) {
    const s = i / (count - 1);
    const pa = (1 - s) * (1 - 2 * s);
    const pm = 4 * s * (1 - s);
    const pb = s * (2 * s - 1);
    lightAt(picture, pa * a.x + pm * m.x + pb * b.x, pa * a.y + pm * m.y + pb * b.y, light);
    t[i] = from + s * (to - from);
    let sum = 0;
    for (let c = 0; c < 3; c += 1) sum += weights[c]! * (light[c]! / white[c]! - color[c]!);
    value[i] = sum;
  }
  return { t, value, black: -weights.reduce((sum, weight, c) => sum + weight * color[c]!, 0) };
}

/** Where the file has paper at its brightest, light was cut off, and an edge there is drawn into the part: left out. */
function unclipped(color: Color, white: Float64Array, { tone = linear }: Picture): readonly number[] {
  const weights = mixing(color);
  const kept = weights.map((weight, c) => (white[c]! < tone[full]! ? weight : 0));
  const whole = kept.reduce((sum, weight, c) => sum + weight * (1 - color[c]!), 0);
  return whole > 0.15 ? kept.map((weight) => weight / whole) : weights;
}

function middleOf({ t, value }: Profile, from: number, to: number): number {
  const own: number[] = [];
  for (let i = 0; i < t.length; i += 1) if (t[i]! >= from - 1e-9 && t[i]! <= to + 1e-9) own.push(value[i]!);
  own.sort((a, b) => a - b);
  return own.length > 0 ? own[own.length >> 1]! : Number.NaN;
}

/** The blur is even on both sides, so the area under the step tells its place whatever the blur. */
function byArea(
  { t, value }: Profile,
  { paper, material, reach, inner }: { paper: number; material: number; reach: number; inner: number },
): number {
  let area = 0;
  for (let i = 1; i < t.length; i += 1) {
    const a = Math.max(-inner, Math.min(reach, t[i - 1]!));
    const b = Math.max(-inner, Math.min(reach, t[i]!));
    if (b > a) area += (b - a) * ((value[i - 1]! + value[i]!) / 2 - material);
  }
  return reach - area / (paper - material);
}

/**
 * Top, a strip of wall of known width but unknown brightness, paper: the step from wall to paper. The brightness that
 * fits best is worked out for each place tried; the place by golden section.
 */
function withWall(
  { t, value, black }: Profile,
  { paper, material, wall, sigma, limb }: Strip,
): { at: number; strip: number } {
  const width = sigma * Math.SQRT2;
  // beside a pale face a wall may be darker by more than paper is brighter
  const darkest = limb > 0 ? -0.8 : Math.min(-0.8, black - material);
  let strip = 0;
  const misfit = (at: number): number => {
    let fa = 0;
    let aa = 0;
    let ff = 0;
    for (let i = 0; i < t.length; i += 1) {
      const outer = 0.5 + 0.5 * erf((t[i]! - at) / width);
      const part = 0.5 + 0.5 * erf((t[i]! - at + wall) / width) - outer;
      const rest = value[i]! - material - (paper - material) * outer;
      fa += rest * part;
      aa += part * part;
      ff += rest * rest;
    }
    strip = Math.max(darkest, Math.min(0.5, fa / (aa || 1)));
    return ff - 2 * strip * fa + strip * strip * aa;
  };
  let low = -0.6;
  let high = 0.6;
  for (let i = 0; i < 22; i += 1) {
    const a = low + 0.382 * (high - low);
    const b = low + 0.618 * (high - low);
    if (misfit(a) < misfit(b)) high = b;
    else low = a;
  }
  const at = (low + high) / 2;
  misfit(at);
  return { at, strip };
}

interface Strip {
  readonly paper: number;
  readonly material: number;
  readonly wall: number;
  readonly sigma: number;
  readonly limb: number;
}

interface Drawn {
  readonly at: number;
  readonly paper: number;
  readonly material: number;
  readonly sigma: number;
  /** the strip of wall inside the edge: its width, and its brightness over the material’s */
  readonly wall?: number;
  readonly strip?: number;
}

/** Whether the light across an edge is what one step from material to paper, with a strip of wall before it, would give. */
function isAsDrawn(
  { t, value }: Pick<Profile, 't' | 'value'>,
  { at, paper, material, sigma, wall = 0, strip = 0 }: Drawn,
): boolean {
  const width = Math.max(sigma, 0.05) * Math.SQRT2;
  const stepAt = (place: number) => 0.5 + 0.5 * erf(place / width);
  let sum = 0;
  let count = 0;
  for (let i = 0; i < t.length; i += 1) {
    // further in lie the face and its grain
    if (t[i]! < at - 2.5 * sigma) continue;
    const outer = stepAt(t[i]! - at);
    const part = strip === 0 ? 0 : stepAt(t[i]! - at + wall) - outer;
    sum += (value[i]! - material - (paper - material) * outer - strip * part) ** 2;
    count += 1;
  }
  return Math.sqrt(sum / Math.max(1, count)) < 0.16 * (paper - material);
}

/** Where an edge point truly is: a rim seen against the paper stands nearer to the camera’s foot than it looks. */
export function trueEdge(
  { x, y, rim }: Pick<EdgePoint, 'x' | 'y' | 'rim'>,
  eye: Spot,
  height: number,
): Place {
  if (rim !== 'top') return { x, y };
  const share = height / eye.z;
  return { x: x + share * (eye.x - x), y: y + share * (eye.y - y) };
}
