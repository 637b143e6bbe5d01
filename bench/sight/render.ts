import sharp from 'sharp';
import { type MatPaper, matOf, matSvg } from '../../src/sight/index.js';
import { bumps, dice } from './random.js';
import type { Hit, Ray, Rgb, Thing, Vec } from './things.js';

export interface Stain {
  readonly x: number;
  readonly y: number;
  readonly r: number;
  /** what is left of the light there */
  readonly color: Rgb;
  /** millimetres over which it fades */
  readonly soft: number;
}

export interface Develop {
  /** light is blurred and shared between pixels after it became the file's numbers, as a simple renderer does */
  readonly mixedInFile: boolean;
  /** of what a blur of 1.2 pixels takes away, so much is added */
  readonly sharpen: number;
  /** contrast added in the middle of the file's numbers, taken at both ends */
  readonly contrast: number;
  /** of the light, what the corners of the picture lose */
  readonly vignette: number;
  readonly chroma: '4:2:0' | '4:4:4';
}

export interface Scene {
  readonly seed: number;
  readonly paper: MatPaper;
  readonly width: number;
  readonly height: number;
  readonly lens: { readonly focal: number; readonly k1: number; readonly x: number; readonly y: number };
  /** degrees off the upright, in which direction over the mat, and turned about its own axis */
  readonly tilt: number;
  readonly towards: number;
  readonly roll: number;
  /** from the camera to where it aims, millimetres, and that place */
  readonly distance: number;
  readonly aim: { readonly x: number; readonly y: number };
  readonly things: readonly Thing[];
  readonly stains: readonly Stain[];
  readonly table: Rgb;
  /** of the whole light, which comes from the flash beside the lens */
  readonly flash: number;
  /** of the light from all round, its change over the sheet, a share a 100 mm */
  readonly slope: { readonly x: number; readonly y: number };
  /** a lamp in one direction that casts shadows, its share of the light from elsewhere */
  readonly lamp?: { readonly share: number; readonly to: Vec };
  readonly exposure: number;
  readonly tint: Rgb;
  /** pixels */
  readonly blur: number;
  readonly shake?: { readonly x: number; readonly y: number };
  readonly noise: number;
  readonly quality: number;
  /** how a camera makes a file of the light otherwise than by the standard alone */
  readonly develop?: Develop;
  /** millimetres by which a corner of the sheet stands up */
  readonly curl?: number;
  /** nothing printed: a bare table */
  readonly noMat?: boolean;
  /** a sheet of something laid over the marks: a rectangle on the mat */
  readonly cover?: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
}

const pixelsPerMm = 20;
const printed = new Map<MatPaper, Promise<{ data: Buffer; width: number; height: number }>>();

/** The sheet as its own picture file shows it. */
function sheet(paper: MatPaper) {
  const mat = matOf(paper);
  const size = { width: String(mat.width * pixelsPerMm), height: String(mat.height * pixelsPerMm) };
  const made =
    printed.get(paper) ??
    sharp(Buffer.from(matSvg(mat, { size })), { unlimited: true })
      .grayscale()
      .raw()
      .toBuffer({ resolveWithObject: true })
      .then(({ data, info }) => ({ data, width: info.width, height: info.height }));
  printed.set(paper, made);
  return made;
}

interface Eye {
  readonly at: Vec;
  readonly right: Vec;
  readonly down: Vec;
  readonly ahead: Vec;
}

export function eyeOf({ tilt, towards, roll, distance, aim }: Scene): Eye {
  const t = (tilt * Math.PI) / 180;
  const d = (towards * Math.PI) / 180;
  const r = (roll * Math.PI) / 180;
  const ahead = { x: -Math.sin(t) * Math.cos(d), y: -Math.sin(t) * Math.sin(d), z: -Math.cos(t) };
  const at = { x: aim.x - distance * ahead.x, y: aim.y - distance * ahead.y, z: -distance * ahead.z };
  const flat = { x: Math.cos(r), y: Math.sin(r), z: 0 };
  const along = flat.x * ahead.x + flat.y * ahead.y;
  const right = unit({ x: flat.x - along * ahead.x, y: flat.y - along * ahead.y, z: -along * ahead.z });
  return { at, right, down: cross(ahead, right), ahead };
}

const unit = (v: Vec): Vec => {
  const n = Math.hypot(v.x, v.y, v.z);
  return { x: v.x / n, y: v.y / n, z: v.z / n };
};
const cross = (a: Vec, b: Vec): Vec => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});
const dot = (a: Vec, b: Vec) => a.x * b.x + a.y * b.y + a.z * b.z;

const plain: Develop = { mixedInFile: false, sharpen: 0, contrast: 0, vignette: 0, chroma: '4:2:0' };

/** The photograph of a scene as a JPEG file. */
export async function photograph(scene: Scene): Promise<Buffer> {
  const { width, height, noise, quality, seed, exposure } = scene;
  const { mixedInFile, sharpen, contrast, chroma } = scene.develop ?? plain;
  const random = dice(seed ^ 0x5bd1e995);
  const light = blurred(rendered(scene, await sheet(scene.paper)), scene);
  const values = light.map((value) => {
    const seen = mixedInFile ? decoded(value) : value * exposure;
    return encoded(seen + noise * Math.sqrt(Math.max(0, seen) + 0.01) * random.normal());
  });
  const soft = sharpen > 0 ? blurred(values, { width, height, blur: 1.2 }) : values;
  const bytes = Buffer.alloc(values.length);
  for (let i = 0; i < bytes.length; i += 1) {
    const v = values[i]! + sharpen * (values[i]! - soft[i]!);
    const curved = v - (contrast * Math.sin(2 * Math.PI * v)) / (2 * Math.PI);
    bytes[i] = Math.round(255 * Math.min(1, Math.max(0, curved)));
  }
  return sharp(bytes, { raw: { width, height, channels: 3 } })
    .jpeg({ quality, chromaSubsampling: chroma })
    .toBuffer();
}

const fine = 1 << 16;
/** IEC 61966-2-1 (sRGB), in steps of a hundredth of what a file tells apart. */
const file = Float64Array.from({ length: fine + 1 }, (_, i) => {
  const v = i / fine;
  return v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055;
});
/** Cut off where a sensor is full. */
const encoded = (light: number): number => file[Math.round(fine * Math.min(1, Math.max(0, light)))]!;
const decoded = (v: number): number => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);

type Sheet = Awaited<ReturnType<typeof sheet>>;

function rendered(scene: Scene, paper: Sheet): Float32Array {
  const { width, height } = scene;
  const look = looker(scene, paper);
  const ids = new Uint8Array(width * height);
  const out = new Float32Array(width * height * 3);
  const color = new Float64Array(3);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const i = y * width + x;
      ids[i] = look(x + 0.5, y + 0.5, color);
      out.set(color, 3 * i);
    }
  const sum = new Float64Array(3);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const i = y * width + x;
      if (!isEdge(ids, width, height, x, y)) continue;
      sum.fill(0);
      for (let k = 0; k < 16; k += 1) {
        look(x + ((k % 4) + 0.5) / 4, y + (Math.floor(k / 4) + 0.5) / 4, color);
        for (let c = 0; c < 3; c += 1) sum[c]! += color[c]! / 16;
      }
      out.set(sum, 3 * i);
    }
  return out;
}

function isEdge(ids: Uint8Array, width: number, height: number, x: number, y: number): boolean {
  const id = ids[y * width + x];
  for (let dy = -1; dy <= 1; dy += 1)
    for (let dx = -1; dx <= 1; dx += 1) {
      const px = x + dx;
      const py = y + dy;
      if (px >= 0 && py >= 0 && px < width && py < height && ids[py * width + px] !== id) return true;
    }
  return false;
}

/** Puts the light of one point of the sensor into `color` and says what kind of surface it shows. */
function looker(scene: Scene, paper: Sheet) {
  const eye = eyeOf(scene);
  const { focal, k1 } = scene.lens;
  const mat = matOf(scene.paper);
  const shade = shader(scene, eye);
  const cx = scene.width / 2 + scene.lens.x;
  const cy = scene.height / 2 + scene.lens.y;
  const { mixedInFile, vignette } = scene.develop ?? plain;
  const corner = (scene.width ** 2 + scene.height ** 2) / 4;
  return (px: number, py: number, color: Float64Array): number => {
    const u = (px - cx) / focal;
    const v = (py - cy) / focal;
    const bent = Math.hypot(u, v);
    let r = bent;
    for (let i = 0; i < 6; i += 1) r -= (r * (1 + k1 * r * r) - bent) / (1 + 3 * k1 * r * r);
    const straight = bent > 0 ? r / bent : 1;
    const a = u * straight;
    const b = v * straight;
    const ray: Ray = {
      from: eye.at,
      to: {
        x: eye.ahead.x + a * eye.right.x + b * eye.down.x,
        y: eye.ahead.y + a * eye.right.y + b * eye.down.y,
        z: eye.ahead.z + a * eye.right.z + b * eye.down.z,
      },
    };
    let first: Hit = onSheet(scene, mat, paper, ray);
    for (const thing of scene.things) {
      if (isPast(thing, ray)) continue;
      const hit = thing.hit(ray);
      if (hit && hit.t < first.t) first = hit;
    }
    shade(ray, first, color);
    const kept = 1 - (vignette * ((px - cx) ** 2 + (py - cy) ** 2)) / corner;
    for (let c = 0; c < 3; c += 1) color[c]! *= kept;
    if (mixedInFile) for (let c = 0; c < 3; c += 1) color[c] = encoded(color[c]! * scene.exposure);
    return first.id;
  };
}

/** Whether a ray that goes down cannot meet it, told by where it comes to the mat. */
function isPast({ within, top }: Thing, { from, to }: Ray): boolean {
  const t = -from.z / to.z;
  const lead = (top * Math.hypot(to.x, to.y)) / Math.abs(to.z);
  return Math.hypot(from.x + t * to.x - within.x, from.y + t * to.y - within.y) > within.r + lead;
}

function onSheet(scene: Scene, mat: { width: number; height: number }, paper: Sheet, { from, to }: Ray): Hit {
  let t = -from.z / to.z;
  let x = from.x + t * to.x;
  let y = from.y + t * to.y;
  if (scene.curl)
    for (let i = 0; i < 6; i += 1) {
      const up = Math.max(0, (x / mat.width + y / mat.height) * 1.25) ** 2 * scene.curl;
      t = (up - from.z) / to.z;
      x = from.x + t * to.x;
      y = from.y + t * to.y;
    }
  const normal = { x: 0, y: 0, z: 1 };
  const inside = Math.abs(x) < mat.width / 2 && Math.abs(y) < mat.height / 2;
  if (!inside || scene.noMat) {
    const grain = 1 + 0.25 * bumps(x / 9, y / 2, scene.seed + 5);
    const [r, g, b] = scene.table;
    return { t, normal, color: [r * grain, g * grain, b * grain], gloss: 0, id: 1 };
  }
  const cover = scene.cover;
  if (cover && x > cover.x && y > cover.y && x < cover.x + cover.width && y < cover.y + cover.height)
    return { t, normal, color: [0.2, 0.16, 0.1], gloss: 0, id: 4 };
  const column = Math.min(paper.width - 1, Math.floor((mat.width / 2 + x) * pixelsPerMm));
  const row = Math.min(paper.height - 1, Math.floor((mat.height / 2 - y) * pixelsPerMm));
  const white = paper.data[row * paper.width + column]! / 255;
  const ink = 0.04 + (0.86 + 0.012 * bumps(x * 2, y * 2, scene.seed)) * white;
  const color: [number, number, number] = [ink, ink, ink * 0.98];
  for (const stain of scene.stains) {
    const far = Math.hypot(x - stain.x, y - stain.y) + 0.25 * stain.r * bumps(x / 4, y / 4, scene.seed + 9);
    const share = Math.min(1, Math.max(0, (stain.r - far) / stain.soft));
    for (let c = 0; c < 3; c += 1) color[c] = color[c]! * (1 - share * (1 - stain.color[c]!));
  }
  return { t, normal, color, gloss: 0, id: white > 0.5 ? 2 : 3 };
}

function shader(scene: Scene, eye: Eye) {
  const full = scene.distance * scene.distance;
  const lampTo = scene.lamp && unit(scene.lamp.to);
  const flashAt = {
    x: eye.at.x + 12 * eye.right.x,
    y: eye.at.y + 12 * eye.right.y,
    z: eye.at.z + 12 * eye.right.z,
  };
  return ({ from, to }: Ray, { t, normal, color, gloss }: Hit, out: Float64Array): void => {
    const at = { x: from.x + t * to.x, y: from.y + t * to.y, z: from.z + t * to.z };
    const toFlash = { x: flashAt.x - at.x, y: flashAt.y - at.y, z: flashAt.z - at.z };
    const far = Math.hypot(toFlash.x, toFlash.y, toFlash.z);
    const flash = (scene.flash * Math.max(0, dot(normal, toFlash)) * full) / (far * far * far);
    const slope = 1 + (scene.slope.x * at.x + scene.slope.y * at.y) / 100;
    let around = (1 - scene.flash) * Math.max(0.1, slope) * (0.55 + 0.45 * normal.z);
    if (lampTo) {
      const lit = isShaded(scene, at, lampTo) ? 0 : Math.max(0, dot(normal, lampTo));
      around *= 1 - scene.lamp!.share + scene.lamp!.share * lit;
    }
    let mirror = 0;
    if (gloss > 0) {
      const view = unit({ x: -to.x, y: -to.y, z: -to.z });
      const half = unit({
        x: view.x + toFlash.x / far,
        y: view.y + toFlash.y / far,
        z: view.z + toFlash.z / far,
      });
      mirror = gloss * scene.flash * 2.5 * Math.max(0, dot(half, normal)) ** 90;
      if (scene.flash < 0.3)
        mirror += gloss * 0.6 * Math.max(0, bumps(at.x / 25, at.y / 25, scene.seed + 3) + 0.3);
    }
    for (let c = 0; c < 3; c += 1) out[c] = (color[c]! * (flash + around) + mirror) * scene.tint[c]!;
  };
}

function isShaded(scene: Scene, at: Vec, to: Vec): boolean {
  const away = { x: at.x + to.x * 400, y: at.y + to.y * 400, z: at.z + to.z * 400 };
  const ray = { from: away, to: { x: -to.x, y: -to.y, z: -to.z } };
  return scene.things.some((thing) => {
    if (at.z >= thing.top - 1e-6 || isPast(thing, ray)) return false;
    const hit = thing.hit(ray);
    return hit !== undefined && hit.t < 400 - 0.05;
  });
}

function blurred(
  light: Float32Array,
  { width, height, blur, shake }: Pick<Scene, 'width' | 'height' | 'blur' | 'shake'>,
): Float32Array {
  const reach = Math.ceil(3 * blur);
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-0.5 * ((i - reach) / blur) ** 2));
  const total = kernel.reduce((a, b) => a + b, 0);
  const weights = kernel.map((k) => k / total);
  const offsets = weights.map((_, i) => i - reach);
  let out = light;
  if (blur > 0.05) {
    out = spread(
      out,
      width,
      height,
      offsets.map((x) => ({ x, y: 0 })),
      weights,
    );
    out = spread(
      out,
      width,
      height,
      offsets.map((y) => ({ x: 0, y })),
      weights,
    );
  }
  if (!shake) return out;
  const steps = Math.ceil(Math.hypot(shake.x, shake.y)) + 1;
  const path = Array.from({ length: steps }, (_, i) => ({
    x: Math.round((shake.x * i) / (steps - 1)),
    y: Math.round((shake.y * i) / (steps - 1)),
  }));
  return spread(
    out,
    width,
    height,
    path,
    path.map(() => 1 / steps),
  );
}

function spread(
  light: Float32Array,
  width: number,
  height: number,
  path: readonly { x: number; y: number }[],
  weights: readonly number[],
): Float32Array {
  const out = new Float32Array(light.length);
  for (const [k, { x: dx, y: dy }] of path.entries()) {
    const weight = weights[k]!;
    for (let y = 0; y < height; y += 1) {
      const row = Math.min(height - 1, Math.max(0, y + dy)) * width;
      for (let x = 0; x < width; x += 1) {
        const from = 3 * (row + Math.min(width - 1, Math.max(0, x + dx)));
        const to = 3 * (y * width + x);
        out[to]! += weight * light[from]!;
        out[to + 1]! += weight * light[from + 1]!;
        out[to + 2]! += weight * light[from + 2]!;
      }
    }
  }
  return out;
}

/** Where the picture shows a spot. */
export function seenAt(scene: Scene, spot: Vec): { x: number; y: number } {
  const eye = eyeOf(scene);
  const d = { x: spot.x - eye.at.x, y: spot.y - eye.at.y, z: spot.z - eye.at.z };
  const depth = dot(d, eye.ahead);
  const a = dot(d, eye.right) / depth;
  const b = dot(d, eye.down) / depth;
  const bend = scene.lens.focal * (1 + scene.lens.k1 * (a * a + b * b));
  return { x: scene.width / 2 + scene.lens.x + bend * a, y: scene.height / 2 + scene.lens.y + bend * b };
}
