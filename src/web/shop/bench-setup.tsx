import { hoursText, readHours, type Shop, shopLog, usualHours } from '../../job/index.js';
import { dayNames } from '../../phrase/index.js';
import { FieldError } from '../form/field.js';
import { FormBox } from '../form/form.js';
import { useForm } from '../form/use-form.js';
import { Button } from '../parts/act.js';
import { handleOf } from '../sheets/components.js';
import { changedSettings } from './settings.js';
import { ShopList } from './shop-list.js';

/** What the bench plan stands on: when someone is there, what several jobs share, and what a day is worth. */
export function BenchSetup({ shop }: { shop: Shop }) {
  return (
    <>
      <Hours shop={shop} />
      <Places shop={shop} />
    </>
  );
}

const week = [1, 2, 3, 4, 5, 6, 0].map((day) => ({ id: String(day), label: dayNames[day]! }));

function Hours({ shop }: { shop: Shop }) {
  const hours = readHours(shop.settings['working-hours'] ?? '') ?? usualHours;
  const [opens, closes] = hoursText(hours).split(' ').at(-1)!.split('-');
  const currency = shop.settings.currency ?? '$';
  const form = useForm({
    job: shopLog,
    kind: 'setting',
    handle: 'hours',
    title: 'Working hours',
    fields: {
      $days: {
        as: 'many',
        label: 'Someone is at the bench on',
        choices: week,
        begin: [...hours.days].map(String),
      },
      $opens: { as: 'text', label: 'Opens', hint: '08:00', begin: opens },
      $closes: { as: 'text', label: 'Closes', hint: '17:00', begin: closes },
      $delay: {
        as: 'number',
        currency,
        label: `A day of waiting for a part, ${currency}`,
        begin: shop.settings['delay-per-day'] ?? '',
        help: 'Weighed against the price when an order is chosen. Left empty, waiting costs nothing.',
      },
    },
    lines: (_, { $days, $opens, $closes, $delay }) => {
      const names = ($days as string[]).map((d) => dayNames[Number(d)]).join(',');
      const read = readHours(`${names} ${String($opens).trim()}-${String($closes).trim()}`);
      if (!read)
        throw new FieldError(
          '$days',
          'Say one day at least, and hours as 08:00 and 17:00, the later one second.',
        );
      return [
        { kind: 'setting', body: { key: 'working-hours', value: hoursText(read) } },
        ...changedSettings(shop, { 'delay-per-day': String($delay) }),
      ];
    },
  });
  return (
    <section className="section stack tight">
      <h2>Working hours, and what a day is worth</h2>
      <FormBox form={form} keep="Keep the hours" className="stack tight" />
    </section>
  );
}

const usualPlaces = ['Soak tank', 'Ultrasonic bath'];

function Places({ shop }: { shop: Shop }) {
  const missing = usualPlaces.filter((p) => !shop.places.some(({ place }) => place === handleOf(p)));
  const form = useForm({
    job: shopLog,
    kind: 'place',
    title: 'What several jobs share',
    fields: {
      name: { as: 'text', label: 'What it is called', hint: 'soak tank', need: 'Say what it is called.' },
      capacity: { as: 'number', whole: true, label: 'Room for', begin: '1', need: 'Room for how many?' },
    },
    also: ({ name = '' }) => ({ place: handleOf(name) }),
  });
  const add = (name: string) => {
    form.set('name', name);
    void form.keep();
  };
  return (
    <ShopList
      kind="place"
      title="What several jobs share"
      intro="A soak tank holds one thing at a time unless it says more: two soaks then lie one after the other."
      things={shop.places}
      says={(p) => `room for ${p.capacity}`}
    >
      <FormBox
        form={form}
        keep="Add it"
        className="stack tight"
        more={missing.map((p) => (
          <Button key={p} look="quiet" disabled={form.busy} onClick={() => add(p)}>
            + {p}
          </Button>
        ))}
      />
    </ShopList>
  );
}
