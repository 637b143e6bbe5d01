import { type HoleDrawing, type HoleMark, holesDrawing, roomFor, text } from '../../../draw/index.js';
import type { From } from '../../../job/index.js';
import { Drawn } from '../../parts/drawn.js';

/** What is lit: the bolt whose turn it is, those done in this pass, the one before. */
export interface Lit {
  readonly next?: number | undefined;
  readonly before?: number | undefined;
  readonly done?: ReadonlySet<number>;
  readonly trouble?: ReadonlySet<number>;
}

type Plane = Pick<From<'joint'>, 'holes' | 'order' | 'bottomEdge'>;
type HoleState = 'open' | 'next' | 'done' | 'trouble';

const span = 700;
const edgeRoom = span * 0.06;

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
  const bow = lit.before && lit.next ? ([lit.before - 1, lit.next - 1] as const) : undefined;
  const holes = joint.holes.map((at, i) => markOf(joint, lit, at, i + 1));
  const drawing = holesDrawing(holes, roomFor(joint.holes, span), { bow, says: describe(joint, lit) });
  return (
    <Drawn drawing={withEdge(drawing, joint.bottomEdge)} scaled tapped={Boolean(onTap)} className="joint">
      {onTap &&
        joint.holes.map((_, i) => {
          const hole = i + 1;
          return (
            <Tap key={hole} drawing={drawing} hole={hole} name={nameOf(joint, lit, hole)} onTap={onTap} />
          );
        })}
    </Drawn>
  );
}

const signs: Partial<Record<HoleState, string>> = { done: '✓', trouble: '!' };

function markOf({ order }: Plane, lit: Lit, at: { xMm: number; yMm: number }, hole: number): HoleMark {
  const state = stateOf(lit, hole);
  const place = order.indexOf(hole) + 1;
  const sign = signs[state];
  return {
    xMm: at.xMm,
    yMm: at.yMm,
    state,
    words: place > 0 ? String(place) : '',
    ...(state === 'next' && { times: 1.45 }),
    ...(sign && { sign }),
  };
}

function stateOf({ trouble, next, done }: Lit, hole: number): HoleState {
  if (trouble?.has(hole)) return 'trouble';
  if (next === hole) return 'next';
  return done?.has(hole) ? 'done' : 'open';
}

function withEdge(drawing: HoleDrawing, edge: string | undefined): HoleDrawing {
  const { width, height } = drawing;
  const words = text('edge', { x: width / 2, y: height + edgeRoom * 0.5 }, edge ?? '', {
    size: span * 0.045,
  });
  return {
    ...drawing,
    height: height + edgeRoom,
    shapes: edge ? [...drawing.shapes, words] : drawing.shapes,
  };
}

function Tap(props: { drawing: HoleDrawing; hole: number; name: string; onTap: (hole: number) => void }) {
  const { x, y } = props.drawing.places[props.hole - 1]!;
  const tap = () => props.onTap(props.hole);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button cannot stand within a drawing
    <circle
      className="tap"
      cx={x}
      cy={y}
      r={props.drawing.radius}
      role="button"
      tabIndex={0}
      aria-label={props.name}
      onClick={tap}
      onKeyDown={(e) => {
        if (e.key !== 'Enter' && e.key !== ' ') return;
        e.preventDefault();
        tap();
      }}
    />
  );
}

function nameOf({ order }: Plane, lit: Lit, hole: number): string {
  const place = order.indexOf(hole) + 1;
  const word = { open: '', next: ', next', done: ', done', trouble: ', look into it' }[stateOf(lit, hole)];
  return `${place > 0 ? `bolt ${place}` : `hole ${hole}, not in the order yet`}${word}`;
}

function describe({ holes, order }: Plane, { next, done }: Lit): string {
  const lit = next ? `; next is bolt ${order.indexOf(next) + 1}` : '';
  return `${holes.length} bolts, each numbered by its place in the tightening order${lit}; ${done?.size ?? 0} done in this pass`;
}
