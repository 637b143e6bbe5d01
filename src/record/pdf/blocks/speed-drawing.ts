import type { Content } from 'pdfmake/interfaces.js';
import type { SpeedCurve, SpeedsBlock } from '../../service-record/index.js';
import { color } from '../theme.js';
import type { Setting } from './setting.js';

/** Points. */
const height = 62;
const gap = 10;

interface Scale {
  readonly low: number;
  readonly high: number;
}

/** The curves side by side against one scale of speed, its ends in words under each. */
export function speedDrawing({ curves }: SpeedsBlock, { type, width }: Setting): Content {
  const scale = scaleOf(curves);
  const each = (width - gap * (curves.length - 1)) / curves.length;
  return {
    margin: [0, 4, 0, 2],
    columnGap: gap,
    unbreakable: true,
    columns: curves.map((curve) => ({
      width: each,
      stack: [
        { svg: svgOf(curve, scale, each), width: each },
        type.text(`${curve.label}, ${wordsOf(curve)}`, type.small),
      ],
    })),
  };
}

const speedsOf = ({ points }: SpeedCurve) => points.map(({ rpm }) => rpm);

function scaleOf(curves: readonly SpeedCurve[]): Scale {
  const speeds = curves.flatMap(speedsOf);
  const room = Math.max(50, 0.06 * (Math.max(...speeds) - Math.min(...speeds)));
  return { low: Math.min(...speeds) - room, high: Math.max(...speeds) + room };
}

const wordsOf = (curve: SpeedCurve) => {
  const speeds = speedsOf(curve);
  const [low, high] = [Math.min(...speeds), Math.max(...speeds)].map((rpm) => Math.round(rpm));
  return `${low} to ${high} rpm in ${Math.round(curve.seconds)} s`;
};

function svgOf(curve: SpeedCurve, { low, high }: Scale, width: number): string {
  const x = (t: number) => (t / curve.seconds) * width;
  const y = (rpm: number) => height - ((rpm - low) / (high - low)) * height;
  const lines = partedRuns(curve).map((run) => {
    const points = run.map(({ t, rpm }) => `${n(x(t))},${n(y(rpm))}`).join(' ');
    return `<polyline points="${points}" fill="none" stroke="${color.accent}" stroke-width="1.1"/>`;
  });
  const frame = `<rect x="0.3" y="0.3" width="${n(width - 0.6)}" height="${height - 0.6}" fill="none" stroke="${color.rule}" stroke-width="0.6"/>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${n(width)}" height="${height}" viewBox="0 0 ${n(width)} ${height}">${frame}${lines.join('')}</svg>`;
}

/** A second without a speed is a gap, not a line across it. */
function partedRuns({ points }: SpeedCurve): SpeedCurve['points'][] {
  const list: SpeedCurve['points'][number][][] = [];
  for (const point of points) {
    const last = list.at(-1)?.at(-1);
    if (last && point.t - last.t < 1) list.at(-1)!.push(point);
    else list.push([point]);
  }
  return list;
}

const n = (value: number) => value.toFixed(2);
