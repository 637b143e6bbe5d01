import type { BoltGroup } from '../../sight/index.js';
import { useShop, useUnits } from '../data/queries.js';
import { Button } from '../parts/act.js';
import { barsOf } from './bars.js';
import { SeenBolts } from './bolts-on-mat.js';
import { lengthWords } from './length-words.js';

/** Bolts of one kind, counted. */
export interface CountedBolts {
  readonly count: number;
  /** as thick as it is, in the reader's unit; "" while the mat's bars are not measured */
  readonly size: string;
  /** under the head; "" as well */
  readonly length: string;
}

/** The bolts that came out, counted from their photograph on the mat: one touch takes all of them. */
export function BoltsFromMat({ onCounted }: { onCounted: (bolts: readonly CountedBolts[]) => void }) {
  const system = useUnits();
  const measured = barsOf(useShop()) !== undefined;
  const words = (mm: number) => (measured ? lengthWords(mm, system, 'coarse') : '');
  const asCounted = ({ bolts, d, length }: BoltGroup): CountedBolts => ({
    count: bolts.length,
    size: words(d),
    length: words(length),
  });
  return (
    <SeenBolts>
      {(_, groups) => (
        <div className="row">
          <Button look="go" disabled={groups.length === 0} onClick={() => onCounted(groups.map(asCounted))}>
            Count these out
          </Button>
        </div>
      )}
    </SeenBolts>
  );
}
