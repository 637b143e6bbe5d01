import type { TeardownPlan } from '../../../job/index.js';
import { useWidth } from '../../parts/width.js';

/** Where a piece stands in the picture. */
type State = 'off' | 'goal' | 'comes-off' | 'stays';

interface Node {
  readonly id: string;
  readonly name: string;
  readonly state: State;
  readonly before: readonly string[];
  /** pieces that leave with it in one piece, by the assembly's id */
  readonly whole?: string;
  readonly minutes: number;
}

const nodeHeight = 60;
const gap = 10;
const leastColumn = 104;
const between = 22;

/**
 * How the engine hangs together: what must be off first stands left of what it frees. What comes off is drawn full,
 * goals with a heavy edge, what is off already with a tick; what stays on is named small and grey underneath.
 */
export function GraphPicture({ plan, off }: { plan: TeardownPlan; off: ReadonlySet<string> }) {
  const [box, width] = useWidth<HTMLDivElement>();
  const columns = columnsOf(nodesOf(plan, off));
  return (
    <div ref={box} className="graph">
      {width > 0 && (width < 620 ? <Rows columns={columns} /> : <Drawing columns={columns} width={width} />)}
      <p className="soft">Left of a piece stands what must be off before it. {legend}</p>
    </div>
  );
}

const legend = 'Heavy edge: wanted. ✓: off already. Small and grey: stays on.';

function nodesOf({ engine, steps, goals }: TeardownPlan, off: ReadonlySet<string>): Node[] {
  const wanted = new Set(goals.map((g) => g.component));
  const removal = new Map(steps.flatMap((s) => s.components.map((id) => [id, s] as const)));
  return engine.graph.pieces.map((piece) => {
    const step = removal.get(piece.id);
    const state: State = off.has(piece.id)
      ? 'off'
      : wanted.has(piece.id)
        ? 'goal'
        : step
          ? 'comes-off'
          : 'stays';
    return {
      id: piece.id,
      name: engine.nameOf(piece.id),
      state,
      before: piece.before,
      minutes: piece.minutes,
      ...(step?.how === 'whole' && { whole: step.id }),
    };
  });
}

/** Columns by depth: a piece stands one right of the deepest piece before it. */
function columnsOf(nodes: readonly Node[]): Node[][] {
  const at = new Map(nodes.map((n) => [n.id, n]));
  const depth = new Map<string, number>();
  const depthOf = (id: string): number => {
    const known = depth.get(id);
    if (known !== undefined) return known;
    const found = 1 + Math.max(-1, ...(at.get(id)?.before ?? []).map(depthOf));
    depth.set(id, found);
    return found;
  };
  const columns: Node[][] = [];
  for (const node of nodes) {
    const column = depthOf(node.id);
    columns[column] = [...(columns[column] ?? []), node];
  }
  return columns.map((column) => column ?? []);
}

const isShown = (node: Node) => node.state !== 'stays';

interface Placed extends Node {
  readonly x: number;
  readonly y: number;
}

function Drawing({ columns, width }: { columns: readonly Node[][]; width: number }) {
  const last = columns.findLastIndex((column) => column.some(isShown));
  // beyond the last piece that comes off only what stays on is left: one column of it, where there is room, shows it
  const room = Math.floor((width + between) / (leastColumn + between));
  const drawn = columns.slice(0, Math.max(2, last + (last + 2 <= room ? 2 : 1)));
  const columnWidth = Math.max(leastColumn, (width - 2 + between) / drawn.length - between);
  const placed = drawn.flatMap((column, c) => {
    const x = c * (columnWidth + between);
    return column.filter(isShown).map((node, r): Placed => ({ ...node, x, y: r * (nodeHeight + gap) }));
  });
  const tops = drawn.map((column) => column.filter(isShown).length * (nodeHeight + gap));
  const height = Math.max(...tops, nodeHeight);
  const whole = drawn.length * (columnWidth + between) - between;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a deep engine scrolls sideways, and a keyboard must reach it
    <section className="scroll-x" tabIndex={0} aria-label="The pieces by depth">
      <div style={{ width: whole, minWidth: '100%' }}>
        <svg width={whole} height={height} role="img" aria-label={told(placed)}>
          <Edges placed={placed} columnWidth={columnWidth} />
          {placed.map((node) => (
            <Box key={node.id} node={node} width={columnWidth} />
          ))}
        </svg>
        <div
          className="stays"
          style={{ gridTemplateColumns: `repeat(${drawn.length}, ${columnWidth}px)`, columnGap: between }}
        >
          {drawn.map((column, c) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a column is its depth
            <ul key={c}>
              {column
                .filter((n) => !isShown(n))
                .map((n) => (
                  <li key={n.id}>{n.name}</li>
                ))}
            </ul>
          ))}
        </div>
        {whole > width && <p className="soft">Drag it sideways to see what lies deeper.</p>}
        {columns.length > drawn.length && (
          <p className="soft">
            Deeper inside, all of it stays on: {columns.slice(drawn.length).flat().length} pieces.
          </p>
        )}
      </div>
    </section>
  );
}

function Edges({ placed, columnWidth }: { placed: readonly Placed[]; columnWidth: number }) {
  const at = new Map(placed.map((n) => [n.id, n]));
  return placed.flatMap((node) =>
    node.before.flatMap((id) => {
      const from = at.get(id);
      if (!from) return [];
      const x1 = from.x + columnWidth;
      const y1 = from.y + nodeHeight / 2;
      const y2 = node.y + nodeHeight / 2;
      const mid = (x1 + node.x) / 2;
      return [
        <path
          key={`${id} ${node.id}`}
          className="edge"
          d={`M${x1} ${y1}C${mid} ${y1} ${mid} ${y2} ${node.x} ${y2}`}
        />,
      ];
    }),
  );
}

function Box({ node, width }: { node: Placed; width: number }) {
  const name = node.state === 'off' ? `✓ ${node.name}` : node.name;
  const lines = wrapped(name, Math.floor((width - 16) / 6.9));
  const top = nodeHeight / 2 - lines.length * 8 + 12;
  return (
    <g className={`node ${node.state}`} transform={`translate(${node.x} ${node.y})`}>
      <rect x="1.5" y="1.5" width={width - 3} height={nodeHeight - 3} rx="9" />
      {lines.map((line, i) => (
        <text key={line} x="9" y={top + i * 16}>
          {line}
        </text>
      ))}
    </g>
  );
}

/** At most three lines, broken between words; what does not fit ends in three dots. */
function wrapped(name: string, most: number): string[] {
  const lines = [''];
  for (const word of name.split(' ')) {
    const line = lines.at(-1)!;
    if (line === '') lines[lines.length - 1] = word;
    else if (`${line} ${word}`.length <= most) lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  const kept = lines.slice(0, 3);
  if (lines.length > 3) kept[2] = `${kept[2]!.slice(0, most - 1)}…`;
  return kept.map((line) => (line.length > most + 2 ? `${line.slice(0, most)}…` : line));
}

const told = (placed: readonly Placed[]) =>
  placed.length === 0
    ? 'Nothing comes off'
    : `What comes off, from outside in: ${placed
        .filter((n) => n.state !== 'off')
        .map((n) => n.name)
        .join(', ')}`;

/** On a phone: one row a depth, what comes off in boxes, what stays on counted. */
function Rows({ columns }: { columns: readonly Node[][] }) {
  const last = columns.findLastIndex((column) => column.some(isShown));
  return (
    <ol className="depths">
      {columns.slice(0, Math.max(1, last + 1)).map((column, c) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is its depth
        <li key={c}>
          <div>
            {column.filter(isShown).map((n) => (
              <span key={n.id} className={`node ${n.state}`}>
                {n.name}
                {n.state === 'off' && ' ✓'}
              </span>
            ))}
            {column.some((n) => !isShown(n)) && (
              <details>
                <summary>{column.filter((n) => !isShown(n)).length} stay on</summary>
                <span className="soft">
                  {column
                    .filter((n) => !isShown(n))
                    .map((n) => n.name)
                    .join(', ')}
                </span>
              </details>
            )}
          </div>
        </li>
      ))}
    </ol>
  );
}
