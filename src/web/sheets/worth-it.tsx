import { useState } from 'react';
import type { Job } from '../../job/index.js';
import { write } from '../data/outbox.js';
import { useShop } from '../data/queries.js';
import { usePrimary } from '../frame/job-frame.js';
import { Sheet, type SheetProps } from '../frame/sheet.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { Dialog } from '../parts/dialog.js';
import { Choices, TextField } from '../parts/field.js';

const choices = [
  { id: 'repair', label: 'Repair' },
  { id: 'part-repair', label: 'Part repair' },
  { id: 'donor', label: 'Donor for parts' },
  { id: 'scrap', label: 'Scrap' },
  { id: 'ask-owner', label: 'Ask the owner' },
] as const;
type Choice = (typeof choices)[number]['id'];

/** Decide with the owner, with the limit they set in sight. Safety faults are not optional. */
export function WorthIt({ job, gate }: SheetProps) {
  const [deciding, setDeciding] = useState(false);
  usePrimary({ label: 'Decide', act: () => setDeciding(true) });
  const decisions = job.decisions.filter((d) => d.about === 'machine');
  const last = decisions.at(-1);
  const { stopLimit, consent } = job.intake;
  return (
    <Sheet job={job} gate={gate} headline={last ? last.title : 'Not decided yet'} say={last?.reason}>
      <ul className="lines">
        <li>
          <span>The owner’s limit: call above</span>
          <b>{stopLimit ? `${stopLimit.currency}${stopLimit.amount}` : 'not set'}</b>
        </li>
        <li>
          <span>Consent</span>
          <b>{consent?.given ? `${consent.by}, ${consent.how}` : 'not given'}</b>
        </li>
        <PartsCost job={job} />
      </ul>
      {decisions.length > 1 && (
        <section className="section">
          <h2>How the answer changed</h2>
          <ul className="lines">
            {decisions.map((d) => (
              <li key={d.entry}>
                <div>
                  {d.title}
                  <div className="soft">{d.reason}</div>
                </div>
                <small>{d.at.slice(0, 16).replace('T', ' ')}</small>
              </li>
            ))}
          </ul>
        </section>
      )}
      <Decide job={job} open={deciding} onClose={() => setDeciding(false)} />
    </Sheet>
  );
}

/** Parts with a price, added up a currency at a time; parts without one are counted, not guessed. */
function PartsCost({ job }: { job: Job }) {
  const parts = [...job.parts.values()].filter((p) => p.state !== 'dropped');
  if (parts.length === 0) return null;
  const sums = new Map<string, number>();
  for (const p of parts) {
    if (p.price) sums.set(p.price.currency, (sums.get(p.price.currency) ?? 0) + p.price.amount * p.count);
  }
  const unpriced = parts.filter((p) => !p.price).length;
  const total =
    [...sums].map(([currency, amount]) => `${currency}${amount.toFixed(2)}`).join(' + ') || 'no price yet';
  return (
    <li>
      <span>Parts on the list{unpriced > 0 && `, ${unpriced} without a price`}</span>
      <b>{total}</b>
    </li>
  );
}

function Decide({ job, open, onClose }: { job: Job; open: boolean; onClose: () => void }) {
  const shop = useShop();
  const [choice, setChoice] = useState<Choice>();
  const [reason, setReason] = useState('');
  const [amount, setAmount] = useState('');
  const { wrong, act } = useAct();
  const money = amount.trim() === '' ? undefined : Number(amount);
  const save = () =>
    act(async () => {
      if (!choice) throw new Error('Choose one.');
      if (money !== undefined && !Number.isFinite(money)) throw new Error('The amount is a number.');
      await write(job.id, 'decision', {
        about: 'machine',
        title: titles[choice],
        choice,
        reason: reason.trim(),
        ...(money !== undefined && { amount: { amount: money, currency: shop.settings.currency ?? '$' } }),
      });
      onClose();
    });
  return (
    <Dialog title="Is it worth it?" open={open} onClose={onClose}>
      <Choices label="Decided with the owner" choices={choices} value={choice} onChange={setChoice} />
      <TextField
        label="Quoted"
        value={amount}
        onChange={setAmount}
        inputMode="decimal"
        placeholder={shop.settings.currency ?? '$'}
      />
      <TextField label="Why" value={reason} onChange={setReason} long />
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Not yet</Button>
        <Button look="go" disabled={!choice} onClick={() => void save()}>
          Write the decision down
        </Button>
      </div>
    </Dialog>
  );
}

const titles: Readonly<Record<Choice, string>> = {
  repair: 'It is repaired',
  'part-repair': 'Part of it is repaired',
  donor: 'It becomes a donor for parts',
  scrap: 'It is scrapped',
  'ask-owner': 'The owner is asked',
};
