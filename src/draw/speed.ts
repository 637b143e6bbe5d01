import type { Axis } from './axis.js';
import { area, line, type Shape } from './shape.js';

export interface SpeedPoint {
  readonly t: number;
  readonly rpm: number;
  /** standard uncertainty, rpm */
  readonly u?: number;
}

/** Speeds that every picture beside it shares, so that two recordings can be laid against each other. */
export interface SpeedSpan {
  readonly low: number;
  readonly high: number;
}

/** Undefined where no speed was heard. */
export function speedSpan(
  tracks: readonly (readonly SpeedPoint[])[],
  mostRpm?: number | undefined,
): SpeedSpan | undefined {
  const speeds = tracks.flatMap((track) => track.map(({ rpm }) => rpm));
  if (speeds.length === 0) return undefined;
  const all = mostRpm === undefined ? speeds : [...speeds, mostRpm];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const room = Math.max(50, 0.08 * (high - low));
  return { low: Math.max(0, low - room), high: high + room };
}

/** The curve, with what it may be off by (95 %) as a band behind it where that is known. */
export function speedCurve(track: readonly SpeedPoint[], x: Axis['at'], y: Axis['at']): Shape[] {
  return unbroken(track).flatMap((run) => {
    const edge = (side: 1 | -1) => run.map(({ t, rpm, u = 0 }) => ({ x: x(t), y: y(rpm + side * 2 * u) }));
    return [
      ...(run.some(({ u }) => u) ? [area('doubt', [...edge(1), ...edge(-1).reverse()])] : []),
      line(
        'curve',
        run.map(({ t, rpm }) => ({ x: x(t), y: y(rpm) })),
      ),
    ];
  });
}

/** A gap in what was heard, over two and a half times the usual step, is a gap in the curve, never a line across it. */
function unbroken(track: readonly SpeedPoint[]): (readonly SpeedPoint[])[] {
  const steps = track
    .slice(1)
    .map((p, i) => p.t - track[i]!.t)
    .toSorted((a, b) => a - b);
  const usual = steps[Math.floor(steps.length / 2)] ?? 0;
  const runs: SpeedPoint[][] = [];
  for (const point of track) {
    const last = runs.at(-1)?.at(-1);
    if (last && point.t - last.t <= 2.5 * usual) runs.at(-1)!.push(point);
    else runs.push([point]);
  }
  return runs;
}
