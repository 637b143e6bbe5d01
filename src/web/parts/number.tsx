import { Fragment, useRef } from 'react';
import { type Quantity, show, showBoth } from '../../quantity/index.js';
import { useUnits } from '../data/queries.js';

/** A number in the text; a tap shows what was written, where it comes from and how sure it is. */
export function NumberWithOrigin({ quantity, what }: { quantity: Quantity; what: string }) {
  const system = useUnits();
  const shown = quantity.kind === 'torque' ? showBoth(quantity, system) : show(quantity, system);
  const { origin, written, u } = quantity;
  const sure =
    u === undefined
      ? 'not known'
      : `± ${show({ kind: quantity.kind, si: 2 * u, unit: quantity.unit }, system)} (k = 2)`;
  return (
    <FigureWithOrigin
      what={what}
      shown={shown}
      rows={[
        ['reads', showBoth(quantity, system)],
        ...(written ? [['written', `“${written}”`] as const] : []),
        ['from', origin ? [origin.from, origin.detail].filter(Boolean).join(', ') : 'not said'],
        ['uncertainty', sure],
      ]}
    />
  );
}

/** Any figure in the text, money and chances too: a tap shows the rows that say where it comes from. */
export function FigureWithOrigin(props: {
  what: string;
  shown: string;
  rows: readonly (readonly [label: string, words: string])[];
}) {
  const { what, shown, rows } = props;
  const box = useRef<HTMLDialogElement>(null);
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
          {rows.map(([label, words]) => (
            <Fragment key={label}>
              <dt>{label}</dt>
              <dd>{words}</dd>
            </Fragment>
          ))}
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
