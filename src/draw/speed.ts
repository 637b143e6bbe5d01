import { type Axis, axisOver } from './axis.js';
import { area, type Drawing, level, line, type Shape, text, upright } from './shape.js';

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

/** What was heard of an engine's speed. */
export interface SpeedView {
  readonly seconds: number;
  readonly track: readonly SpeedPoint[];
  /** stretches of steady speed */
  readonly segments: readonly { readonly from: number; readonly to: number }[];
  readonly marks: readonly { readonly t: number; readonly what: string }[];
  /** the most that the engine may turn */
  readonly mostRpm?: number | undefined;
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

const height = 230;
const [left, right, top, bottom] = [52, 12, 22, 30];

/** Speed over time on ruled paper: the curve, steady stretches underlined, marks and the most that is allowed. */
export function speedDrawing(view: SpeedView, span: SpeedSpan, width: number, says: string): Drawing {
  const { seconds, track, segments, marks, mostRpm } = view;
  const end = width - right;
  const ground = height - bottom;
  const x = axisOver(0, seconds, left, end, 80);
  const y = axisOver(span.low, span.high, ground, top, 42);
  const most = mostRpm === undefined ? undefined : y.at(mostRpm);
  return {
    width,
    height,
    says,
    shapes: [
      ...y.ticks.flatMap((rpm) => [
        level('grid', y.at(rpm), left, end),
        text('tick', { x: left - 8, y: y.at(rpm) }, String(rpm), { anchor: 'end' }),
      ]),
      ...x.ticks.slice(0, -1).map((t) => text('tick', { x: x.at(t), y: height - 14 }, `${t} s`)),
      text('tick', { x: 4, y: 10 }, 'rpm', { anchor: 'start' }),
      ...speedCurve(track, x.at, y.at),
      ...segments.map(({ from, to }) => level('steady', ground + 4, x.at(from), x.at(to))),
      ...(most === undefined
        ? []
        : [
            level('most', most, left, end),
            text('most-words', { x: end - 2, y: most - 9 }, `at most ${Math.round(mostRpm!)}`, {
              anchor: 'end',
            }),
          ]),
      ...marks.flatMap(({ t, what }) => [
        upright('mark', x.at(t), top, ground),
        text('mark-words', { x: x.at(t) + 4, y: top + 4 }, what, { anchor: 'start' }),
      ]),
    ],
  };
}
