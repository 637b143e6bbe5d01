import { useState } from 'react';
import { type From, type Job, partName } from '../../../job/index.js';
import { counted, plural, price } from '../../../phrase/index.js';
import { write } from '../../data/outbox.js';
import { useShop } from '../../data/queries.js';
import { asBody } from '../../form/as-body.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { ImportOffers } from './import-offers.js';
import { OfferDialog } from './offer-form.js';

/** What suppliers sell for this job, typed in or imported. */
export function Offers({ job }: { job: Job }) {
  const shop = useShop();
  const [typing, setTyping] = useState(false);
  const [importing, setImporting] = useState(false);
  const { wrong, act } = useAct();
  const offers = [...job.offers.values()].filter((o) => !o.withdrawn);
  const supplierName = (id: string) => shop.suppliers.find((s) => s.supplier === id)?.name ?? id;
  const withdraw = (offer: From<'offer'>) =>
    act(() => write(job.id, 'offer', { ...asBody(offer), withdrawn: true }));
  if (job.parts.size === 0) return null;
  return (
    <section className="section stack tight" aria-label="Offers">
      <h2>Offers</h2>
      {offers.length === 0 && (
        <p className="soft">
          What suppliers ask for these parts, with kits and days. From two or more the cheapest order is
          worked out.
        </p>
      )}
      {offers.length > 0 && (
        <details open={offers.length <= 6}>
          <summary>
            {counted(offers.length, 'offer')} from {new Set(offers.map((o) => o.supplier)).size}{' '}
            {plural(new Set(offers.map((o) => o.supplier)).size, 'supplier')}
          </summary>
          <ul className="lines">
            {offers.map((offer) => (
              <li key={offer.offer}>
                <div>
                  <b>{offer.name}</b> <span className="soft">{supplierName(offer.supplier)}</span>
                  <div className="soft">{offerWords(job, offer)}</div>
                </div>
                <div className="row">
                  <b>{price(offer.price.currency, offer.price.amount)}</b>
                  <Button
                    look="quiet"
                    aria-label={`${offer.name} is no longer offered`}
                    onClick={() => void withdraw(offer)}
                  >
                    Gone
                  </Button>
                </div>
              </li>
            ))}
          </ul>
        </details>
      )}
      <Wrong words={wrong} />
      <div className="row">
        <Button onClick={() => setTyping(true)}>Type in an offer</Button>
        <Button onClick={() => setImporting(true)}>Import a file</Button>
      </div>
      <OfferDialog job={job} open={typing} onClose={() => setTyping(false)} />
      <ImportOffers job={job} open={importing} onClose={() => setImporting(false)} />
    </section>
  );
}

function offerWords(job: Job, offer: From<'offer'>): string {
  const parts = Object.entries(offer.contains);
  const kit = parts.length > 1 || parts.some(([, n]) => n > 1);
  return [
    kit && `holds ${parts.map(([part, n]) => `${n > 1 ? `${n} × ` : ''}${partName(job, part)}`).join(', ')}`,
    offer.leadDays !== undefined && (offer.leadDays === 0 ? 'at hand' : `${offer.leadDays} days`),
    offer.number,
    ...(offer.breaks ?? []).map(
      ({ from, price: each }) => `from ${from}: ${price(offer.price.currency, each)}`,
    ),
    offer.fit === 'sure'
      ? 'sure to fit'
      : offer.fit === 'unsure'
        ? 'not sure to fit: left out of the order'
        : 'likely to fit',
  ]
    .filter(Boolean)
    .join(' · ');
}
