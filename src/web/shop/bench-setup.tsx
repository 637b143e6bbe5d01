import { useState } from 'react';
import { dayNames, hoursText, readHours, type Shop, shopLog, usualHours } from '../../job/index.js';
import { write } from '../data/outbox.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { amountIn, countIn } from '../parts/amount.js';
import { ManyChoices, TextField } from '../parts/field.js';
import { handleOf } from '../sheets/components.js';

/** What the bench plan stands on: when someone is there, what several jobs share, and what a day is worth. */
export function BenchSetup({ shop }: { shop: Shop }) {
  return (
    <>
      <Hours shop={shop} key={shop.settings['working-hours'] ?? ''} />
      <Places shop={shop} />
    </>
  );
}

const week = [1, 2, 3, 4, 5, 6, 0].map((day) => ({ id: String(day), label: dayNames[day]! }));

function Hours({ shop }: { shop: Shop }) {
  const hours = readHours(shop.settings['working-hours'] ?? '') ?? usualHours;
  const [from = '', to = ''] = hoursText(hours).split(' ').at(-1)!.split('-');
  const [days, setDays] = useState<string[]>([...hours.days].map(String));
  const [opens, setOpens] = useState(from);
  const [closes, setCloses] = useState(to);
  const [delay, setDelay] = useState(shop.settings['delay-per-day'] ?? '');
  const { wrong, busy, act } = useAct();
  const currency = shop.settings.currency ?? '$';
  const save = () =>
    act(async () => {
      const names = days.map((d) => dayNames[Number(d)]).join(',');
      const read = readHours(`${names} ${opens.trim()}-${closes.trim()}`);
      if (!read) throw new Error('Say one day at least, and hours as 08:00 and 17:00, the later one second.');
      if (delay.trim() !== '') amountIn('A day of waiting', delay, currency);
      await write(shopLog, 'setting', { key: 'working-hours', value: hoursText(read) });
      if (delay.trim() !== (shop.settings['delay-per-day'] ?? ''))
        await write(shopLog, 'setting', { key: 'delay-per-day', value: delay.trim() });
    });
  return (
    <section className="section stack tight">
      <h2>Working hours, and what a day is worth</h2>
      <ManyChoices label="Someone is at the bench on" choices={week} value={days} onChange={setDays} />
      <div className="fields">
        <TextField label="Opens" value={opens} onChange={setOpens} placeholder="08:00" />
        <TextField label="Closes" value={closes} onChange={setCloses} placeholder="17:00" />
        <TextField
          label={`A day of waiting for a part, ${currency}`}
          value={delay}
          onChange={setDelay}
          inputMode="decimal"
          help="Weighed against the price when an order is chosen. Left empty, waiting costs nothing."
        />
      </div>
      <Wrong words={wrong} />
      <div>
        <Button disabled={busy} onClick={() => void save()}>
          Keep the hours
        </Button>
      </div>
    </section>
  );
}

const usualPlaces = ['Soak tank', 'Ultrasonic bath'];

function Places({ shop }: { shop: Shop }) {
  const [name, setName] = useState('');
  const [capacity, setCapacity] = useState('1');
  const { wrong, busy, act } = useAct();
  const add = (called: string) =>
    act(async () => {
      const room = countIn('Room for', capacity);
      if (room > 100) throw new Error('It has room for 1 to 100.');
      await write(shopLog, 'place', { place: handleOf(called), name: called.trim(), capacity: room });
      setName('');
    });
  const retire = ({ place, name: called, capacity: room }: Shop['places'][number]) =>
    act(() => write(shopLog, 'place', { place, name: called, capacity: room, retired: true }));
  const missing = usualPlaces.filter((p) => !shop.places.some(({ place }) => place === handleOf(p)));
  return (
    <section className="section stack tight">
      <h2>What several jobs share</h2>
      <p className="soft">
        A soak tank holds one thing at a time unless it says more: two soaks then lie one after the other.
      </p>
      <ul className="lines">
        {shop.places.map((p) => (
          <li key={p.place}>
            <div>
              <b>{p.name}</b> <span className="soft">room for {p.capacity}</span>
            </div>
            <Button look="quiet" aria-label={`Retire ${p.name}`} onClick={() => void retire(p)}>
              Retire
            </Button>
          </li>
        ))}
      </ul>
      <div className="fields">
        <TextField label="What it is called" value={name} onChange={setName} placeholder="soak tank" />
        <TextField label="Room for" value={capacity} onChange={setCapacity} inputMode="numeric" />
      </div>
      <Wrong words={wrong} />
      <div className="row">
        <Button disabled={busy || name.trim() === ''} onClick={() => void add(name)}>
          Add it
        </Button>
        {missing.map((p) => (
          <Button key={p} look="quiet" disabled={busy} onClick={() => void add(p)}>
            + {p}
          </Button>
        ))}
      </div>
    </section>
  );
}
