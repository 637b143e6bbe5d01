import { type LimitAnswer, quantityOf } from '../../../job/index.js';
import { findUnit, show, to } from '../../../quantity/index.js';
import { useUnits } from '../../data/queries.js';
import { useWidth } from '../../parts/width.js';

/** The allowed stretch, and the reading on it with the reach of its tool (k = 2). Small; the words beside it say the same. */
export function LimitStrip({ answer }: { answer: LimitAnswer }) {
  const [box, width] = useWidth<HTMLDivElement>();
  return (
    <div ref={box} className="limit-strip">
      {width > 0 && <Strip answer={answer} width={Math.min(width, 460)} />}
    </div>
  );
}

const height = 46;
const pad = 8;

function Strip({ answer: { group, limit }, width }: { answer: LimitAnswer; width: number }) {
  const system = useUnits();
  const { unit } = group.last.value;
  const value = to(group.quantity, unit);
  const U = (2 * group.u) / findUnit(unit).factor;
  const min = limit?.min && to(quantityOf(limit.min), unit);
  const max = limit?.max && to(quantityOf(limit.max), unit);
  const marks = [value - U, value + U, ...[min, max].filter((x) => x !== undefined)];
  const span = Math.max(...marks) - Math.min(...marks) || Math.abs(value) || 1;
  const low = Math.min(...marks) - 0.28 * span;
  const high = Math.max(...marks) + 0.28 * span;
  const x = (v: number) => pad + ((v - low) / (high - low)) * (width - 2 * pad);
  const from = x(min ?? low);
  const till = x(max ?? high);
  return (
    <svg width={width} height={height} aria-hidden="true">
      <rect className="allowed" x={from} y={10} width={till - from} height={14} />
      {[min, max].map(
        (bound, i) =>
          bound !== undefined && (
            <g key={i === 0 ? 'least' : 'most'}>
              <line className="bound" x1={x(bound)} x2={x(bound)} y1={6} y2={28} />
              <text
                x={Math.min(width - 2, Math.max(2, x(bound)))}
                y={42}
                textAnchor={x(bound) > width * 0.7 ? 'end' : x(bound) < width * 0.3 ? 'start' : 'middle'}
              >
                {show(quantityOf(i === 0 ? limit!.min! : limit!.max!), system)}
              </text>
            </g>
          ),
      )}
      <line className="reach" x1={x(value - U)} x2={x(value + U)} y1={17} y2={17} />
      {U > 0 &&
        [value - U, value + U].map((end) => (
          <line key={end} className="reach" x1={x(end)} x2={x(end)} y1={12} y2={22} />
        ))}
      <circle className="at" cx={x(value)} cy={17} r={5} />
    </svg>
  );
}
