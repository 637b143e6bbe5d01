import type { From } from '../../../job/index.js';

/** What is lit: the bolt whose turn it is, those done in this pass, the one before. */
export interface Lit {
  readonly next?: number | undefined;
  readonly before?: number | undefined;
  readonly done?: ReadonlySet<number>;
  readonly trouble?: ReadonlySet<number>;
}

type Plane = Pick<From<'joint'>, 'holes' | 'order' | 'bottomEdge'>;

/**
 * The real hole pattern, seen from the wrench, each hole numbered by its place in the order. The next bolt is large
 * and filled; a done one carries a tick, so that color alone never tells.
 */
export function JointDrawing({
  joint,
  lit = {},
  onTap,
}: {
  joint: Plane;
  lit?: Lit;
  onTap?: (hole: number) => void;
}) {
  const { at, width, height, unit } = frameOf(joint.holes);
  const r = unit * 0.085;
  const before = lit.before && at(lit.before);
  const next = lit.next && at(lit.next);
  return (
    <svg viewBox={`0 0 ${width} ${height}`} className="joint" role="img" aria-label={describe(joint, lit)}>
      <Face joint={joint} />
      {before && next && <Arc from={before} to={next} r={r} />}
      {joint.holes.map((_, i) => {
        const hole = i + 1;
        const place = joint.order.indexOf(hole) + 1;
        return (
          <Hole
            key={hole}
            at={at(hole)}
            r={r}
            label={place > 0 ? String(place) : ''}
            state={
              lit.trouble?.has(hole)
                ? 'trouble'
                : lit.next === hole
                  ? 'next'
                  : lit.done?.has(hole)
                    ? 'done'
                    : 'open'
            }
            name={`hole ${hole}${place > 0 ? `, number ${place} in the order` : ', not in the order yet'}`}
            onTap={onTap && (() => onTap(hole))}
          />
        );
      })}
      {joint.bottomEdge && (
        <text
          x={width / 2}
          y={height - unit * 0.01}
          textAnchor="middle"
          fontSize={unit * 0.045}
          fill="var(--soft)"
        >
          {joint.bottomEdge}
        </text>
      )}
    </svg>
  );
}

interface Place {
  readonly x: number;
  readonly y: number;
}

/** Hole millimetres to drawing units; y grows upward on the face and downward on the screen. */
function frameOf(holes: Plane['holes']) {
  const xs = holes.map((h) => h.xMm);
  const ys = holes.map((h) => h.yMm);
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const span = Math.max(right - left, high - low, 1);
  const unit = 700;
  const scale = (unit * 0.62) / span;
  const pad = unit * 0.19;
  const width = (right - left) * scale + 2 * pad;
  const height = (high - low) * scale + 2 * pad + unit * 0.06;
  const place = (xMm: number, yMm: number): Place => ({
    x: pad + (xMm - left) * scale,
    y: pad + (high - yMm) * scale,
  });
  const at = (hole: number) => place(holes[hole - 1]?.xMm ?? 0, holes[hole - 1]?.yMm ?? 0);
  return { at, width, height, unit };
}

function Face({ joint }: { joint: Plane }) {
  const { width, height, unit } = frameOf(joint.holes);
  const inset = unit * 0.07;
  return (
    <rect
      x={inset}
      y={inset}
      width={width - 2 * inset}
      height={height - 2 * inset - unit * 0.06}
      rx={unit * 0.12}
      fill="none"
      stroke="var(--soft)"
      strokeWidth={3}
    />
  );
}

function Arc({ from, to, r }: { from: Place; to: Place; r: number }) {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.hypot(dx, dy) || 1;
  const cut = (p: Place, way: number, by: number): Place => ({
    x: p.x + (way * dx * by) / length,
    y: p.y + (way * dy * by) / length,
  });
  const [a, b] = [cut(from, 1, r), cut(to, -1, r * 1.5)];
  const mid = { x: (a.x + b.x) / 2 - dy * 0.12, y: (a.y + b.y) / 2 + dx * 0.12 };
  return (
    <path
      d={`M${a.x} ${a.y} Q${mid.x} ${mid.y} ${b.x} ${b.y}`}
      fill="none"
      stroke="var(--accent)"
      strokeWidth={4}
      strokeDasharray="3 11"
      strokeLinecap="round"
    />
  );
}

type HoleState = 'open' | 'next' | 'done' | 'trouble';
const ink: Readonly<Record<HoleState, string>> = {
  open: 'var(--soft)',
  next: 'var(--accent)',
  done: 'var(--pass)',
  trouble: 'var(--fail)',
};

function Hole(props: {
  at: Place;
  r: number;
  label: string;
  state: HoleState;
  name: string;
  onTap?: (() => void) | undefined;
}) {
  const { at, label, state, onTap } = props;
  const r = state === 'next' ? props.r * 1.45 : props.r;
  const word = { open: '', next: ', next', done: ', done', trouble: ', look into it' }[state];
  const tap = onTap && {
    role: 'button',
    tabIndex: 0,
    'aria-label': props.name + word,
    onClick: onTap,
    onKeyDown: (e: React.KeyboardEvent) => {
      if (e.key !== 'Enter' && e.key !== ' ') return;
      e.preventDefault();
      onTap();
    },
    style: { cursor: 'pointer' },
  };
  return (
    <g {...tap}>
      <circle
        cx={at.x}
        cy={at.y}
        r={r}
        fill={state === 'next' ? 'var(--accent)' : 'var(--sheet)'}
        stroke={ink[state]}
        strokeWidth={4}
      />
      <text
        x={at.x}
        y={at.y}
        dy="0.36em"
        textAnchor="middle"
        fontSize={r * 0.95}
        fontWeight={700}
        fill={state === 'next' ? 'var(--accent-ink)' : ink[state]}
      >
        {label}
      </text>
      {(state === 'done' || state === 'trouble') && (
        <text
          x={at.x + r * 0.95}
          y={at.y - r * 0.62}
          fontSize={r * 0.8}
          fontWeight={700}
          textAnchor="middle"
          fill={ink[state]}
        >
          {state === 'done' ? '✓' : '!'}
        </text>
      )}
    </g>
  );
}

function describe(joint: Plane, { next, done }: Lit): string {
  const lit = next ? `; next is hole ${next}` : '';
  return `${joint.holes.length} holes, tightened in the order of holes ${joint.order.join(', ')}${lit}; ${done?.size ?? 0} done in this pass`;
}
