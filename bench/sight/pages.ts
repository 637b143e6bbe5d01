// Printed pages of specs, a printed plate and a stamped one, photographed by a made camera.
import sharp from 'sharp';
import { across, homography } from '../../src/sight/camera/homography.js';
import { bumps, type Dice, dice } from './random.js';

export interface PageScene {
  readonly name: string;
  /** lines as printed */
  readonly lines: readonly string[];
  /** JPEG */
  photo(): Promise<Buffer>;
}

/** Lines such as maker's sheets print, the numbers drawn anew for each page. */
function specLines(d: Dice): string[] {
  const n = (low: number, high: number, digits: number) => d.between(low, high).toFixed(digits);
  const clearance = d.whole(3, 7);
  const all = [
    `Cylinder head bolts ${d.whole(120, 220)} in-lb`,
    `Flywheel nut ${d.whole(45, 80)} ft-lb`,
    `Connecting rod bolts ${d.whole(80, 160)} in-lb`,
    `Spark plug gap 0.0${d.whole(20, 40)} in`,
    `Valve clearance, intake 0.00${clearance} - 0.00${clearance + 2} in`,
    `Valve clearance, exhaust 0.00${clearance + 2} - 0.0${clearance + 8} in`,
    `Armature air gap 0.0${d.whole(10, 16)} in`,
    `Top no-load speed ${d.whole(30, 38)}00 rpm`,
    `Idle speed ${d.whole(14, 19)}50 rpm`,
    `Bore ${n(2.2, 3.5, 3)} in`,
    `Stroke ${n(1.6, 2.8, 3)} in`,
    `Compression ratio ${n(6, 9.2, 1)}:1`,
    `Oil capacity ${d.whole(16, 44)} fl oz`,
    `Fuel tank capacity ${n(0.5, 2, 1)} gal`,
    `Ring end gap, reject 0.0${d.whole(28, 40)} in`,
    `Crankpin, reject size ${n(0.85, 1.2, 3)} in`,
  ];
  return all.toSorted(() => d.next() - 0.5).slice(0, 10);
}

const plateLines = (d: Dice): string[] => [
  'BRINDLE ENGINE WORKS',
  `MODEL ${d.whole(100000, 199999)}`,
  `TYPE ${d.whole(1000, 9999)}-0${d.whole(1, 5)}`,
  `CODE ${d.whole(80, 99)}0${d.whole(1, 9)}1${d.whole(0, 9)}0${d.whole(1, 9)}`,
];

const escaped = (text: string) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

async function printed(
  lines: readonly string[],
  look: 'page' | 'plate' | 'stamped',
  d: Dice,
): Promise<Sheet> {
  const [width, height] = look === 'page' ? [1240, 1240] : [1200, 560];
  const family =
    look === 'page' ? d.one(['Liberation Serif', 'Liberation Sans', 'DejaVu Sans']) : 'Liberation Sans';
  const size = look === 'page' ? 40 : 64;
  const gap = look === 'page' ? 88 : 110;
  const [paper, ink] = {
    page: ['#f7f5ee', '#1c1c1e'],
    plate: ['#20242a', '#d9dce0'],
    stamped: ['#a2a6aa', '#8d9195'],
  }[look]!;
  const text = lines.map((line, i) => {
    const y = 140 + i * gap;
    // a stamped letter is a dent: one edge in the light, one in the dark
    const light =
      look === 'stamped' ? `<text x="101.5" y="${y + 1.5}" fill="#c4c8cc">${escaped(line)}</text>` : '';
    return `${light}<text x="100" y="${y}" fill="${ink}">${escaped(line)}</text>`;
  });
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><rect width="${width}" height="${height}" fill="${paper}"/><g font-family="${family}" font-size="${size}" ${look === 'page' ? '' : 'font-weight="bold"'}>${text.join('')}</g></svg>`;
  const { data, info } = await sharp(Buffer.from(svg))
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, data };
}

interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly data: Buffer;
}

/** How the picture is taken. Angles in degrees. */
interface Taking {
  readonly tilt: number;
  readonly turn: number;
  readonly size: readonly [number, number];
  readonly shade: number;
  readonly noise: number;
}

/** A pinhole camera over the sheet: on a bench, under a lamp to one side, out of focus by a little. */
async function taken(
  { width, height, data }: Sheet,
  { tilt, turn, size, shade, noise }: Taking,
  d: Dice,
): Promise<Buffer> {
  const [w, h] = size;
  const radians = Math.PI / 180;
  const axis = d.between(0, 2 * Math.PI);
  const half = Math.max(width, height) / 2;
  const corner = (x: number, y: number) => {
    const [a, b] = [(x - width / 2) / half, (y - height / 2) / half];
    const [u, v] = [
      a * Math.cos(turn * radians) - b * Math.sin(turn * radians),
      a * Math.sin(turn * radians) + b * Math.cos(turn * radians),
    ];
    const along = u * Math.cos(axis) + v * Math.sin(axis);
    const side = -u * Math.sin(axis) + v * Math.cos(axis);
    const depth = 3 + along * Math.sin(tilt * radians);
    const near = along * Math.cos(tilt * radians);
    const [p, q] = [
      near * Math.cos(axis) - side * Math.sin(axis),
      near * Math.sin(axis) + side * Math.cos(axis),
    ];
    const scale = (0.4 * Math.min(w, h) * 3) / depth;
    return { x: w / 2 + scale * p, y: h / 2 + scale * q };
  };
  const onSheet = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
  const back = homography(
    onSheet.map(({ x, y }) => corner(x, y)),
    onSheet,
  );
  const out = Buffer.alloc(w * h * 3);
  const seed = d.whole(1, 1e6);
  const lamp = d.between(0, 2 * Math.PI);
  for (let y = 0; y < h; y += 1)
    for (let x = 0; x < w; x += 1) {
      const { x: sx, y: sy } = across(back, { x: x + 0.5, y: y + 0.5 });
      const lit = 1 - shade * (0.5 + ((x / w - 0.5) * Math.cos(lamp) + (y / h - 0.5) * Math.sin(lamp)));
      const to = 3 * (y * w + x);
      const inside = sx >= 0 && sy >= 0 && sx < width && sy < height;
      const from = inside ? 3 * (Math.floor(sy) * width + Math.floor(sx)) : 0;
      const wood = 84 + 26 * bumps(x / 90, y / 14, seed);
      for (let c = 0; c < 3; c += 1) {
        const own = inside ? data[from + c]! : wood * [1.1, 0.86, 0.62][c]!;
        out[to + c] = Math.max(0, Math.min(255, own * lit + noise * d.normal()));
      }
    }
  return sharp(out, { raw: { width: w, height: h, channels: 3 } })
    .blur(0.8)
    .jpeg({ quality: 82 })
    .toBuffer();
}

const scene = (
  name: string,
  seed: number,
  look: 'page' | 'plate' | 'stamped',
  way: (d: Dice) => Taking,
): PageScene => {
  const d = dice(seed);
  const lines = look === 'page' ? specLines(d) : plateLines(d);
  return { name, lines, photo: async () => taken(await printed(lines, look, d), way(d), d) };
};

const asShot = (d: Dice): Taking => ({
  tilt: d.between(5, 28),
  turn: d.between(-18, 18),
  size: [2000, 1500],
  shade: d.between(0.1, 0.6),
  noise: 5,
});

/** Ten pages, six printed plates, six stamped ones; another `from`, other scenes. */
export function pageScenes(from: number): PageScene[] {
  const of = (look: 'page' | 'plate' | 'stamped', count: number, first: number) =>
    Array.from({ length: count }, (_, i) => scene(look, from + first + i, look, asShot));
  return [...of('page', 10, 0), ...of('plate', 6, 100), ...of('stamped', 6, 200)];
}
