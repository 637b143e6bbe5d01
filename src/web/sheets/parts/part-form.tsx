import { useState } from 'react';
import type { Body, From, Job } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { useShop } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { amountIn, countIn } from '../../parts/amount.js';
import { Dialog } from '../../parts/dialog.js';
import { Choices, TextField } from '../../parts/field.js';
import { handleOf } from '../components.js';

type State = Body<'part'>['state'];
const states: readonly { id: State; label: string }[] = [
  { id: 'wanted', label: 'wanted' },
  { id: 'ordered', label: 'ordered' },
  { id: 'arrived', label: 'here' },
  { id: 'mismatch', label: 'does not match' },
  { id: 'fitted', label: 'fitted' },
  { id: 'dropped', label: 'not needed' },
];
export const stateWord = (s: State) => states.find((x) => x.id === s)!.label;

export function PartDialog({
  job,
  part,
  onClose,
}: {
  job: Job;
  part: From<'part'> | 'new' | undefined;
  onClose: () => void;
}) {
  return (
    <Dialog
      title={part === 'new' ? 'Add a part' : (part?.name ?? '')}
      open={part !== undefined}
      onClose={onClose}
    >
      {part && <PartForm job={job} before={part === 'new' ? undefined : part} onClose={onClose} />}
    </Dialog>
  );
}

function PartForm({
  job,
  before,
  onClose,
}: {
  job: Job;
  before: From<'part'> | undefined;
  onClose: () => void;
}) {
  const shop = useShop();
  const [name, setName] = useState(before?.name ?? '');
  const [count, setCount] = useState(String(before?.count ?? 1));
  const [state, setState] = useState<State>(before?.state ?? 'wanted');
  const [number, setNumber] = useState(before?.number ?? '');
  const [supplier, setSupplier] = useState(before?.supplier ?? '');
  const [price, setPrice] = useState(before?.price ? String(before.price.amount) : '');
  const [due, setDue] = useState(before?.due ?? '');
  const [words, setWords] = useState(before?.words ?? '');
  const { wrong, act } = useAct();
  const save = () =>
    act(async () => {
      const currency = before?.price?.currency ?? shop.settings.currency ?? '$';
      const amount = price.trim() === '' ? undefined : amountIn('Price each', price, currency);
      await write(job.id, 'part', {
        part: before?.part ?? handleOf(name),
        name: name.trim(),
        count: countIn('How many', count),
        state,
        number: number.trim() || undefined,
        supplier: supplier.trim() || undefined,
        price: amount === undefined ? undefined : { amount, currency },
        due: due || undefined,
        component: before?.component,
        consumable: before?.consumable,
        offer: before?.offer,
        words: words.trim() || undefined,
      });
      onClose();
    });
  return (
    <>
      <div className="fields">
        <TextField label="Part" value={name} onChange={setName} placeholder="head gasket" />
        <TextField label="How many" value={count} onChange={setCount} inputMode="numeric" />
        <TextField label="Number" value={number} onChange={setNumber} />
        <TextField label="Supplier" value={supplier} onChange={setSupplier} />
        <TextField
          label="Price each"
          value={price}
          onChange={setPrice}
          inputMode="decimal"
          placeholder={shop.settings.currency ?? '$'}
        />
        <TextField label="Due" value={due} onChange={setDue} type="date" />
      </div>
      <Choices
        label="It is"
        choices={states}
        value={state}
        onChange={setState}
        help={
          state === 'arrived' ? 'Laid beside the old one: same outline, same holes, same slots?' : undefined
        }
      />
      <TextField label="Note" value={words} onChange={setWords} />
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Leave it</Button>
        <Button look="go" disabled={name.trim() === ''} onClick={() => void save()}>
          Keep
        </Button>
      </div>
    </>
  );
}
