import type { BoreAnswer } from '../../../job/index.js';
import { useWidth } from '../../parts/width.js';

/** The walls of the bore as each direction saw them, deviation drawn large; every diameter stands at its height. */
export function BorePicture({ bore, limit }: { bore: BoreAnswer; limit: number | undefined }) {
  const [box, width] = useWidth<HTMLDivElement>();
  return (
    <div ref={box} className="bore-picture">
      {width > 0 && bore.map && bore.standard && <Drawing bore={bore} limit={limit} width={width} />}
    </div>
  );
}

const top = 34;
const level = 62;
const wall = 12;
const reach = 26;

function Drawing({ bore, limit, width }: { bore: BoreAnswer; limit: number | undefined; width: number }) {
  const { directions, heights, unit } = bore;
  const map = bore.map!;
  const standard = bore.standard!.size;
  const perRow = width < 560 ? Math.min(2, directions.length) : directions.length;
  const panel = Math.min(230, width / perRow);
  const rows = Math.ceil(directions.length / perRow);
  const tall = top + heights.length * level + 26;
  const bound = limit === undefined ? undefined : limit - standard;
  const most = Math.max(...map.cells.map((c) => Math.abs(c.growth)), Math.abs(bound ?? 0));
  const half = panel / 2 - reach - wall - 9;
  const times = niceTimes(most, standard, half);
  return (
    <svg
      width={panel * perRow}
      height={rows * tall + 16}
      role="img"
      aria-label={`Bore, largest ${said(map.largest.diameter)} ${unit} at ${heights[map.largest.depth - 1]}, ${map.largest.direction}; smallest ${said(map.smallest.diameter)} ${unit}. Drawn ${times} times.`}
    >
      <defs>
        <pattern id="metal" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line className="hatch" x1="0" y1="0" x2="0" y2="7" />
        </pattern>
      </defs>
      {directions.map((direction, i) => (
        <Panel
          key={direction}
          bore={bore}
          direction={direction}
          bound={bound}
          x={(i % perRow) * panel}
          y={Math.floor(i / perRow) * tall}
          size={{ panel, half, tall, perGrowth: (times * 2 * half) / standard }}
        />
      ))}
      <Legend width={panel * perRow} y={rows * tall + 8} times={times} bound={bound !== undefined} />
    </svg>
  );
}

function Legend(props: { width: number; y: number; times: number; bound: boolean }) {
  const { width, y, times, bound } = props;
  const middle = width / 2;
  return (
    <g className="legend">
      <line className="standard" x1={middle - 172} x2={middle - 148} y1={y - 5} y2={y - 5} />
      <text x={middle - 142} y={y}>
        standard
      </text>
      {bound && (
        <>
          <line className="bound" x1={middle - 66} x2={middle - 42} y1={y - 5} y2={y - 5} />
          <text x={middle - 36} y={y}>
            limit
          </text>
        </>
      )}
      <text x={middle + 172} y={y} textAnchor="end">
        wear drawn × {times}
      </text>
    </g>
  );
}

interface Size {
  readonly panel: number;
  readonly half: number;
  readonly tall: number;
  /** pixels of diameter for one unit of growth */
  readonly perGrowth: number;
}

function Panel(props: {
  bore: BoreAnswer;
  direction: string;
  bound: number | undefined;
  x: number;
  y: number;
  size: Size;
}) {
  const { bore, direction, bound, x, y, size } = props;
  const { panel, half, tall, perGrowth } = size;
  const map = bore.map!;
  const cells = map.cells.filter((c) => c.direction === direction);
  const shift = (growth: number) => (growth * perGrowth) / 2;
  const at = (i: number) => top + level / 2 + i * level;
  const bottom = tall - 26;
  const points = [
    [shift(cells[0]!.growth), top],
    ...cells.map((c, i) => [shift(c.growth), at(i)]),
    [shift(cells.at(-1)!.growth), bottom],
  ] as const;
  const side = (sign: 1 | -1) => {
    const inner = points.map(([dx, py]) => `${panel / 2 + sign * (half + dx!)},${py}`);
    const outer = `${panel / 2 + sign * (half + reach + wall)}`;
    return [...inner, `${outer},${bottom}`, `${outer},${top}`].join(' ');
  };
  const line = (dx: number, look: string) =>
    [1, -1].map((sign) => (
      <line
        key={sign}
        className={look}
        x1={panel / 2 + sign * (half + dx)}
        x2={panel / 2 + sign * (half + dx)}
        y1={top}
        y2={bottom}
      />
    ));
  return (
    <g transform={`translate(${x} ${y})`}>
      <text className="direction" x={panel / 2} y={18} textAnchor="middle">
        {direction.replace('the crankshaft', 'crank')}
      </text>
      <polygon className="metal" points={side(1)} />
      <polygon className="metal" points={side(-1)} />
      {line(0, 'standard')}
      {bound !== undefined && line(shift(bound), 'bound')}
      {cells.map((cell, i) => (
        <g key={cell.depth}>
          <text x={panel / 2} y={at(i)} textAnchor="middle" className="figure">
            {markOf(map, cell)}
            {said(cell.diameter)}
          </text>
          <text x={panel / 2} y={at(i) + 17} textAnchor="middle" className="height">
            {bore.heights[i]!.split(' ')[0]}
          </text>
        </g>
      ))}
    </g>
  );
}

/** A sign beside the worst places: ▲ the largest, ▽ the smallest. */
function markOf(
  { largest, smallest }: NonNullable<BoreAnswer['map']>,
  cell: NonNullable<BoreAnswer['map']>['cells'][number],
): string {
  return cell === largest ? '▲ ' : cell === smallest ? '▽ ' : '';
}

/** The exaggeration, a round number, at which the greatest deviation still fits beside the wall. */
function niceTimes(most: number, standard: number, half: number): number {
  if (most === 0) return 100;
  const fits = (reach / (most / 2)) * (standard / (2 * half));
  const power = 10 ** Math.floor(Math.log10(fits));
  const step = [8, 6, 5, 4, 3, 2, 1.5, 1].find((s) => s * power <= fits)!;
  return Math.max(1, step * power);
}

const said = (x: number) => String(Number(x.toFixed(x > 10 ? 3 : 4)).toFixed(x > 10 ? 3 : 4));
