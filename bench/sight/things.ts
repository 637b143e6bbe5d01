/** What may lie on the mat. Millimetres, mat coordinates; colors are reflectances in linear light. */
export type Rgb = readonly [number, number, number];
export interface Vec {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}
export interface Hit {
  /** along the ray from the camera, in its own length */
  readonly t: number;
  readonly normal: Vec;
  readonly color: Rgb;
  /** how strongly it mirrors, 0 to 1 */
  readonly gloss: number;
  /** what kind of surface: where two meet, the renderer looks closer */
  readonly id: number;
}
export interface Ray {
  readonly from: Vec;
  readonly to: Vec;
}
export interface Thing {
  readonly hit: (ray: Ray) => Hit | undefined;
  readonly top: number;
  /** a circle on the mat that it stands in */
  readonly within: { readonly x: number; readonly y: number; readonly r: number };
}

export interface Round {
  readonly x: number;
  readonly y: number;
  readonly d: number;
}

export interface PlateTruth {
  readonly holes: readonly Round[];
  /** over 0 in the mat, under it in the plate: the distance from its edge, of the outline alone */
  readonly outline: (x: number, y: number) => number;
  readonly thickness: number;
  readonly within: { readonly x: number; readonly y: number; readonly r: number };
}

export interface PlateShape {
  readonly at: { readonly x: number; readonly y: number; readonly turn: number };
  /** rounded box, half sides and corner radius */
  readonly box: { readonly a: number; readonly b: number; readonly r: number };
  /** ears: discs joined to it */
  readonly lobes: readonly Round[];
  readonly holes: readonly Round[];
  readonly thickness: number;
}

/** Its places are the plate's own; `truth` says them on the mat. */
export function plateTruth(shape: PlateShape): PlateTruth {
  const c = Math.cos(shape.at.turn);
  const s = Math.sin(shape.at.turn);
  const { a, b, r } = shape.box;
  return {
    thickness: shape.thickness,
    within: {
      x: shape.at.x,
      y: shape.at.y,
      r: Math.max(Math.hypot(a, b), ...shape.lobes.map((l) => Math.hypot(l.x, l.y) + l.d / 2)),
    },
    holes: shape.holes.map(({ x, y, d }) => ({
      x: shape.at.x + c * x - s * y,
      y: shape.at.y + s * x + c * y,
      d,
    })),
    outline: (mx, my) => {
      const dx = mx - shape.at.x;
      const dy = my - shape.at.y;
      const x = c * dx + s * dy;
      const y = -s * dx + c * dy;
      const qx = Math.abs(x) - a + r;
      const qy = Math.abs(y) - b + r;
      let d = Math.hypot(Math.max(qx, 0), Math.max(qy, 0)) + Math.min(Math.max(qx, qy), 0) - r;
      for (const lobe of shape.lobes) d = Math.min(d, Math.hypot(x - lobe.x, y - lobe.y) - lobe.d / 2);
      return d;
    },
  };
}

export function plate(
  truth: PlateTruth,
  look: { color: (x: number, y: number) => Rgb; wall: number; gloss: number },
): Thing {
  const h = truth.thickness;
  const solid = (x: number, y: number) => {
    let d = truth.outline(x, y);
    for (const hole of truth.holes) d = Math.max(d, hole.d / 2 - Math.hypot(x - hole.x, y - hole.y));
    return d;
  };
  return {
    top: h,
    within: truth.within,
    hit: ({ from, to }) => {
      if (to.z >= 0) return undefined;
      const tTop = (h - from.z) / to.z;
      const tFoot = -from.z / to.z;
      const reach = Math.hypot(to.x, to.y) || 1e-12;
      let t = tTop;
      for (let i = 0; i < 80; i += 1) {
        const x = from.x + t * to.x;
        const y = from.y + t * to.y;
        const d = solid(x, y);
        if (d < 1e-4) {
          if (i === 0)
            return { t, normal: { x: 0, y: 0, z: 1 }, color: look.color(x, y), gloss: look.gloss, id: 10 };
          const e = 0.01;
          const nx = solid(x + e, y) - solid(x - e, y);
          const ny = solid(x, y + e) - solid(x, y - e);
          const n = Math.hypot(nx, ny) || 1;
          const [r, g, b] = look.color(x, y);
          const color = [r * look.wall, g * look.wall, b * look.wall] as const;
          return { t, normal: { x: nx / n, y: ny / n, z: 0 }, color, gloss: 0, id: 11 };
        }
        t += Math.max(d, 2e-4) / reach;
        if (t >= tFoot) return undefined;
      }
      return undefined;
    },
  };
}

export interface BoltTruth {
  /** under the head, on the axis, over the mat */
  readonly x: number;
  readonly y: number;
  /** where the tip points */
  readonly turn: number;
  readonly length: number;
  readonly d: number;
  readonly flats: number;
  readonly head: number;
  /** a round head (of that diameter) has no flats */
  readonly round: boolean;
}

/** A bolt lying on the edge of its head and on its tip, or flat in the air where `level`. */
export function bolt(truth: BoltTruth, look: { color: Rgb; gloss: number }): Thing {
  const headRise = truth.flats / 2;
  const drop = headRise - truth.d / 2;
  const dip = Math.asin(drop / truth.length);
  const axis = {
    x: Math.cos(truth.turn) * Math.cos(dip),
    y: Math.sin(truth.turn) * Math.cos(dip),
    z: -Math.sin(dip),
  };
  const side = { x: -Math.sin(truth.turn), y: Math.cos(truth.turn), z: 0 };
  const up = cross(axis, side);
  const o = { x: truth.x, y: truth.y, z: headRise };
  const dot = (a: Vec, b: Vec) => a.x * b.x + a.y * b.y + a.z * b.z;
  const local = (v: Vec): Vec => ({ x: dot(v, axis), y: dot(v, side), z: dot(v, up) });
  const world = (v: Vec): Vec => ({
    x: v.x * axis.x + v.y * side.x + v.z * up.x,
    y: v.x * axis.y + v.y * side.y + v.z * up.y,
    z: v.x * axis.z + v.y * side.z + v.z * up.z,
  });
  return {
    top: truth.flats * 1.2,
    within: { x: truth.x, y: truth.y, r: truth.length + truth.head + truth.flats },
    hit: (ray) => {
      const from = local({ x: ray.from.x - o.x, y: ray.from.y - o.y, z: ray.from.z - o.z });
      const to = local(ray.to);
      const shank = barrel(from, to, truth.d / 2, 0, truth.length);
      const head = truth.round
        ? barrel(from, to, truth.flats / 2, -truth.head, 0)
        : hex(from, to, truth.flats, truth.head);
      const first = !shank ? head : !head ? shank : shank.t < head.t ? shank : head;
      if (!first) return undefined;
      return {
        t: first.t,
        normal: world(first.normal),
        color: look.color,
        gloss: look.gloss,
        id: first === head ? 21 : 20,
      };
    },
  };
}

const cross = (a: Vec, b: Vec): Vec => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});

function barrel(from: Vec, to: Vec, r: number, x0: number, x1: number) {
  let best: { t: number; normal: Vec } | undefined;
  const a = to.y * to.y + to.z * to.z;
  const b = from.y * to.y + from.z * to.z;
  const c = from.y * from.y + from.z * from.z - r * r;
  const disc = b * b - a * c;
  if (disc < 0) return undefined;
  const t = (-b - Math.sqrt(disc)) / a;
  const x = from.x + t * to.x;
  if (x >= x0 && x <= x1)
    best = { t, normal: { x: 0, y: (from.y + t * to.y) / r, z: (from.z + t * to.z) / r } };
  for (const [cap, n] of [
    [x0, -1],
    [x1, 1],
  ] as const) {
    const tc = (cap - from.x) / to.x;
    const y = from.y + tc * to.y;
    const z = from.z + tc * to.z;
    if (y * y + z * z <= r * r && (!best || tc < best.t)) best = { t: tc, normal: { x: n, y: 0, z: 0 } };
  }
  return best;
}

/** Two flats are level: it lies on one. */
function hex(from: Vec, to: Vec, flats: number, height: number) {
  const faces: [Vec, number][] = [0, 1, 2, 3, 4, 5].map((k) => {
    const angle = Math.PI / 2 + (k * Math.PI) / 3;
    return [{ x: 0, y: Math.cos(angle), z: Math.sin(angle) }, flats / 2];
  });
  faces.push([{ x: 1, y: 0, z: 0 }, 0], [{ x: -1, y: 0, z: 0 }, height]);
  let enter = Number.NEGATIVE_INFINITY;
  let leave = Number.POSITIVE_INFINITY;
  let normal: Vec = { x: 0, y: 0, z: 1 };
  for (const [n, d] of faces) {
    const speed = n.x * to.x + n.y * to.y + n.z * to.z;
    const off = d - (n.x * from.x + n.y * from.y + n.z * from.z);
    if (Math.abs(speed) < 1e-12) {
      if (off < 0) return undefined;
      continue;
    }
    const t = off / speed;
    if (speed < 0 && t > enter) {
      enter = t;
      normal = n;
    } else if (speed > 0 && t < leave) leave = t;
  }
  return enter < leave ? { t: enter, normal } : undefined;
}
