import { useState } from 'react';
import { type Body, type From, type Shop, shopLog } from '../../job/index.js';
import { price } from '../../phrase/index.js';
import { useShop } from '../data/queries.js';
import { FieldError } from '../form/field.js';
import { FormBox } from '../form/form.js';
import { useForm } from '../form/use-form.js';
import { Button } from '../parts/act.js';
import { Dialog } from '../parts/dialog.js';
import { handleOf } from '../sheets/components.js';
import { ShopList } from './shop-list.js';

type Supplier = Body<'supplier'>;

/** Who the shop buys from, and on what terms. */
export function Suppliers({ shop }: { shop: Shop }) {
  const [editing, setEditing] = useState<From<'supplier'> | 'new'>();
  const currency = shop.settings.currency ?? '$';
  const close = () => setEditing(undefined);
  return (
    <ShopList
      kind="supplier"
      title="Suppliers"
      empty="List who the shop buys from with their shipping, and a job’s cheapest order is worked out."
      things={shop.suppliers}
      says={(s) => termsWords(s, currency)}
      onChange={setEditing}
    >
      <div>
        <Button onClick={() => setEditing('new')}>Add a supplier</Button>
      </div>
      <Dialog
        title={editing === 'new' ? 'Add a supplier' : 'Change a supplier'}
        open={editing !== undefined}
        onClose={close}
      >
        <SupplierForm {...(editing !== 'new' && editing && { before: editing })} onDone={close} />
      </Dialog>
    </ShopList>
  );
}

function termsWords({ minimum, shipping }: Supplier, currency: string): string {
  const tiers = shipping.map(({ from, cost }) =>
    [
      cost === 0 ? 'shipping free' : `shipping ${price(currency, cost)}`,
      from > 0 && `from ${price(currency, from)}`,
    ]
      .filter(Boolean)
      .join(' '),
  );
  return [
    minimum !== undefined && minimum > 0 && `orders from ${price(currency, minimum)}`,
    ...(tiers.length > 0 ? tiers : ['nothing for shipping']),
  ]
    .filter(Boolean)
    .join(' · ');
}

/** `onDone` gets the handle of what was kept, or nothing when it was left. */
export function SupplierForm(props: {
  before?: Supplier;
  name?: string;
  onDone: (supplier?: string) => void;
}) {
  const { before } = props;
  const shop = useShop();
  const currency = shop.settings.currency ?? '$';
  const form = useForm({
    job: shopLog,
    kind: 'supplier',
    handle: before?.supplier ?? props.name,
    title: before?.name ?? 'A supplier',
    before: before && {
      ...before,
      ...(before.shipping.length === 0 && { shipping: [{ from: 0, cost: 0 }] }),
    },
    fields: {
      name: {
        as: 'text',
        label: 'Supplier’s name',
        begin: props.name,
        need: 'Say what the supplier is called.',
      },
      minimum: {
        as: 'number',
        currency,
        label: `Smallest order, ${currency}`,
        help: 'Goods only. Left empty, any.',
      },
      shipping: {
        as: 'rows',
        label: 'Shipping',
        begin: [{ from: '0', cost: '' }],
        row: {
          from: { as: 'number', currency, label: `Goods from, ${currency}` },
          cost: { as: 'number', currency, label: `costs, ${currency}`, hint: '0', begin: '0' },
        },
        more: 'Cheaper or free from …',
      },
    },
    also: ({ name = '', shipping = [] }) => {
      const supplier = before?.supplier ?? handleOf(name);
      if (!before && shop.suppliers.some((s) => s.supplier === supplier))
        throw new FieldError('name', `There is a supplier called “${name}” already.`);
      return { supplier, shipping: inTiers(shipping) };
    },
    onDone: ({ supplier }) => props.onDone(supplier),
  });
  return <FormBox form={form} keep="Keep the supplier" leave="Leave it" onLeave={() => props.onDone()} />;
}

function inTiers(rows: readonly Partial<Supplier['shipping'][number]>[]): Supplier['shipping'] {
  const tiers = rows.map(({ from = 0, cost = 0 }) => ({ from, cost })).sort((a, b) => a.from - b.from);
  if (new Set(tiers.map(({ from }) => from)).size < tiers.length)
    throw new FieldError('shipping', 'Two lines of shipping begin at the same sum.');
  if (tiers.length > 0 && tiers[0]!.from > 0)
    throw new FieldError('shipping', 'Say what shipping costs below the first sum, from 0.');
  return tiers;
}
