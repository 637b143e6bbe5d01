import { useState } from 'react';
import type { Job } from '../../../job/index.js';
import { counted, price } from '../../../phrase/index.js';
import { type CsvOffer, type CsvProblem, offersSample, readOffersCsv } from '../../../supply/index.js';
import { useAnswers } from '../../data/answers.js';
import { writeAll } from '../../data/outbox.js';
import { useShop } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { Field } from '../../parts/field.js';
import { SupplierForm } from '../../shop/suppliers.js';
import { handleOf } from '../components.js';

/** Offers from a file: read, shown, and only then kept; one broken row and none is. */
export function ImportOffers(props: { job: Job; open: boolean; onClose: () => void }) {
  return (
    <Dialog title="Import offers from a file" open={props.open} onClose={props.onClose}>
      <Import {...props} />
    </Dialog>
  );
}

const columns: readonly (readonly [string, string])[] = [
  ['supplier', 'as it is called in the shop; needed'],
  ['offer', 'what the supplier calls it; needed'],
  ['price', '12.50; needed'],
  ['contains', 'for a kit: bowl ring + 2 x intake gaskets. Left empty, the offer is the part'],
  ['days', 'until it is here'],
  ['number', 'the supplier’s number'],
  ['fit', 'sure, likely or unsure; likely when empty'],
  ['breaks', '5 at 0.60; 10 at 0.45'],
];

function Import({ job, onClose }: { job: Job; onClose: () => void }) {
  const shop = useShop();
  const { toBuy } = useAnswers();
  const currency = shop.settings.currency ?? '$';
  const [text, setText] = useState('');
  const [adding, setAdding] = useState<string>();
  const { wrong, busy, act } = useAct();
  const read =
    text.trim() === ''
      ? undefined
      : readOffersCsv(text, {
          suppliers: shop.suppliers.map(({ supplier: id, name }) => ({ id, name })),
          parts: toBuy.map(({ part: id, name }) => ({ id, name })),
          currency,
        });
  const offers = read && 'offers' in read ? read.offers : undefined;
  const keep = async () => {
    const lines = (offers ?? []).map((o) => offerLine(o, currency));
    if (await act(() => writeAll(job.id, lines))) onClose();
  };
  if (adding !== undefined) return <SupplierForm name={adding} onDone={() => setAdding(undefined)} />;
  return (
    <>
      <FileFormat />
      <Field label="The file">
        {(control) => (
          <input
            {...control}
            type="file"
            accept=".csv,text/csv,text/plain"
            onChange={(e) => void act(async () => setText((await e.target.files?.[0]?.text()) ?? ''))}
          />
        )}
      </Field>
      <Field label="or its lines, pasted">
        {(control) => <textarea {...control} value={text} onChange={(e) => setText(e.target.value)} />}
      </Field>
      {read && 'problems' in read && <Problems problems={read.problems} onAdd={setAdding} />}
      {offers && <Preview offers={offers} currency={currency} />}
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Leave it</Button>
        <Button look="go" disabled={busy || !offers} onClick={() => void keep()}>
          {offers ? `Keep ${counted(offers.length, 'offer')}` : 'Keep the offers'}
        </Button>
      </div>
    </>
  );
}

function FileFormat() {
  return (
    <details>
      <summary>What stands in the file</summary>
      <p className="soft">
        A table with these column names in its first line, in any order, saved as CSV. Parts are named as on
        the list.
      </p>
      <dl className="columns">
        {columns.map(([name, words]) => (
          <div key={name}>
            <dt>
              <code>{name}</code>
            </dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      <a
        className="button"
        download="offers.csv"
        href={`data:text/csv;charset=utf-8,${encodeURIComponent(offersSample)}`}
      >
        Download a sample
      </a>
    </details>
  );
}

const offerLine = (o: CsvOffer, currency: string) => ({
  kind: 'offer' as const,
  body: {
    offer: handleOf(`${o.supplier} ${o.name} ${o.number ?? ''}`),
    name: o.name,
    supplier: o.supplier,
    price: { amount: o.price, currency },
    contains: Object.fromEntries(o.contains.map(({ part, count }) => [part, count])),
    fit: o.fit,
    leadDays: o.days,
    number: o.number,
    breaks: o.breaks.length > 0 ? o.breaks : undefined,
  },
});

const missingSupplier = /no supplier “(.+)”/;

function Problems({ problems, onAdd }: { problems: readonly CsvProblem[]; onAdd: (name: string) => void }) {
  const unknown = new Set(problems.flatMap(({ words }) => missingSupplier.exec(words)?.[1] ?? []));
  return (
    <div className="wrong-box" role="alert">
      <b>Nothing is taken from this file</b>
      <ul className="plain">
        {problems.slice(0, 12).map((p) => (
          <li key={`${p.line} ${p.column} ${p.words}`}>
            Line {p.line}
            {p.column && `, ${p.column}`}: {p.words}.
          </li>
        ))}
        {problems.length > 12 && <li>and {problems.length - 12} more</li>}
      </ul>
      <div className="row">
        {[...unknown].map((name) => (
          <Button key={name} onClick={() => onAdd(name)}>
            Add {name}
          </Button>
        ))}
      </div>
    </div>
  );
}

function Preview({ offers, currency }: { offers: readonly CsvOffer[]; currency: string }) {
  return (
    <ul className="lines">
      {offers.map((o) => (
        <li key={o.line}>
          <div>
            <b>{o.name}</b>
            <div className="soft">
              {o.contains.map(({ name, count }) => `${count > 1 ? `${count} × ` : ''}${name}`).join(', ')}
            </div>
          </div>
          <b>{price(currency, o.price)}</b>
        </li>
      ))}
    </ul>
  );
}
