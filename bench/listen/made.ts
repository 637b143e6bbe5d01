import { type EngineSound, random } from '../../test/listen/engine-sound.js';

export type MadeEngine = EngineSound & { readonly cylinders: number; readonly steadyRpm: number };

/** Seeded engines of all kinds: one to eight cylinders, alike and unlike, near and far, through phones and with fans. */
export function madeEngine(seed: number): MadeEngine {
  const uniform = random(31 * seed + 7);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(uniform() * list.length)]!;
  const strokes = pick([4, 4, 2] as const);
  const cylinders = strokes === 2 ? 1 : pick([1, 1, 1, 2, 3, 4, 6, 8]);
  const rpm = strokes === 4 ? 700 * 6 ** uniform() : 1900 * 6.5 ** uniform();
  const swing = pick([0, 0, 0.004, 0.02]);
  const unlike = pick([0.03, 0.1, 0.25]);
  return {
    ...{ strokes, cylinders, steadyRpm: rpm, seed },
    rpm: (t) => rpm * (1 + swing * Math.sin(2 * Math.PI * 0.7 * t)),
    seconds: pick([1.2, 2.5, 4]),
    snrDb: pick([0, 5, 10, 20, 30]),
    jitter: pick([0.001, 0.003, 0.006]),
    strengthSpread: pick([0.05, 0.15, 0.3]),
    cylinderGains: Array.from({ length: cylinders }, () => 1 + unlike * (2 * uniform() - 1)),
    ...pick([{}, {}, { highPassHz: 100 }]),
    ...pick([{}, {}, { fan: { blades: 9, level: 0.7 } }]),
    resonancesHz: pick([
      [90, 240, 610, 1300],
      [70, 180, 420, 900],
      [130, 310, 800, 1700],
    ]),
  };
}
