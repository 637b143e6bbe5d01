import { useState } from 'react';
import type { Body, From, Job } from '../../job/index.js';
import { write } from '../data/outbox.js';
import { useCatalog, useShop } from '../data/queries.js';
import { usePrimary } from '../frame/job-frame.js';
import { Sheet, type SheetProps } from '../frame/sheet.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { Dialog } from '../parts/dialog.js';
import { Choices, TextField } from '../parts/field.js';
import { componentFor, handleOf } from './components.js';

type State = Body<'part'>['state'];
const states: readonly { id: State; label: string }[] = [
  { id: 'wanted', label: 'wanted' },
  { id: 'ordered', label: 'ordered' },
  { id: 'arrived', label: 'here' },
  { id: 'mismatch', label: 'does not match' },
  { id: 'fitted', label: 'fitted' },
  { id: 'dropped', label: 'not needed' },
];
const stateWord = (s: State) => states.find((x) => x.id === s)!.label;

/** What is to be bought, on its way, here and fitted. Lay the new part beside the old one before it is fitted. */
export function Parts({ job, gate }: SheetProps) {
  const [editing, setEditing] = useState<From<'part'> | 'new'>();
  usePrimary({ label: 'Add a part', act: () => setEditing('new') });
  const parts = [...job.parts.values()];
  const live = parts.filter((p) => p.state !== 'dropped');
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={
        live.length === 0 ? 'No part is listed' : `${live.length} ${live.length === 1 ? 'part' : 'parts'}`
      }
      say="Order once: gaskets, seals, clips and fluids with the rest. Lay each new part beside the old one before fitting it."
    >
      <OneTime job={job} />
      {live.length === 0 ? (
        <p className="empty">
          List what must be bought. Each part keeps its number, price, supplier and the day it is due.
        </p>
      ) : (
        <ul className="lines">
          {live.map((p) => (
            <li key={p.part}>
              <div>
                <b>
                  {p.count > 1 && `${p.count} × `}
                  {p.name}
                </b>
                <div className="soft">
                  {[
                    p.number,
                    p.supplier,
                    p.price && `${p.price.currency}${p.price.amount.toFixed(2)}`,
                    p.due && p.state === 'ordered' && `due ${p.due}`,
                    p.words,
                  ]
                    .filter(Boolean)
                    .join(' · ')}
                </div>
              </div>
              <div className="row">
                <span
                  className={
                    p.state === 'fitted' ? 'verdict pass' : p.state === 'mismatch' ? 'verdict fail' : 'soft'
                  }
                >
                  {stateWord(p.state)}
                </span>
                <Button onClick={() => setEditing(p)}>Change</Button>
              </div>
            </li>
          ))}
        </ul>
      )}
      <PartDialog job={job} part={editing} onClose={() => setEditing(undefined)} />
    </Sheet>
  );
}

/** One-time parts of everything that has come off, offered for the list; nothing is added by itself. */
function OneTime({ job }: { job: Job }) {
  const { wrong, act } = useAct();
  const catalog = useCatalog();
  const have = new Set([...job.parts.values()].map((p) => p.part));
  const due = [...job.steps.values()]
    .filter((s) => s.stage === 'teardown' && s.state !== 'dropped')
    .flatMap((s) =>
      (componentFor(catalog, job, s.component)?.oneTimeParts ?? []).map((name) => ({ name, of: s.title })),
    )
    .filter(({ name, of }) => !have.has(handleOf(`${of} ${name}`)));
  if (due.length === 0) return null;
  const add = ({ name, of }: { name: string; of: string }) =>
    act(() =>
      write(job.id, 'part', {
        part: handleOf(`${of} ${name}`),
        name: `${name} (${of})`,
        count: 1,
        state: 'wanted',
      }),
    );
  return (
    <section className="card stack tight">
      <h2>Renewed whenever this comes apart</h2>
      <div className="choices">
        {due.map((d) => (
          <Button key={`${d.of} ${d.name}`} onClick={() => void add(d)}>
            + {d.name} ({d.of})
          </Button>
        ))}
      </div>
      <Wrong words={wrong} />
    </section>
  );
}

function PartDialog({
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
      const amount = price.trim() === '' ? undefined : Number(price);
      if (amount !== undefined && !(amount >= 0)) throw new Error('The price is a number, each.');
      await write(job.id, 'part', {
        part: before?.part ?? handleOf(name),
        name: name.trim(),
        count: Number(count),
        state,
        number: number.trim() || undefined,
        supplier: supplier.trim() || undefined,
        price:
          amount === undefined
            ? undefined
            : { amount, currency: before?.price?.currency ?? shop.settings.currency ?? '$' },
        due: due || undefined,
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
