import { useState } from 'react';
import { type Body, type Job, toBuy } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { useShop } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { amountIn, countIn } from '../../parts/amount.js';
import { Dialog } from '../../parts/dialog.js';
import { Choices, SelectField, TextField } from '../../parts/field.js';
import { SupplierForm } from '../../shop/suppliers.js';
import { handleOf } from '../components.js';

export function OfferDialog(props: { job: Job; open: boolean; onClose: () => void }) {
  return (
    <Dialog title="Type in an offer" open={props.open} onClose={props.onClose}>
      <OfferForm {...props} />
    </Dialog>
  );
}

const fits = [
  { id: 'sure', label: 'sure' },
  { id: 'likely', label: 'likely' },
  { id: 'unsure', label: 'not sure' },
] as const;

function OfferForm({ job, onClose }: { job: Job; onClose: () => void }) {
  const shop = useShop();
  const currency = shop.settings.currency ?? '$';
  const [name, setName] = useState('');
  const [supplier, setSupplier] = useState('');
  const [adding, setAdding] = useState(false);
  const [price, setPrice] = useState('');
  const [days, setDays] = useState('');
  const [number, setNumber] = useState('');
  const [breaks, setBreaks] = useState('');
  const [fit, setFit] = useState<Body<'offer'>['fit']>('likely');
  const [counts, setCounts] = useState<Readonly<Record<string, string>>>({});
  const { wrong, busy, act } = useAct();
  const parts = toBuy(job);
  const contained = () =>
    Object.fromEntries(
      Object.entries(counts).flatMap(([part, n]) =>
        n.trim() === '' ? [] : [[part, countIn('How many', n)]],
      ),
    );
  const save = () =>
    act(async () => {
      const contains = contained();
      const only = Object.keys(contains)[0];
      const called = name.trim() || parts.find(({ part }) => part === only)?.name || '';
      if (!supplier) throw new Error('Say who sells it.');
      if (only === undefined) throw new Error('Say which parts are in it.');
      const step = breaksOf(breaks);
      await write(job.id, 'offer', {
        offer: handleOf(`${supplier} ${called} ${number}`),
        name: called,
        supplier,
        price: { amount: amountIn('The price', price, currency), currency },
        contains,
        fit,
        ...(days.trim() !== '' && { leadDays: amountIn('Days', days) }),
        ...(number.trim() !== '' && { number: number.trim() }),
        ...(step.length > 0 && { breaks: step }),
      });
      onClose();
    });
  if (adding)
    return (
      <SupplierForm
        onDone={(made) => {
          if (made) setSupplier(made);
          setAdding(false);
        }}
      />
    );
  return (
    <>
      <div className="row apart bottom-aligned">
        <SelectField
          label="Supplier"
          choices={shop.suppliers.map((s) => ({ id: s.supplier, label: s.name }))}
          value={supplier}
          onChange={setSupplier}
        />
        <Button onClick={() => setAdding(true)}>New supplier</Button>
      </div>
      {parts.length === 0 && <p className="empty">Nothing on the list is still to be ordered.</p>}
      <fieldset className="field">
        <legend className="label">How many of each part are in it</legend>
        <div className="counts">
          {parts.map((p) => (
            <label key={p.part}>
              <input
                inputMode="numeric"
                value={counts[p.part] ?? ''}
                onChange={(e) => setCounts({ ...counts, [p.part]: e.target.value })}
              />
              <span>{p.name}</span>
            </label>
          ))}
        </div>
        <div className="help">Left empty, it is not in it. A kit holds several.</div>
      </fieldset>
      <div className="fields">
        <TextField
          label="Price"
          value={price}
          onChange={setPrice}
          inputMode="decimal"
          placeholder={currency}
        />
        <TextField label="Days until it is here" value={days} onChange={setDays} inputMode="numeric" />
        <TextField
          label="What the supplier calls it"
          value={name}
          onChange={setName}
          help="Left empty, the part’s own name."
        />
        <TextField label="Supplier’s number" value={number} onChange={setNumber} />
        <TextField
          label="Price breaks"
          value={breaks}
          onChange={setBreaks}
          placeholder="5 at 0.60; 10 at 0.45"
          help="From so many on, each costs that."
        />
      </div>
      <Choices label="How sure is it that it fits" choices={fits} value={fit} onChange={setFit} />
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Leave it</Button>
        <Button look="go" disabled={busy} onClick={() => void save()}>
          Keep the offer
        </Button>
      </div>
    </>
  );
}

function breaksOf(text: string): { from: number; price: number }[] {
  return text
    .split(';')
    .map((item) => item.trim())
    .filter(Boolean)
    .map((item) => {
      const found = /^(\d+)\s*(?:at|:)\s*(.+)$/i.exec(item);
      if (!found) throw new Error(`“${item}” is no price break, as “5 at 0.60” is one.`);
      return { from: Number(found[1]), price: amountIn('A price break', found[2]!) };
    });
}
