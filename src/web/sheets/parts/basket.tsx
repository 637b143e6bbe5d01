import { useState } from 'react';
import type { Job, Orders } from '../../../job/index.js';
import { price, weekDay } from '../../../phrase/index.js';
import type { Alternatives, Basket } from '../../../supply/index.js';
import { useAnswers } from '../../data/answers.js';
import { writeAll } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { today } from '../../parts/today.js';
import { useBasket } from './use-basket.js';

/** The cheapest order for what is wanted, beside the same from one and from two suppliers. */
export function BasketSection({ job }: { job: Job }) {
  const answers = useAnswers();
  const asked = answers.basketAsked({});
  const { found, working, wrong } = useBasket(asked.problem);
  const wanted = answers.toBuy.length;
  const offered = Object.keys(asked.problem.need).length;
  if (wanted === 0 || job.offers.size === 0) return null;
  return (
    <section className="section stack tight" aria-label="The order">
      <h2>The order</h2>
      {asked.unoffered.length > 0 && (
        <p className="verdict cannot-decide wraps">
          Nobody offers {asked.unoffered.map(({ name }) => name.toLowerCase()).join(', ')}: not in this order.
        </p>
      )}
      {offered > 0 && working && !found && <p className="soft">Working out the cheapest order …</p>}
      <Wrong words={wrong} />
      {offered > 0 && found && (
        <Ways key={JSON.stringify(asked.problem.need)} job={job} found={found} currency={asked.currency} />
      )}
      {asked.leftOut.length > 0 && (
        <details>
          <summary>Left out ({asked.leftOut.length})</summary>
          <ul>
            {asked.leftOut.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

interface Way {
  readonly id: string;
  readonly name: string;
  readonly basket: Basket;
}

/** The same basket is shown once, under all its names. */
function waysOf({ cheapest, fromOne, fromTwo }: Alternatives): Way[] {
  const same = (a: Basket, b: Basket | undefined) =>
    b !== undefined && JSON.stringify(a.lines) === JSON.stringify(b.lines);
  const names = [
    'Cheapest',
    same(cheapest, fromTwo) && cheapest.suppliers.length === 2 && 'two suppliers',
    same(cheapest, fromOne) && 'one supplier',
  ];
  return [
    { id: 'cheapest', name: names.filter(Boolean).join(', '), basket: cheapest },
    ...(fromTwo && !same(cheapest, fromTwo) && !(fromOne && same(fromOne, fromTwo))
      ? [{ id: 'two', name: 'Two suppliers', basket: fromTwo }]
      : []),
    ...(fromOne && !same(cheapest, fromOne) ? [{ id: 'one', name: 'One supplier', basket: fromOne }] : []),
  ];
}

function Ways({ job, found, currency }: { job: Job; found: Alternatives; currency: string }) {
  const { orders, orderEntries } = useAnswers();
  const ways = waysOf(found);
  const [chosen, setChosen] = useState('cheapest');
  const way = ways.find(({ id }) => id === chosen) ?? ways[0]!;
  const { wrong, busy, act } = useAct(job);
  const order = () => act(() => writeAll(job.id, orderEntries(way.basket, today())));
  return (
    <>
      <fieldset className="ways">
        <legend className="hidden">Which order</legend>
        {ways.map((w) => (
          <label key={w.id} className="way">
            <input type="radio" name="way" checked={w.id === way.id} onChange={() => setChosen(w.id)} />
            <WayCard
              name={w.name}
              orders={orders(w.basket, today())}
              currency={currency}
              more={w.basket.total - found.cheapest.total}
            />
          </label>
        ))}
      </fieldset>
      {!found.fromOne && <p className="soft">No single supplier has everything.</p>}
      <Wrong words={wrong} />
      <div>
        <Button look="go" disabled={busy} onClick={() => void order()}>
          Order these: {price(currency, way.basket.goods + way.basket.shipping)}
        </Button>
      </div>
    </>
  );
}

function WayCard(props: { name: string; orders: Orders; currency: string; more: number }) {
  const { name, orders, currency, more } = props;
  const paid = orders.goods + orders.shipping;
  return (
    <span className="way-card">
      <span className="way-head">
        <b>{name}</b>
        <b className="sum">{price(currency, paid)}</b>
      </span>
      <span className="soft">
        goods {price(currency, orders.goods)}, shipping{' '}
        {orders.shipping === 0 ? 'free' : price(currency, orders.shipping)}
      </span>
      <span>
        all here {weekDay(orders.arrives)}
        {orders.delay > 0 && <span className="soft"> (waiting counts {price(currency, orders.delay)})</span>}
      </span>
      {more > 0.005 && <span className="soft">{price(currency, more)} dearer, waiting counted</span>}
      {orders.orders.map((order) => (
        <span key={order.supplier} className="way-order">
          <b>{order.name}</b> {price(currency, order.goods)}, here {weekDay(order.arrives)}
          {order.lines.map(({ offer, count }) => (
            <span key={offer.offer} className="soft">
              {count > 1 && `${count} × `}
              {offer.name}
            </span>
          ))}
        </span>
      ))}
      {orders.leftOver.length > 0 && (
        <span className="soft">
          left over:{' '}
          {orders.leftOver
            .map((l) => `${l.count > 1 ? `${l.count} × ` : ''}${l.name.toLowerCase()}`)
            .join(', ')}
        </span>
      )}
      {!orders.optimal && <span className="soft">the time was up: a cheaper one may exist</span>}
    </span>
  );
}
