import { useShop } from '../data/queries.js';
import { barsOf } from './bars.js';

/** Without the bars a picture tells shapes; how large they are, only the printer knows. */
export function BarsNotMeasured() {
  if (barsOf(useShop())) return null;
  return (
    <p className="verdict cannot-decide wraps">
      The bars of the mat are not measured: the shape is right, the sizes hold only if the printer kept 100 %.
    </p>
  );
}
