import { useState } from 'react';
import { Link } from 'wouter';
import { byId, type Catalog } from '../../catalog/index.js';
import type { From, Job, WorthVerdict } from '../../job/index.js';
import {
  money,
  percent,
  price,
  roughHours,
  roughMoney,
  thousands,
  withinSentence,
} from '../../phrase/index.js';
import { type Worth, worthWords } from '../../worth/index.js';
import { useCatalog } from '../data/answers.js';
import { useShop } from '../data/queries.js';
import { readAmount } from '../form/amount.js';
import { Asked, FormBox } from '../form/form.js';
import { useForm } from '../form/use-form.js';
import { usePrimary } from '../frame/job-frame.js';
import { Sheet, type SheetProps } from '../frame/sheet.js';
import { Dialog } from '../parts/dialog.js';
import { FigureWithOrigin } from '../parts/number.js';
import { useWorkedOut } from '../work/use-worked-out.js';
import { Estimate } from './worth/estimate.js';
import { WorthHistory } from './worth/history.js';
import { SpreadPicture } from './worth/spread-picture.js';

const choices = [
  { id: 'repair', label: 'Repair' },
  { id: 'part-repair', label: 'Part repair' },
  { id: 'donor', label: 'Donor for parts' },
  { id: 'scrap', label: 'Scrap' },
  { id: 'declined', label: 'The owner declines' },
  { id: 'ask-owner', label: 'Ask the owner' },
] as const;
type Choice = (typeof choices)[number]['id'];

/** What it costs to make it right, against what it is worth; then decide with the owner. Safety faults are not optional. */
export function WorthIt({ job, gate }: SheetProps) {
  const [deciding, setDeciding] = useState(false);
  usePrimary({ label: 'Decide', act: () => setDeciding(true) });
  const { answer, busy } = useWorkedOut('worth');
  const verdict = answer ?? notYet;
  const decisions = job.decisions.filter((d) => d.about === 'machine');
  const last = decisions.at(-1);
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={last?.title ?? (verdict.state === 'answered' ? wordsOf(verdict).headline : 'Not decided yet')}
      say={last?.reason ?? (verdict.state === 'answered' ? wordsOf(verdict).chance : verdict.words)}
    >
      {verdict.state === 'cannot' && verdict.because === 'architecture' && (
        <p className="empty">
          Nothing can be worked out yet.{' '}
          <Link href={`/job/${job.id}/intake`}>Write down what kind of engine it is</Link>, then what was
          seen.
        </p>
      )}
      {verdict.state === 'answered' && (
        <div className="stack" aria-busy={busy}>
          <Answer job={job} verdict={verdict} decided={last !== undefined} />
        </div>
      )}
      <Given job={job} verdict={verdict} />
      {decisions.length > 1 && <Decided decisions={decisions} />}
      <Decide job={job} open={deciding} onClose={() => setDeciding(false)} />
    </Sheet>
  );
}

/** While the first answer is being worked out. */
const notYet = { state: 'cannot', because: 'contradiction', words: 'Working it out …' } as const;

type Answered = Extract<WorthVerdict, { state: 'answered' }>;

const moneyIn =
  (currency: string) =>
  (amount: number): string =>
    roughMoney(currency, amount);

const wordsOf = ({ worth, currency, value, limit }: Answered) =>
  worthWords(worth, {
    ...(value !== undefined && { value }),
    ...(limit !== undefined && { limit }),
    money: moneyIn(currency),
  });

function Answer(props: { job: Job; verdict: Answered; decided: boolean }) {
  const { job, verdict, decided } = props;
  const { worth, currency, value, limit } = verdict;
  const about = moneyIn(currency);
  const words = wordsOf(verdict);
  const { answer: history = [] } = useWorkedOut('worthHistory');
  return (
    <>
      {decided && (
        <p>
          {verdict.asOf && 'When it was decided: '}
          {words.chance}
        </p>
      )}
      <Estimate job={job} verdict={verdict} />
      <SpreadPicture worth={worth} value={value} limit={limit} money={about} />
      {words.stop && <p className="card first stop-point">{words.stop}</p>}
      <Missing job={job} verdict={verdict} />
      <WorthHistory history={history} money={about} />
      <HowSure verdict={verdict} />
    </>
  );
}

function Missing({ job, verdict: { worth, leftOut } }: { job: Job; verdict: Answered }) {
  if (worth.lacks.length === 0 && leftOut.length === 0) return null;
  return (
    <div className="empty">
      {worth.lacks.includes('rate') && (
        <p>
          No money without a rate. <Link href="/shop">Write down what an hour costs here</Link>, or what your
          own hour is worth to you.
        </p>
      )}
      {worth.lacks.includes('value') && (
        <p>
          No verdict without a value.{' '}
          <Link href={`/job/${job.id}/intake`}>Write down what it is worth when it runs</Link>.
        </p>
      )}
      {leftOut.map((words) => (
        <p key={words}>Left out: {words}.</p>
      ))}
    </div>
  );
}

const mostScrap = ({ scrap }: Worth, { faults }: Catalog): string => {
  const names = scrap.by.slice(0, 2).map((f) => withinSentence(byId(faults).get(f.fault)?.name ?? f.fault));
  return names.length > 0 ? `, mostly by ${names.join(' or ')}` : '';
};

function HowSure({ verdict: { worth, spent, currency } }: { verdict: Answered }) {
  const about = moneyIn(currency);
  const catalog = useCatalog();
  const { drawn, scrap, unpriced, withRest } = worth;
  return (
    <details className="section">
      <summary>Where these numbers come from</summary>
      <ul>
        <li>
          {thousands(drawn.machines)} machines drawn from what the findings leave open, all their faults at
          once
          {drawn.joint === 'independent' && ', here fault by fault, because they hang together too widely'}. A
          chance is right within {percent(2 * drawn.chanceError)}.
        </li>
        {withRest && drawn.medianBetween && (
          <li>
            With what may still turn up half cost {about(withRest.p25)} to {about(withRest.p75)}, nine in ten{' '}
            {about(withRest.p05)} to {about(withRest.p95)}; the middle lies between{' '}
            {about(drawn.medianBetween[0])} and {about(drawn.medianBetween[1])}.
          </li>
        )}
        {scrap.chance > 0 && (
          <li>
            {percent(scrap.chance)} end as scrap{mostScrap(worth, catalog)}: found after{' '}
            {roughHours(scrap.minutesUntilFound)} on average, at the least. It costs that much and brings
            nothing.
          </li>
        )}
        <li>
          Minutes, prices, pace and what is often scrap: trade judgement, no source. What comes off for
          several faults counts once. Intake, checks, run-up and hand-over are not in it.
        </li>
        <li>
          Spent so far, not in it: {roughHours(spent.minutes)} by the catalog’s minutes, parts{' '}
          {about(spent.parts)}
          {spent.cost !== undefined && `, together ${about(spent.cost)}`}.
        </li>
        {unpriced.length > 0 && <li>Without a price, counted as nothing: {unpriced.join(', ')}.</li>}
      </ul>
    </details>
  );
}

/** What the answer stands on, and what was spent. */
function Given({ job, verdict }: { job: Job; verdict: WorthVerdict }) {
  const { stopLimit, worthRunning, consent } = job.intake;
  const sum = (m: { amount: number; currency: string } | undefined) =>
    m ? money(m.currency, m.amount) : 'not set';
  return (
    <ul className="lines">
      <li>
        <span>Worth when it runs</span>
        <b>{sum(worthRunning)}</b>
      </li>
      <li>
        <span>The owner’s limit: call above</span>
        <b>{sum(stopLimit)}</b>
      </li>
      <li>
        <span>Consent</span>
        <b>{consent?.given ? [consent.by, consent.how].filter(Boolean).join(', ') : 'not given'}</b>
      </li>
      <PartsCost job={job} />
      {verdict.state === 'answered' && verdict.spent.cost !== undefined && (
        <li>
          <span>Spent so far, not counted above</span>
          <FigureWithOrigin
            what="Spent so far"
            shown={moneyIn(verdict.currency)(verdict.spent.cost)}
            rows={[
              ['hours', `${roughHours(verdict.spent.minutes)}, by the catalog’s minutes for what was logged`],
              ['parts', `${moneyIn(verdict.currency)(verdict.spent.parts)}, as priced on this job`],
              ['rate', 'what an hour costs, as written under Shop'],
            ]}
          />
        </li>
      )}
    </ul>
  );
}

function Decided({ decisions }: { decisions: readonly From<'decision'>[] }) {
  return (
    <section className="section">
      <h2>What was decided, in turn</h2>
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
  const total = [...sums].map(([currency, amount]) => price(currency, amount)).join(' + ') || 'no price yet';
  return (
    <li>
      <span>Parts on the list{unpriced > 0 && `, ${unpriced} without a price`}</span>
      <FigureWithOrigin
        what="Parts on the list"
        shown={total}
        rows={parts
          .filter((p) => p.price)
          .map((p) => [p.name, `${p.count} × ${price(p.price!.currency, p.price!.amount)}`] as const)}
      />
    </li>
  );
}

function Decide({ job, open, onClose }: { job: Job; open: boolean; onClose: () => void }) {
  return (
    <Dialog title="Is it worth it?" open={open} onClose={onClose}>
      <DecideForm job={job} onClose={onClose} />
    </Dialog>
  );
}

function DecideForm({ job, onClose }: { job: Job; onClose: () => void }) {
  const shop = useShop();
  const currency = shop.settings.currency ?? '$';
  const form = useForm({
    job: job.id,
    kind: 'decision',
    handle: 'machine',
    title: 'Is it worth it?',
    fields: {
      choice: { as: 'choice', label: 'Decided with the owner', choices, need: 'Choose one.' },
      amount: { as: 'money', label: 'Quoted', currency },
      reason: { as: 'long', label: 'Why' },
    },
    also: ({ choice, reason = '' }) => ({ about: 'machine', title: titles[choice as Choice], reason }),
    onDone: onClose,
  });
  const above = limitPassed(job, readAmount(form.text('amount'), currency), currency);
  return (
    <FormBox form={form} keep="Write the decision down" leave="Not yet" onLeave={onClose}>
      <Asked form={form} names={['choice', 'amount']} />
      {above && (
        <p className="care">
          ! Above the {above} at which the owner wants a call. Write down under “Why” who said go on, and
          when.
        </p>
      )}
      <Asked form={form} names={['reason']} />
    </FormBox>
  );
}

/** The owner’s limit, where the quote stands above it. */
function limitPassed(job: Job, quoted: number | undefined, currency: string): string | undefined {
  const { stopLimit } = job.intake;
  if (quoted === undefined || !stopLimit || stopLimit.currency !== currency) return undefined;
  return quoted > stopLimit.amount ? price(currency, stopLimit.amount) : undefined;
}

const titles: Readonly<Record<Choice, string>> = {
  repair: 'It is to be repaired',
  'part-repair': 'Part of it is to be repaired',
  donor: 'It becomes a donor for parts',
  scrap: 'It goes to scrap',
  declined: 'The owner declines: it goes back as it is',
  'ask-owner': 'The owner is asked',
};
