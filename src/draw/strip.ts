import { circle, type Drawing, level, rect, type Shape, text, upright } from './shape.js';

/** A reading against its limits, all in one unit. */
export interface StripView {
  readonly value: number;
  /** expanded uncertainty of the reading, k = 2 */
  readonly reach: number;
  readonly min?: { readonly at: number; readonly words: string } | undefined;
  readonly max?: { readonly at: number; readonly words: string } | undefined;
}

const height = 46;
const pad = 8;

/** The allowed stretch, and the reading on it with the reach of its tool. The words beside it say the same. */
export function limitStrip({ value, reach, min, max }: StripView, width: number): Drawing {
  const bounds = [min, max].filter((bound) => bound !== undefined);
  const ends = [value - reach, value + reach];
  const all = [...ends, ...bounds.map(({ at }) => at)];
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const room = 0.28 * (most - least || Math.abs(value) || 1);
  const [low, high] = [least - room, most + room];
  const x = (v: number): number => pad + ((v - low) / (high - low)) * (width - 2 * pad);
  const from = x(min?.at ?? low);
  const words = ({ at, words }: (typeof bounds)[number]): Shape => {
    const anchor = x(at) > width * 0.7 ? 'end' : x(at) < width * 0.3 ? 'start' : undefined;
    const place = { x: Math.min(width - 2, Math.max(2, x(at))), y: 38 };
    return text('words', place, words, anchor && { anchor });
  };
  return {
    width,
    height,
    says: '',
    shapes: [
      rect('allowed', { x: from, y: 10, width: x(max?.at ?? high) - from, height: 14 }),
      ...bounds.flatMap((bound) => [upright('bound', x(bound.at), 6, 28), words(bound)]),
      level('reach', 17, x(ends[0]!), x(ends[1]!)),
      ...(reach > 0 ? ends.map((end) => upright('reach', x(end), 12, 22)) : []),
      circle('at', { x: x(value), y: 17 }, 5),
    ],
  };
}
