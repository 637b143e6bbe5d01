import { useId, useState } from 'react';
import { parse, QuantityError } from '../../../quantity/index.js';
import { HolesFromMat } from '../../mat/holes-from-mat.js';
import { Choices, TextField } from '../../parts/field.js';

export interface Hole {
  readonly xMm: number;
  readonly yMm: number;
}
type Shape = 'round' | 'head' | 'mat' | 'tapped' | 'typed';

/** Where the holes are: in two rows like a head, on a circle, photographed on the mat, tapped on a drawing, or typed. */
export function HolePattern({
  holes,
  given,
  onChange,
}: {
  holes: readonly Hole[];
  /** the joint was laid out before: its holes stand as they are */
  given: boolean;
  onChange: (holes: Hole[]) => void;
}) {
  const [shape, setShape] = useState<Shape>(given ? 'tapped' : 'head');
  return (
    <div className="stack tight">
      <Choices<Shape>
        label="Where the holes are"
        value={shape}
        onChange={setShape}
        choices={[
          { id: 'head', label: 'Around a head or cover' },
          { id: 'round', label: 'On a circle' },
          { id: 'mat', label: 'From a photograph' },
          { id: 'tapped', label: 'Tap them' },
          { id: 'typed', label: 'Type them' },
        ]}
      />
      {shape === 'head' && <HeadHoles bolts={holes.length} onChange={onChange} />}
      {shape === 'round' && <RoundHoles onChange={onChange} />}
      {shape === 'mat' && <HolesFromMat onChange={onChange} />}
      {shape === 'tapped' && <TapHoles holes={holes} onChange={onChange} />}
      {shape === 'typed' && <TypedHoles holes={holes} onChange={onChange} />}
    </div>
  );
}

/** A length written at the bench, in millimetres; undefined while it cannot be read. */
function lengthMm(text: string): number | undefined {
  try {
    return parse(text, 'length', { unit: 'mm' }).si * 1000;
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}

function HeadHoles({ bolts, onChange }: { bolts: number; onChange: (holes: Hole[]) => void }) {
  const [count, setCount] = useState(String(bolts));
  const [long, setLong] = useState('110 mm');
  const [wide, setWide] = useState('80 mm');
  const change = (next: { count?: string; long?: string; wide?: string }) => {
    const [c, l, w] = [next.count ?? count, next.long ?? long, next.wide ?? wide];
    setCount(c);
    setLong(l);
    setWide(w);
    const [n, length, width] = [Number(c), lengthMm(l), lengthMm(w)];
    if (Number.isInteger(n) && n >= 2 && n <= 64 && length && width) onChange(aroundHead(n, length, width));
  };
  return (
    <div className="fields">
      <TextField label="Bolts" value={count} inputMode="numeric" onChange={(v) => change({ count: v })} />
      <TextField label="Longest distance between holes" value={long} onChange={(v) => change({ long: v })} />
      <TextField
        label="Across"
        value={wide}
        onChange={(v) => change({ wide: v })}
        help="Only the proportions matter for the order."
      />
    </div>
  );
}

/** Holes spread evenly along the edge of a rounded rectangle, starting top left and going clockwise. */
export function aroundHead(count: number, length: number, width: number): Hole[] {
  return Array.from({ length: count }, (_, i) => {
    const a =
      Math.PI * 0.75 - (2 * Math.PI * i) / count + (count % 4 === 0 ? 0 : Math.PI / count - Math.PI / 4);
    const squash = (v: number) => Math.sign(v) * Math.abs(v) ** 0.5;
    return { xMm: (length / 2) * squash(Math.cos(a)), yMm: (width / 2) * squash(Math.sin(a)) };
  }).map((h) => ({ xMm: round(h.xMm), yMm: round(h.yMm) }));
}

const round = (mm: number) => Math.round(mm * 100) / 100 + 0;

function RoundHoles({ onChange }: { onChange: (holes: Hole[]) => void }) {
  const [count, setCount] = useState('4');
  const [circle, setCircle] = useState('60 mm');
  const change = (c: string, d: string) => {
    setCount(c);
    setCircle(d);
    const [n, diameter] = [Number(c), lengthMm(d)];
    if (!Number.isInteger(n) || n < 2 || n > 64 || !diameter) return;
    const at = (i: number) => Math.PI / 2 - (2 * Math.PI * i) / n;
    onChange(
      Array.from({ length: n }, (_, i) => ({
        xMm: round((diameter / 2) * Math.cos(at(i))),
        yMm: round((diameter / 2) * Math.sin(at(i))),
      })),
    );
  };
  return (
    <div className="fields">
      <TextField label="Bolts" value={count} inputMode="numeric" onChange={(v) => change(v, circle)} />
      <TextField label="Circle through the holes" value={circle} onChange={(v) => change(count, v)} />
    </div>
  );
}

/** A tap sets a hole, a tap on a hole takes it away. The plate grows with what lies on it: only proportions matter. */
function TapHoles({ holes, onChange }: { holes: readonly Hole[]; onChange: (holes: Hole[]) => void }) {
  const id = useId();
  const half = Math.max(60, ...holes.flatMap((h) => [Math.abs(h.xMm) + 8, (Math.abs(h.yMm) + 8) / 0.75]));
  const r = half * 0.08;
  const tap = (e: React.MouseEvent<SVGSVGElement>) => {
    const box = e.currentTarget.getBoundingClientRect();
    const x = round(((e.clientX - box.left) / box.width) * 2 * half - half);
    const y = round(0.75 * half - ((e.clientY - box.top) / box.height) * 1.5 * half);
    const near = holes.findIndex((h) => Math.hypot(h.xMm - x, h.yMm - y) < 1.3 * r);
    onChange(near >= 0 ? holes.filter((_, i) => i !== near) : [...holes, { xMm: x, yMm: y }]);
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: by keyboard the same pattern is typed as coordinates, the choice beside this one
    <svg
      viewBox={`${-half} ${-0.75 * half} ${2 * half} ${1.5 * half}`}
      className="plate"
      onClick={tap}
      role="img"
      aria-labelledby={id}
    >
      <title id={id}>Tap where the holes are; tap a hole to take it away. {holes.length} so far.</title>
      <rect
        x={-half + 1}
        y={-0.75 * half + 1}
        width={2 * half - 2}
        height={1.5 * half - 2}
        rx={half * 0.2}
        fill="var(--sheet)"
        stroke="var(--rule)"
      />
      {holes.map((h, i) => (
        <g key={`${h.xMm} ${h.yMm}`}>
          <circle cx={h.xMm} cy={-h.yMm} r={r} fill="none" stroke="var(--ink)" strokeWidth={r * 0.16} />
          <text x={h.xMm} y={-h.yMm} dy="0.36em" fontSize={r} textAnchor="middle" fill="var(--ink)">
            {i + 1}
          </text>
        </g>
      ))}
    </svg>
  );
}

function TypedHoles({ holes, onChange }: { holes: readonly Hole[]; onChange: (holes: Hole[]) => void }) {
  const [text, setText] = useState(holes.map((h) => `${h.xMm},${h.yMm}`).join(' '));
  const change = (value: string) => {
    setText(value);
    const read = value
      .trim()
      .split(/\s+/)
      .map((pair) => pair.split(',').map(Number));
    if (read.every((p) => p.length === 2 && p.every(Number.isFinite)))
      onChange(read.map(([x, y]) => ({ xMm: x!, yMm: y! })));
  };
  return (
    <TextField
      label="Coordinates in mm, seen from the wrench"
      value={text}
      onChange={change}
      placeholder="0,0 60,0 60,40 0,40"
      help="x to the right, y upward, one pair a hole"
    />
  );
}
