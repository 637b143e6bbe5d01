import { useRef } from 'react';
import { type Quantity, show, showBoth } from '../../quantity/index.js';
import { useUnits } from '../data/queries.js';

/** A number in the text; a tap shows what was written, where it comes from and how sure it is. */
export function NumberWithOrigin({ quantity, what }: { quantity: Quantity; what: string }) {
  const box = useRef<HTMLDialogElement>(null);
  const system = useUnits();
  const shown = quantity.kind === 'torque' ? showBoth(quantity, system) : show(quantity, system);
  const { origin, written, u } = quantity;
  return (
    <>
      <button
        type="button"
        className="number"
        onClick={() => box.current?.showModal()}
        title="where this number comes from"
      >
        {shown}
      </button>
      <dialog className="origin" ref={box} aria-label={`Where ${what} comes from`}>
        <h2>{what}</h2>
        <dl style={{ margin: '10px 0 14px' }}>
          <dt>reads</dt>
          <dd>{showBoth(quantity, system)}</dd>
          {written && (
            <>
              <dt>written</dt>
              <dd>“{written}”</dd>
            </>
          )}
          <dt>from</dt>
          <dd>{origin ? [origin.from, origin.detail].filter(Boolean).join(', ') : 'not said'}</dd>
          <dt>uncertainty</dt>
          <dd>
            {u === undefined
              ? 'not known'
              : `± ${show({ kind: quantity.kind, si: 2 * u, unit: quantity.unit }, system)} (k = 2)`}
          </dd>
        </dl>
        <form method="dialog" className="row end">
          <button type="submit" className="button">
            Close
          </button>
        </form>
      </dialog>
    </>
  );
}
