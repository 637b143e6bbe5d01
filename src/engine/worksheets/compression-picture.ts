import { type Picture, picture, spaced } from '../../worksheet/index.js';
import { crank, type TracePoint } from '../cranking/crank.js';
import type { ExpectedCompression } from '../cranking/expected.js';
import { readingWithLeak } from '../cranking/find-leak.js';
import { psi, thinned } from './fields.js';

/** The last compression of the last pull: cylinder and gauge over crank angle. */
export function strokePicture({ engine, gauge, conditions, likelyPa }: ExpectedCompression): Picture {
  const trace: TracePoint[] = [];
  crank(engine, gauge, conditions, { each: (point) => trace.push(point) });
  const cycle = engine.exchange.cycle === 'four-stroke' ? 720 : 360;
  const top = cycle * Math.floor(trace.at(-1)!.angleDeg / cycle);
  const stroke = thinned(trace.filter(({ angleDeg }) => angleDeg >= top - 180 && angleDeg <= top + 90));
  const over = (pa: number) => (pa - conditions.ambientPa) / psi;
  const peak = stroke.reduce((p, q) => (q.cylinderPa > p.cylinderPa ? q : p));
  return picture({
    title: 'Pressure while it is cranked',
    says: 'The cylinder’s pressure rises to its peak near top; the check valve lets the gauge fill toward it.',
    x: { label: 'Crank angle from top', unit: '°' },
    y: { label: 'Pressure', unit: 'psi' },
    curves: [
      { label: 'cylinder', points: stroke.map((p) => [p.angleDeg - top, over(p.cylinderPa)] as const) },
      { label: 'gauge', points: stroke.map((p) => [p.angleDeg - top, over(p.gaugePa)] as const) },
    ],
    marks: [{ x: peak.angleDeg - top, y: likelyPa / psi, label: 'gauge reads' }],
  });
}

/** Reading over leak, the answer marked, the sound engine's band across. */
export function leakPicture(
  { engine, gauge, conditions, lowPa, highPa }: ExpectedCompression,
  readingPa: number,
  areaMm2: number | undefined,
): Picture {
  const areas = spaced(0.05, 30, 11, true);
  return picture({
    title: 'Reading over leak',
    says: 'The reading falls as the leak grows: hardly at first, steeply between 1 and 10 mm², to nothing beyond.',
    x: { label: 'Effective leak', unit: 'mm²', logarithmic: true },
    y: { label: 'Gauge reading', unit: 'psi' },
    curves: [
      {
        label: 'this engine',
        points: areas.map((area) => [area, readingWithLeak(engine, gauge, conditions, area) / psi] as const),
      },
    ],
    ...(areaMm2 !== undefined && { marks: [{ x: areaMm2, y: readingPa / psi, label: 'this reading' }] }),
    bands: [{ axis: 'y', from: lowPa / psi, to: highPa / psi, label: 'sound' }],
  });
}
