import { boreDrawing, level, text } from '../../../draw/index.js';
import type { BoreAnswer } from '../../../job/index.js';
import { Drawn } from '../../parts/drawn.js';
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

const room = { level: 62, head: 34, foot: 26, wall: 12, reach: 26, gap: 9 };

function Drawing({ bore, limit, width }: { bore: BoreAnswer; limit: number | undefined; width: number }) {
  const { directions, heights, unit } = bore;
  const { cells, largest, smallest } = bore.map!;
  const standard = bore.standard!.size;
  const perRow = width < 560 ? Math.min(2, directions.length) : directions.length;
  const markOf = (cell: (typeof cells)[number]) => (cell === largest ? '▲ ' : cell === smallest ? '▽ ' : '');
  const panels = directions.map((direction) => ({
    direction: direction.replace('the crankshaft', 'crank'),
    walls: cells
      .filter((cell) => cell.direction === direction)
      .map((cell, i) => ({
        growth: cell.growth,
        text: `${markOf(cell)}${said(cell.diameter)}`,
        height: heights[i]!.split(' ')[0]!,
      })),
  }));
  const bound = limit === undefined ? undefined : limit - standard;
  const says = `Bore, largest ${said(largest.diameter)} ${unit} at ${heights[largest.depth - 1]}, ${largest.direction}; smallest ${said(smallest.diameter)} ${unit}.`;
  const view = { panels, standard, bound };
  const drawing = boreDrawing(view, { ...room, panel: Math.min(230, width / perRow), perRow });
  return (
    <Drawn
      drawing={{
        ...drawing,
        height: drawing.height + 16,
        shapes: [...drawing.shapes, ...legend(drawing, bound !== undefined)],
        says: `${says} Drawn ${drawing.times} times.`,
      }}
    >
      <defs>
        <pattern id="metal" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line className="hatch" x1="0" y1="0" x2="0" y2="7" />
        </pattern>
      </defs>
    </Drawn>
  );
}

/** A sign beside the worst places: ▲ the largest, ▽ the smallest. */
function legend({ width, height, times }: ReturnType<typeof boreDrawing>, bound: boolean) {
  const middle = width / 2;
  const named = (look: string, words: string, x: number) => [
    level(look, height + 3, x, x + 24),
    text('legend', { x: x + 30, y: height + 3 }, words, { anchor: 'start' }),
  ];
  return [
    ...named('standard', 'standard', middle - 172),
    ...(bound ? named('bound', 'limit', middle - 66) : []),
    text('legend', { x: middle + 172, y: height + 3 }, `wear drawn × ${times}`, { anchor: 'end' }),
  ];
}

const said = (x: number) => x.toFixed(x > 10 ? 3 : 4);
