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
 * How the engine hangs together: what must be off first stands before what it frees, to its left or, on a deep engine,
 * above it. What comes off is drawn full, goals with a heavy edge, what is off already with a tick; what stays on is
 * named small and grey underneath.
 */
export function GraphPicture({ plan, off }: { plan: TeardownPlan; off: ReadonlySet<string> }) {
  const [box, width] = useWidth<HTMLDivElement>();
  const columns = columnsOf(nodesOf(plan, off));
  const empty = !columns.some((column) => column.some(isShown));
  return (
    <div ref={box} className="graph">
      {empty ? (
        <p className="soft">Once something is wanted or off, this shows what hangs on what.</p>
      ) : (
        width > 0 && (width < 620 ? <Rows columns={columns} /> : <Drawing columns={columns} width={width} />)
      )}
    </div>
  );
}

const legend = 'Heavy edge: wanted. ✓: off already.';

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

/** From left to right by depth; an engine too deep for that is drawn from the top down. */
function Drawing({ columns, width }: { columns: readonly Node[][]; width: number }) {
  const last = columns.findLastIndex((column) => column.some(isShown));
  const room = Math.floor((width + between) / (leastColumn + between));
  if (last + 1 > room) return <Down columns={columns.slice(0, last + 1)} width={width} />;
  // beyond the last piece that comes off only what stays on is left: one column of it, where there is room, shows it
  const drawn = columns.slice(0, Math.max(2, last + (last + 2 <= room ? 2 : 1)));
  return <Across columns={drawn} width={width} deeper={columns.slice(drawn.length).flat().length} />;
}

function Across(props: { columns: readonly Node[][]; width: number; deeper: number }) {
  const { columns, width, deeper } = props;
  const columnWidth = (width - 2 + between) / columns.length - between;
  const placed = columns.flatMap((column, c) => {
    const x = c * (columnWidth + between);
    return column.filter(isShown).map((node, r): Placed => ({ ...node, x, y: r * (nodeHeight + gap) }));
  });
  const tops = columns.map((column) => column.filter(isShown).length * (nodeHeight + gap));
  return (
    <div>
      <svg width={width} height={Math.max(...tops)} role="img" aria-label={told(placed)}>
        <Edges placed={placed} path={sideways(columnWidth)} />
        {placed.map((node) => (
          <Box key={node.id} node={node} width={columnWidth} />
        ))}
      </svg>
      <div
        className="stays"
        style={{ gridTemplateColumns: `repeat(${columns.length}, ${columnWidth}px)`, columnGap: between }}
      >
        {columns.map((column, c) => (
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
      {deeper > 0 && <p className="soft">Deeper inside, all of it stays on: {deeper} pieces.</p>}
      <p className="soft">Left of a piece stands what must be off before it. {legend}</p>
    </div>
  );
}

const widestPiece = 150;

function Down({ columns, width }: { columns: readonly Node[][]; width: number }) {
  const most = Math.max(...columns.map((column) => column.filter(isShown).length));
  const fit = Math.max(1, Math.floor((width + gap) / (leastColumn + gap)));
  const perLine = Math.min(most, fit);
  const pieceWidth = Math.min(widestPiece, (width - 2 + gap) / perLine - gap);
  // a depth with more pieces than fit goes on in a second line
  const lines = columns.flatMap((column) => {
    const shown = column.filter(isShown);
    return Array.from({ length: Math.ceil(shown.length / perLine) }, (_, i) =>
      shown.slice(i * perLine, (i + 1) * perLine),
    );
  });
  const placed = lines.flatMap((line, l) =>
    line.map((node, i): Placed => ({ ...node, x: i * (pieceWidth + gap), y: l * (nodeHeight + between) })),
  );
  const stays = columns.flat().filter((n) => !isShown(n));
  return (
    <div>
      <svg width={width} height={lines.length * (nodeHeight + between)} role="img" aria-label={told(placed)}>
        <Edges placed={placed} path={downward(pieceWidth)} />
        {placed.map((node) => (
          <Box key={node.id} node={node} width={pieceWidth} />
        ))}
      </svg>
      {stays.length > 0 && (
        <details>
          <summary>{stays.length} more stay on</summary>
          <p className="soft">{stays.map((n) => n.name).join(', ')}</p>
        </details>
      )}
      <p className="soft">Above a piece stands what must be off before it. {legend}</p>
    </div>
  );
}

type PathBetween = (from: Placed, to: Placed) => string;

const sideways =
  (width: number): PathBetween =>
  (from, to) => {
    const x = from.x + width;
    const mid = (x + to.x) / 2;
    const [y1, y2] = [from.y + nodeHeight / 2, to.y + nodeHeight / 2];
    return `M${x} ${y1}C${mid} ${y1} ${mid} ${y2} ${to.x} ${y2}`;
  };

const downward =
  (width: number): PathBetween =>
  (from, to) => {
    const y = from.y + nodeHeight;
    const mid = (y + to.y) / 2;
    const [x1, x2] = [from.x + width / 2, to.x + width / 2];
    return `M${x1} ${y}C${x1} ${mid} ${x2} ${mid} ${x2} ${to.y}`;
  };

function Edges({ placed, path }: { placed: readonly Placed[]; path: PathBetween }) {
  const at = new Map(placed.map((n) => [n.id, n]));
  return placed.flatMap((node) =>
    node.before.flatMap((id) => {
      const from = at.get(id);
      return from ? [<path key={`${id} ${node.id}`} className="edge" d={path(from, node)} />] : [];
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
    <>
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
      <p className="soft">Above a piece stands what must be off before it. {legend}</p>
    </>
  );
}
