import { limitStrip } from '../../../draw/index.js';
import { type LimitAnswer, quantityOf } from '../../../job/index.js';
import { findUnit, show, to } from '../../../quantity/index.js';
import { useUnits } from '../../data/queries.js';
import { Drawn } from '../../parts/drawn.js';
import { useWidth } from '../../parts/width.js';

/** The allowed stretch, and the reading on it with the reach of its tool (k = 2). Small; the words beside it say the same. */
export function LimitStrip({ answer: { group, limit } }: { answer: LimitAnswer }) {
  const [box, width] = useWidth<HTMLDivElement>();
  const system = useUnits();
  const { unit } = group.last.value;
  const boundOf = (bound: NonNullable<LimitAnswer['limit']>['min']) =>
    bound && { at: to(quantityOf(bound), unit), words: show(quantityOf(bound), system) };
  const view = {
    value: to(group.quantity, unit),
    reach: (2 * group.u) / findUnit(unit).factor,
    min: boundOf(limit?.min),
    max: boundOf(limit?.max),
  };
  return (
    <div ref={box} className="limit-strip">
      {width > 0 && <Drawn drawing={limitStrip(view, Math.min(width, 460))} hidden />}
    </div>
  );
}
