import type { Content } from 'pdfmake/interfaces.js';
import { type Drawing, rect, type SpeedSpan, speedCurve, speedSpan } from '../../../draw/index.js';
import type { SpeedCurve, SpeedsBlock } from '../../service-record/index.js';
import { onPaper } from '../on-paper.js';
import type { Setting } from './setting.js';

/** Points. */
const height = 62;
const gap = 10;

/** The curves side by side against one scale of speed, its ends in words under each. */
export function speedDrawing({ curves }: SpeedsBlock, { type, width }: Setting): Content {
  const span = speedSpan(curves.map(({ points }) => points))!;
  const each = (width - gap * (curves.length - 1)) / curves.length;
  return {
    margin: [0, 4, 0, 2],
    columnGap: gap,
    unbreakable: true,
    columns: curves.map((curve) => ({
      width: each,
      stack: [
        ...onPaper(framed(curve, span, each), type),
        type.text(`${curve.label}, ${wordsOf(curve)}`, type.small),
      ],
    })),
  };
}

function framed({ points, seconds }: SpeedCurve, { low, high }: SpeedSpan, width: number): Drawing {
  const x = (t: number) => (t / seconds) * width;
  const y = (rpm: number) => height - ((rpm - low) / (high - low)) * height;
  const frame = rect('frame', { x: 0.3, y: 0.3, width: width - 0.6, height: height - 0.6 });
  return { width, height, says: '', shapes: [frame, ...speedCurve(points, x, y)] };
}

function wordsOf({ points, seconds }: SpeedCurve): string {
  const speeds = points.map(({ rpm }) => rpm);
  const [low, high] = [Math.min(...speeds), Math.max(...speeds)].map((rpm) => Math.round(rpm));
  return `${low} to ${high} rpm in ${Math.round(seconds)} s`;
}
