import { useEffect, useRef } from 'react';
import type { Bolt, Plate, Seen, Straight } from '../../sight/index.js';
import { useUnits } from '../data/queries.js';
import { lengthWords } from './length-words.js';

type Place = Plate['outline'][number];

/** What lies over the straightened photograph: only what is drawn can be doubted. */
interface SawProps {
  readonly seen: Seen;
  /** holes and bolts, by their place in the list, that do not count */
  readonly dropped: ReadonlySet<number>;
  readonly onTap?: (index: number) => void;
  readonly marked?: readonly { readonly at: Place; readonly sign: string }[];
  readonly says: string;
}

/** millimetres round the part */
const room = 8;

/** The photograph from straight above, with what was measured drawn over it; a tap drops a hole or takes it back. */
export function Saw({ seen, dropped, onTap, marked = [], says }: SawProps) {
  const system = useUnits();
  const { straight, plate, bolts } = seen;
  if (!straight) return null;
  const { left, top, right, bottom } = boxOf(plate ? plate.outline : (bolts ?? []).flatMap(endsOf), straight);
  const d = (line: readonly Place[]) =>
    `M${line.map(({ x, y }) => `${x.toFixed(2)} ${(-y).toFixed(2)}`).join('L')}Z`;
  const thin = Math.max(right - left, bottom - top) / 220;
  return (
    // biome-ignore lint/a11y/useSemanticElements: the parts in it are buttons
    <svg
      className="photo-read"
      role="group"
      aria-label={says}
      viewBox={`${left} ${top} ${right - left} ${bottom - top}`}
      strokeWidth={thin}
    >
      <Photograph straight={straight} />
      {plate &&
        [plate.outline, ...plate.cutouts].map((line) => <path key={d(line)} className="edge" d={d(line)} />)}
      {plate?.holes.map(({ x, y, d: wide }, i) => (
        <Item
          key={`${x} ${y}`}
          name={`hole ${i + 1}, ${lengthWords(wide, system)} across`}
          dropped={dropped.has(i)}
          onTap={onTap && (() => onTap(i))}
        >
          <circle cx={x} cy={-y} r={wide / 2} />
          <Sign at={{ x, y }} words={String(i + 1)} size={Math.max(4, Math.min(9, wide * 0.55))} />
        </Item>
      ))}
      {bolts?.map((bolt, i) => (
        <Item
          key={`${bolt.x} ${bolt.y}`}
          name={`bolt ${i + 1}, ${lengthWords(bolt.length, system, 'coarse')} under the head`}
          dropped={dropped.has(i)}
          onTap={onTap && (() => onTap(i))}
        >
          <circle cx={bolt.x} cy={-bolt.y} r={Math.max(5, bolt.d)} />
          <Sign at={bolt} words={String(i + 1)} size={6} />
        </Item>
      ))}
      {marked.map(({ at, sign }) => (
        <g key={`${at.x} ${at.y}`} className="differs">
          <circle cx={at.x} cy={-at.y} r={7} />
          <Sign at={{ x: at.x + 8, y: at.y + 7 }} words={sign} size={6} />
        </g>
      ))}
    </svg>
  );
}

function Item(props: {
  name: string;
  dropped: boolean;
  onTap: (() => void) | undefined;
  children: React.ReactNode;
}) {
  const { name, dropped, onTap, children } = props;
  const look = dropped ? 'item dropped' : 'item';
  if (!onTap) return <g className={look}>{children}</g>;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button cannot stand within a drawing
    <g
      className={`${look} tap`}
      role="button"
      tabIndex={0}
      aria-pressed={!dropped}
      aria-label={name}
      onClick={onTap}
      onKeyDown={(e) => {
        if (e.key !== 'Enter' && e.key !== ' ') return;
        e.preventDefault();
        onTap();
      }}
    >
      {children}
    </g>
  );
}

const Sign = ({ at, words, size }: { at: Place; words: string; size: number }) => (
  <text x={at.x} y={-at.y} dy="0.36em" fontSize={size} textAnchor="middle">
    {words}
  </text>
);

function boxOf(places: readonly Place[], { picture, step, left, top }: Straight) {
  const right = left + picture.width * step;
  const low = top - picture.height * step;
  if (places.length === 0) return { left, top: -top, right, bottom: -low };
  const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
  return {
    left: Math.max(left, Math.min(...xs) - room),
    right: Math.min(right, Math.max(...xs) + room),
    top: -Math.min(top, Math.max(...ys) + room),
    bottom: -Math.max(low, Math.min(...ys) - room),
  };
}

const endsOf = ({ x, y, length }: Bolt): Place[] => [
  { x: x - length, y: y - length },
  { x: x + length, y: y + length },
];

function Photograph({ straight }: { straight: Straight }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { picture, step, left, top } = straight;
  useEffect(() => {
    if (canvas.current) paint(canvas.current, straight);
  }, [straight]);
  return (
    <foreignObject x={left} y={-top} width={picture.width * step} height={picture.height * step}>
      <canvas ref={canvas} width={picture.width} height={picture.height} className="photograph" />
    </foreignObject>
  );
}

export function paint(canvas: HTMLCanvasElement, { picture }: Straight): CanvasRenderingContext2D {
  const { width, height, data } = picture;
  const drawn = canvas.getContext('2d')!;
  drawn.putImageData(new ImageData(new Uint8ClampedArray(data), width, height), 0, 0);
  return drawn;
}
