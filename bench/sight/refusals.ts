import { dice } from './random.js';
import type { Scene } from './render.js';
import { baseScene, boltCase, type Case, plateCase } from './scenes.js';
import { bolt, plate, plateTruth as truthOf } from './things.js';

const small = [810, 1080] as const;
const thin = { thickness: [0.8, 2], size: small, stains: 0 } as const;

/** A photograph that nobody should measure, and for which of the reasons it may be refused. */
export interface Unfit extends Case {
  readonly as: 'plate' | 'bolts';
  readonly truth: { readonly refuse: readonly string[] };
}

type Make = (seed: number) => { scene: Scene; as?: 'plate' | 'bolts'; refuse: readonly string[] };

const gasket = (seed: number) => plateCase(seed, thin).scene;

/** Each thing that a person does wrong at the mat. */
const wrongs: Readonly<Record<string, Make>> = {
  'no mat': (seed) => ({ scene: { ...gasket(seed), noMat: true }, refuse: ['no-mat'] }),
  'a shaken hand': (seed) => ({ scene: { ...gasket(seed), shake: { x: 26, y: 9 } }, refuse: ['blurred'] }),
  'out of focus': (seed) => ({ scene: { ...gasket(seed), blur: 9 }, refuse: ['blurred'] }),
  'half of the marks covered': (seed) => ({
    scene: { ...gasket(seed), things: [], cover: { x: -110, y: 20, width: 220, height: 130 } },
    refuse: ['marks-covered'],
  }),
  'a hand over one side': (seed) => ({
    scene: { ...gasket(seed), cover: { x: 72, y: -140, width: 60, height: 280 } },
    refuse: ['marks-covered'],
  }),
  'from the side': (seed) => {
    const scene = gasket(seed);
    const lens = { ...scene.lens, focal: 1.3 * scene.lens.focal };
    return {
      scene: { ...scene, lens, width: 1170, height: 1560, tilt: 46, distance: 620 },
      refuse: ['too-steep'],
    };
  },
  'from far away': (seed) => {
    const scene = gasket(seed);
    return { scene: { ...scene, distance: 1.45 * scene.distance }, refuse: ['too-far'] };
  },
  'a corner stands up': (seed) => ({
    scene: { ...gasket(seed), curl: 9 },
    refuse: ['curled', 'marks-covered'],
  }),
  'nothing on it': (seed) => ({ scene: { ...gasket(seed), things: [] }, refuse: ['nothing-there'] }),
  'the part over the edge': (seed) => ({ scene: withPlates(seed, [{ x: 52, y: 20 }]), refuse: ['cut-off'] }),
  'two parts': (seed) => ({
    scene: withPlates(seed, [
      { x: -34, y: 40 },
      { x: 34, y: -40 },
    ]),
    refuse: ['several-parts'],
  }),
  'a hard shadow': (seed) => ({
    scene: {
      ...gasket(seed),
      flash: 0,
      things: raised(seed),
      lamp: { share: 0.75, to: { x: 0.8, y: 0.35, z: 0.5 } },
    },
    refuse: ['dirty-edge', 'bright'],
  }),
  'a stain at the edge': (seed) => ({ scene: withStain(seed), refuse: ['dirty-edge', 'bright'] }),
  'bright metal without flash': (seed) => ({
    scene: withBright(seed),
    refuse: ['bright', 'nothing-there', 'dirty-edge'],
  }),
  'bolts that touch': (seed) => ({ scene: touching(seed), as: 'bolts', refuse: ['touching'] }),
  'a gasket among bolts': (seed) => ({
    scene: gasket(seed),
    as: 'bolts',
    refuse: ['not-a-bolt', 'touching'],
  }),
};

export function unfit(seed: number): Unfit[] {
  return Object.entries(wrongs).map(([group, make]) => {
    const { scene, as = 'plate', refuse } = make(seed);
    return { name: `${group} ${seed}`, group, scene, as, truth: { refuse }, thickness: { mm: 1.4, u: 0.1 } };
  });
}

const shape = (x: number, y: number, thickness: number) => ({
  at: { x, y, turn: 0.2 },
  box: { a: 24, b: 30, r: 6 },
  lobes: [],
  holes: [
    { x: -17, y: 22, d: 7 },
    { x: 17, y: 22, d: 7 },
    { x: 17, y: -22, d: 7 },
    { x: -17, y: -22, d: 7 },
  ],
  thickness,
});

const lookOf = (seed: number, light: number, gloss = 0) => {
  const d = dice(seed);
  const tone = light * d.between(0.9, 1.1);
  return { color: () => [tone, tone, 1.02 * tone] as const, wall: 0.8, gloss };
};

const withPlates = (seed: number, places: readonly { x: number; y: number }[]): Scene => ({
  ...baseScene(dice(seed), seed, { size: small }),
  things: places.map(({ x, y }) => plate(truthOf(shape(x, y, 1.4)), lookOf(seed, 0.12))),
});

const raised = (seed: number) => [plate(truthOf(shape(0, 0, 4)), lookOf(seed, 0.25))];

function withStain(seed: number): Scene {
  const scene = withPlates(seed, [{ x: 0, y: 0 }]);
  const stain = { x: 25, y: 3, r: 7, color: [0.35, 0.3, 0.22] as const, soft: 1 };
  return { ...scene, stains: [stain] };
}

function withBright(seed: number): Scene {
  const scene = baseScene(dice(seed), seed, { size: small });
  const things = [plate(truthOf(shape(0, 0, 3)), lookOf(seed, 0.72, 0.5))];
  return { ...scene, flash: 0, slope: { x: 0.3, y: -0.2 }, things };
}

function touching(seed: number): Scene {
  const { scene } = boltCase(seed, { size: small });
  const one = { x: -10, y: 0, turn: 0.3, length: 40, d: 7.9, flats: 12.9, head: 5.3, round: false };
  const look = { color: [0.1, 0.1, 0.1] as const, gloss: 0.1 };
  return { ...scene, stains: [], things: [bolt(one, look), bolt({ ...one, x: -6, y: 9, turn: 0.12 }, look)] };
}
