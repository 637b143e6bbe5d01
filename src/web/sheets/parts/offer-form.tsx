import { useState } from 'react';
import type { Body, From, Job } from '../../../job/index.js';
import { useAnswers } from '../../data/answers.js';
import { useShop } from '../../data/queries.js';
import { amountIn, countIn } from '../../form/amount.js';
import { FieldError } from '../../form/field.js';
import { Asked, FormBox } from '../../form/form.js';
import { type Form, useForm } from '../../form/use-form.js';
import { Button } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
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

type Counts = Readonly<Record<string, string>>;

interface Offering {
  readonly job: Job;
  readonly onClose: () => void;
}

function useOffer({ job, onClose }: Offering) {
  const shop = useShop();
  const parts = useAnswers().toBuy;
  return useForm({
    job: job.id,
    kind: 'offer',
    title: 'An offer',
    fields: {
      supplier: {
        as: 'select',
        label: 'Supplier',
        choices: shop.suppliers.map((s) => ({ id: s.supplier, label: s.name })),
        need: 'Say who sells it.',
      },
      contains: { as: 'drawn', label: 'How many of each part are in it', begin: {} },
      price: {
        as: 'money',
        label: 'Price',
        currency: shop.settings.currency ?? '$',
        need: 'The price: say what it costs.',
      },
      leadDays: { as: 'number', label: 'Days until it is here' },
      name: { as: 'text', label: 'What the supplier calls it', help: 'Left empty, the part’s own name.' },
      number: { as: 'text', label: 'Supplier’s number' },
      $breaks: {
        as: 'text',
        label: 'Price breaks',
        hint: '5 at 0.60; 10 at 0.45',
        help: 'From so many on, each costs that.',
      },
      fit: { as: 'choice', label: 'How sure is it that it fits', choices: fits, begin: 'likely' },
    },
    also: ({ supplier, number = '', name }, { contains, $breaks }) => {
      const counts = countsOf(contains as Counts);
      const only = Object.keys(counts)[0];
      if (only === undefined) throw new FieldError('contains', 'Say which parts are in it.');
      const called = name ?? parts.find(({ part }) => part === only)?.name ?? '';
      const breaks = breaksOf(String($breaks));
      return {
        offer: handleOf(`${supplier} ${called} ${number}`),
        name: called,
        contains: counts,
        ...(breaks.length > 0 && { breaks }),
      };
    },
    onDone: onClose,
  });
}

function OfferForm({ job, onClose }: Offering) {
  const [adding, setAdding] = useState(false);
  const parts = useAnswers().toBuy;
  const form = useOffer({ job, onClose });
  if (adding)
    return (
      <SupplierForm
        onDone={(made) => {
          if (made) form.set('supplier', made);
          setAdding(false);
        }}
      />
    );
  return (
    <FormBox form={form} keep="Keep the offer" leave="Leave it" onLeave={onClose}>
      <div className="row apart bottom-aligned">
        <Asked form={form} names={['supplier']} />
        <Button onClick={() => setAdding(true)}>New supplier</Button>
      </div>
      {parts.length === 0 && <p className="empty">Nothing on the list is still to be ordered.</p>}
      <Contents form={form} parts={parts} />
      <Asked form={form} names={['price', 'leadDays', 'name', 'number', '$breaks', 'fit']} />
    </FormBox>
  );
}

function Contents({ form, parts }: { form: Form<Body<'offer'>>; parts: readonly From<'part'>[] }) {
  const counts = form.given.contains as Counts;
  const wrong = form.wrongAt('contains');
  return (
    <fieldset className="field">
      <legend className="label">How many of each part are in it</legend>
      <div className="counts">
        {parts.map((p) => (
          <label key={p.part}>
            <input
              inputMode="numeric"
              aria-invalid={wrong ? true : undefined}
              value={counts[p.part] ?? ''}
              onChange={(e) => form.set('contains', { ...counts, [p.part]: e.target.value })}
            />
            <span>{p.name}</span>
          </label>
        ))}
      </div>
      <div className="help">Left empty, it is not in it. A kit holds several.</div>
    </fieldset>
  );
}

function countsOf(counts: Counts): Record<string, number> {
  const said = Object.entries(counts).filter(([, n]) => n.trim() !== '');
  try {
    return Object.fromEntries(said.map(([part, n]) => [part, countIn('How many', n)]));
  } catch (error) {
    throw new FieldError('contains', (error as Error).message);
  }
}

function breaksOf(text: string): { from: number; price: number }[] {
  return text
    .split(';')
    .map((item) => item.trim())
    .filter(Boolean)
    .map((item) => {
      const found = /^(\d+)\s*(?:at|:)\s*(.+)$/i.exec(item);
      if (!found) throw new FieldError('$breaks', `“${item}” is no price break, as “5 at 0.60” is one.`);
      return { from: Number(found[1]), price: amountIn('A price break', found[2]!) };
    });
}
