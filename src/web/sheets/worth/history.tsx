import { axisOver } from '../../../draw/index.js';
import { percent } from '../../../phrase/index.js';
import type { WorthThen } from '../../../worth/index.js';
import { useWidth } from '../../parts/width.js';

/** How the answer changed as findings came in. */
export function WorthHistory(props: { history: readonly WorthThen[]; money: (amount: number) => string }) {
  const { history, money } = props;
  if (history.length < 2 || !history.some((h) => h.cost)) return null;
  const byChance = history.every((h) => h.chanceBelowValue !== undefined);
  return (
    <section className="section stack tight">
      <h2>How it changed with the findings</h2>
      <p className="soft">
        {byChance
          ? 'Chance that it is made right for less than it is worth'
          : 'Cost in the middle of the spread'}
        , at today’s rate.
      </p>
      <HistoryLine history={history} byChance={byChance} money={money} />
      <details>
        <summary>Finding by finding</summary>
        <ul className="lines">
          {history.map((h) => (
            <li key={h.entry}>
              <span>{h.title}</span>
              <b>
                {h.chanceBelowValue !== undefined && `${percent(h.chanceBelowValue)} · `}
                {h.cost ? money(h.cost.p50) : 'scrap'}
              </b>
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}

const height = 118;
const pad = { left: 58, right: 14, top: 12, bottom: 22 };

function HistoryLine(props: Parameters<typeof WorthHistory>[0] & { byChance: boolean }) {
  const [box, width] = useWidth<HTMLDivElement>();
  const { history, byChance, money } = props;
  const values = history.map((h) => (byChance ? h.chanceBelowValue! : (h.cost?.p50 ?? 0)));
  const grid = byChance ? [0, 0.5, 1] : axisOver(0, Math.max(...values, 1), 0, 180, 90).ticks;
  const top = grid.at(-1)!;
  const x = (i: number) => pad.left + ((width - pad.left - pad.right) * i) / (history.length - 1);
  const y = (v: number) => pad.top + (height - pad.top - pad.bottom) * (1 - v / top);
  const points = values.map((v, place) => ({ place, x: x(place), y: y(v) }));
  const last = values.length - 1;
  const say = byChance ? percent : money;
  return (
    <div ref={box} className="worth-picture">
      {width > 0 && (
        <svg
          width={width}
          height={height}
          role="img"
          aria-label={`From ${say(values[0]!)} at intake to ${say(values[last]!)}`}
        >
          {grid.map((mark) => (
            <g key={mark}>
              <line className="grid" x1={pad.left} x2={width - pad.right} y1={y(mark)} y2={y(mark)} />
              <text className="tick" x={pad.left - 8} y={y(mark) + 4} textAnchor="end">
                {byChance ? `${mark * 100} %` : money(mark)}
              </text>
            </g>
          ))}
          <path
            className="course"
            d={points.map((p) => `${p.place === 0 ? 'M' : 'L'}${p.x} ${p.y}`).join('')}
          />
          {points.map((p) => (
            <circle
              key={p.place}
              className={p.place === last ? 'point last' : 'point'}
              cx={p.x}
              cy={p.y}
              r={p.place === last ? 5 : 3}
            />
          ))}
          <text className="tick" x={pad.left} y={height - 4}>
            intake
          </text>
          <text className="tick" x={width - pad.right} y={height - 4} textAnchor="end">
            now
          </text>
        </svg>
      )}
    </div>
  );
}
