import type { ReactNode } from 'react';
import { type EntryKind, shopLog } from '../../job/index.js';
import { writeAll } from '../data/outbox.js';
import { asBody } from '../form/as-body.js';
import { Button, useAct, Wrong } from '../parts/act.js';

interface Thing {
  readonly name: string;
  readonly entry: string;
  readonly at: string;
  readonly by: string;
}

/** Things of the shop with what is known of each; one that is gone is retired and stays in the log. */
export function ShopList<T extends Thing>(props: {
  kind: Extract<EntryKind, 'wrench' | 'instrument' | 'supplier' | 'place'>;
  title: string;
  intro?: string;
  /** shown while there is none */
  empty?: string;
  things: readonly T[];
  says: (thing: T) => string;
  onChange?: (thing: T) => void;
  children: ReactNode;
}) {
  const { kind, things, onChange } = props;
  const { wrong, act } = useAct();
  return (
    <section className="section stack tight">
      <h2>{props.title}</h2>
      {props.intro && <p className="soft">{props.intro}</p>}
      {things.length === 0 && props.empty && <p className="empty">{props.empty}</p>}
      <ul className="lines">
        {things.map((thing) => (
          <li key={thing.entry}>
            <div>
              <b>{thing.name}</b>
              <div className="soft">{props.says(thing)}</div>
            </div>
            <div className="row">
              {onChange && (
                <Button look="quiet" aria-label={`Change ${thing.name}`} onClick={() => onChange(thing)}>
                  Change
                </Button>
              )}
              <Button
                look="quiet"
                aria-label={`Retire ${thing.name}`}
                onClick={() =>
                  void act(() => writeAll(shopLog, [{ kind, body: { ...asBody(thing), retired: true } }]))
                }
              >
                Retire
              </Button>
            </div>
          </li>
        ))}
      </ul>
      <Wrong words={wrong} />
      {props.children}
    </section>
  );
}
