import { useState } from 'react';
import { type Body, type Shop, shopLog } from '../../job/index.js';
import { write } from '../data/outbox.js';
import { useShop } from '../data/queries.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { amountIn } from '../parts/amount.js';
import { Dialog } from '../parts/dialog.js';
import { TextField } from '../parts/field.js';
import { handleOf } from '../sheets/components.js';
import { money } from '../sheets/parts/money.js';

type Supplier = Body<'supplier'>;

/** Who the shop buys from, and on what terms. */
export function Suppliers({ shop }: { shop: Shop }) {
  const [editing, setEditing] = useState<Supplier | 'new'>();
  const { wrong, act } = useAct();
  const currency = shop.settings.currency ?? '$';
  const retire = ({ supplier, name, minimum, shipping }: Supplier) =>
    act(() => write(shopLog, 'supplier', { supplier, name, minimum, shipping, retired: true } as Supplier));
  return (
    <section className="section stack tight">
      <h2>Suppliers</h2>
      {shop.suppliers.length === 0 && (
        <p className="empty">
          List who the shop buys from with their shipping, and a job’s cheapest order is worked out.
        </p>
      )}
      <ul className="lines">
        {shop.suppliers.map((s) => (
          <li key={s.supplier}>
            <div>
              <b>{s.name}</b>
              <div className="soft">{termsWords(s, currency)}</div>
            </div>
            <div className="row">
              <Button look="quiet" aria-label={`Change ${s.name}`} onClick={() => setEditing(s)}>
                Change
              </Button>
              <Button look="quiet" aria-label={`Retire ${s.name}`} onClick={() => void retire(s)}>
                Retire
              </Button>
            </div>
          </li>
        ))}
      </ul>
      <Wrong words={wrong} />
      <div>
        <Button onClick={() => setEditing('new')}>Add a supplier</Button>
      </div>
      <Dialog
        title={editing === 'new' ? 'Add a supplier' : 'Change a supplier'}
        open={editing !== undefined}
        onClose={() => setEditing(undefined)}
      >
        <SupplierForm
          {...(editing !== 'new' && editing && { before: editing })}
          onDone={() => setEditing(undefined)}
        />
      </Dialog>
    </section>
  );
}

function termsWords({ minimum, shipping }: Supplier, currency: string): string {
  const tiers = shipping.map(({ from, cost }) =>
    [
      cost === 0 ? 'shipping free' : `shipping ${money(currency, cost)}`,
      from > 0 && `from ${money(currency, from)}`,
    ]
      .filter(Boolean)
      .join(' '),
  );
  return [
    minimum !== undefined && minimum > 0 && `orders from ${money(currency, minimum)}`,
    ...(tiers.length > 0 ? tiers : ['nothing for shipping']),
  ]
    .filter(Boolean)
    .join(' · ');
}

interface Tier {
  readonly from: string;
  readonly cost: string;
}

/** `onDone` gets the handle of what was kept, or nothing when it was left. */
export function SupplierForm(props: {
  before?: Supplier;
  name?: string;
  onDone: (supplier?: string) => void;
}) {
  const { before } = props;
  const shop = useShop();
  const [name, setName] = useState(before?.name ?? props.name ?? '');
  const [minimum, setMinimum] = useState(before?.minimum === undefined ? '' : String(before.minimum));
  const [tiers, setTiers] = useState<readonly Tier[]>(
    before && before.shipping.length > 0
      ? before.shipping.map(({ from, cost }) => ({ from: String(from), cost: String(cost) }))
      : [{ from: '0', cost: '' }],
  );
  const { wrong, busy, act } = useAct();
  const currency = shop.settings.currency ?? '$';
  const change = (i: number, tier: Partial<Tier>) =>
    setTiers(tiers.map((t, k) => (k === i ? { ...t, ...tier } : t)));
  const save = () =>
    act(async () => {
      const supplier = before?.supplier ?? handleOf(name);
      if (!before && shop.suppliers.some((s) => s.supplier === supplier))
        throw new Error(`There is a supplier called “${name.trim()}” already.`);
      await write(shopLog, 'supplier', {
        supplier,
        name: name.trim(),
        ...(minimum.trim() !== '' && { minimum: amountIn('The smallest order', minimum, currency) }),
        shipping: shippingOf(tiers, currency),
      });
      props.onDone(supplier);
    });
  return (
    <>
      <div className="fields">
        <TextField label="Supplier’s name" value={name} onChange={setName} />
        <TextField
          label={`Smallest order, ${currency}`}
          value={minimum}
          onChange={setMinimum}
          inputMode="decimal"
          help="Goods only. Left empty, any."
        />
      </div>
      <fieldset className="field">
        <legend className="label">Shipping</legend>
        {tiers.map((tier, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the rows have no other name and are only added at the end
          <div className="tier" key={i}>
            <TextField
              label={`Goods from, ${currency}`}
              value={tier.from}
              onChange={(from) => change(i, { from })}
              inputMode="decimal"
            />
            <TextField
              label={`costs, ${currency}`}
              value={tier.cost}
              onChange={(cost) => change(i, { cost })}
              inputMode="decimal"
              placeholder="0"
            />
          </div>
        ))}
        <div>
          <Button onClick={() => setTiers([...tiers, { from: '', cost: '0' }])}>
            Cheaper or free from …
          </Button>
        </div>
      </fieldset>
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={() => props.onDone()}>Leave it</Button>
        <Button look="go" disabled={busy || name.trim() === ''} onClick={() => void save()}>
          Keep the supplier
        </Button>
      </div>
    </>
  );
}

function shippingOf(tiers: readonly Tier[], currency: string): Supplier['shipping'] {
  const read = tiers
    .filter(({ from, cost }) => from.trim() !== '' || cost.trim() !== '')
    .map(({ from, cost }) => ({
      from: amountIn('Goods from', from || '0', currency),
      cost: amountIn('Shipping', cost || '0', currency),
    }))
    .sort((a, b) => a.from - b.from);
  if (new Set(read.map(({ from }) => from)).size < read.length)
    throw new Error('Two lines of shipping begin at the same sum.');
  if (read.length > 0 && read[0]!.from > 0)
    throw new Error('Say what shipping costs below the first sum, from 0.');
  return read;
}
