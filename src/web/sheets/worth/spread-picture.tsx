import type { Worth } from '../../../worth/index.js';
import { useWidth } from '../../parts/width.js';
import { type Scale, scaleTo } from './scale.js';

interface Mark {
  readonly amount: number;
  readonly words: string;
  readonly look: 'value' | 'limit' | 'stop';
}

const rowHeight = 22;
const margin = 14;

/** Twenty machines like this one along the cost, with what it is worth, the limit and the stop point across them. */
export function SpreadPicture(props: {
  worth: Worth;
  value: number | undefined;
  limit: number | undefined;
  money: (amount: number) => string;
}) {
  const [box, width] = useWidth<HTMLDivElement>();
  return (
    <div ref={box} className="worth-picture">
      {width > 0 && <Drawing {...props} width={width} />}
    </div>
  );
}

function Drawing({
  worth,
  value,
  limit,
  money,
  width,
}: Parameters<typeof SpreadPicture>[0] & { width: number }) {
  const { ofTwenty, cost } = worth;
  if (!cost) return null;
  const scrap = 20 - ofTwenty.length;
  const radius = width < 520 ? 6 : 9;
  const scrapWidth = scrap > 0 ? 74 : 0;
  const good = value ?? limit;
  const marks = marksOf(worth, value, limit, money);
  const most = Math.max(ofTwenty.at(-1) ?? 0, cost.p95, ...marks.map((m) => m.amount));
  const scale = scaleTo(most, margin, width - margin - scrapWidth);
  const dots = stacked(ofTwenty.map(scale.x), radius);
  const high = Math.max(3, ...dots.map((d) => d.level + 1));
  const top = marks.length * rowHeight + 8;
  const ground = top + high * (2 * radius + 2) + 4;
  return (
    <svg
      width={width}
      height={ground + 58}
      role="img"
      aria-label={`Cost of twenty machines like this one: half of them between ${money(cost.p25)} and ${money(cost.p75)}`}
    >
      {dots.map((d) => (
        <circle
          key={d.place}
          className={good !== undefined && d.amountX > scale.x(good) ? 'dot over' : 'dot'}
          cx={d.x}
          cy={ground - radius - 2 - d.level * (2 * radius + 2)}
          r={radius - 1}
        />
      ))}
      {scrap > 0 && (
        <ScrapPile count={scrap} x={width - margin - scrapWidth + 26} ground={ground} radius={radius} />
      )}
      <line className="axis" x1={margin} x2={width - margin - scrapWidth} y1={ground} y2={ground} />
      <HalfOfAll scale={scale} cost={cost} y={ground + 12} />
      {scale.ticks.map((t, i) => (
        <text
          key={t}
          className="tick"
          x={scale.x(t)}
          y={ground + 42}
          textAnchor={i === 0 ? 'start' : i === scale.ticks.length - 1 ? 'end' : 'middle'}
        >
          {money(t)}
        </text>
      ))}
      {marks.map((m, row) => (
        <MarkLine key={m.look} mark={m} x={scale.x(m.amount)} row={row} bottom={ground + 20} />
      ))}
      {marks.map((m, row) => (
        <MarkWords key={m.look} mark={m} x={scale.x(m.amount)} row={row} width={width} />
      ))}
    </svg>
  );
}

function marksOf(
  { stop }: Worth,
  value: number | undefined,
  limit: number | undefined,
  money: (amount: number) => string,
): Mark[] {
  const marks: Mark[] = [];
  if (value !== undefined) marks.push({ amount: value, words: `worth ${money(value)}`, look: 'value' });
  if (limit !== undefined && stop?.rule !== 'limit')
    marks.push({ amount: limit, words: `owner’s limit ${money(limit)}`, look: 'limit' });
  if (stop && stop.rule !== 'not-worth-starting')
    marks.push({
      amount: stop.amount,
      words: `call above ${money(stop.amount)}${stop.rule === 'limit' ? ', the owner’s limit' : ''}`,
      look: 'stop',
    });
  return marks.sort((a, b) => b.amount - a.amount);
}

function MarkLine(props: { mark: Mark; x: number; row: number; bottom: number }) {
  const { mark, x, row, bottom } = props;
  return <line className={`mark ${mark.look}`} x1={x} x2={x} y1={row * rowHeight + 4} y2={bottom} />;
}

/** Drawn after all lines, so that none of them runs through it. */
function MarkWords(props: { mark: Mark; x: number; row: number; width: number }) {
  const { mark, x, row, width } = props;
  const leftward = x > width * 0.55;
  return (
    <text
      className="mark-words"
      x={leftward ? x - 7 : x + 7}
      y={row * rowHeight + 16}
      textAnchor={leftward ? 'end' : 'start'}
    >
      {mark.words}
    </text>
  );
}

/** Nine in ten as a thin bar, one half as a thick one, the middle as a notch. */
function HalfOfAll({ scale, cost, y }: { scale: Scale; cost: NonNullable<Worth['cost']>; y: number }) {
  return (
    <g className="half">
      <line className="nine" x1={scale.x(cost.p05)} x2={scale.x(cost.p95)} y1={y} y2={y} />
      <line className="most" x1={scale.x(cost.p25)} x2={scale.x(cost.p75)} y1={y} y2={y} />
      <line className="middle" x1={scale.x(cost.p50)} x2={scale.x(cost.p50)} y1={y - 6} y2={y + 6} />
    </g>
  );
}

function ScrapPile(props: { count: number; x: number; ground: number; radius: number }) {
  const { count, x, ground, radius } = props;
  const step = 2 * radius + 2;
  const wide = 3;
  return (
    <g className="scrap">
      {Array.from({ length: count }, (_, i) => {
        const cx = x + (i % wide) * step;
        const cy = ground - radius - 2 - Math.floor(i / wide) * step;
        const r = radius * 0.62;
        return (
          <path
            key={`${cx} ${cy}`}
            d={`M${cx - r} ${cy - r}L${cx + r} ${cy + r}M${cx - r} ${cy + r}L${cx + r} ${cy - r}`}
          />
        );
      })}
      <text className="tick" x={x - radius} y={ground + 20}>
        scrap
      </text>
    </g>
  );
}

/** Dots of about one place stand on one another. */
function stacked(xs: readonly number[], radius: number) {
  const pile = 2 * radius + 2;
  const height = new Map<number, number>();
  return xs.map((amountX, place) => {
    const column = Math.floor(amountX / pile);
    const level = height.get(column) ?? 0;
    height.set(column, level + 1);
    return { place, x: column * pile + pile / 2, amountX, level };
  });
}
