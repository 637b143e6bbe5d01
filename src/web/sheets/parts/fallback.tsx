import type { From, Job } from '../../../job/index.js';
import { price, weekDay } from '../../../phrase/index.js';
import { useAnswers } from '../../data/answers.js';
import { writeAll } from '../../data/outbox.js';
import { FormBox } from '../../form/form.js';
import { useForm } from '../../form/use-form.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { today } from '../../parts/today.js';
import { useBasket } from './use-basket.js';

interface FallbackProps {
  readonly job: Job;
  readonly part: From<'part'> | undefined;
  readonly onClose: () => void;
}

/** A part that came wrong, or does not come: the next offer, or the old one back for now. */
export function FallbackDialog({ job, part, onClose }: FallbackProps) {
  return (
    <Dialog title={part ? `${part.name}: what now` : ''} open={part !== undefined} onClose={onClose}>
      {part && (
        <>
          {part.words && <p className="soft">{part.words}</p>}
          <NextOffer job={job} part={part} onClose={onClose} />
          {!part.consumable && <OldPartBack job={job} part={part} onClose={onClose} />}
          <div className="row end">
            <Button onClick={onClose}>Leave it open</Button>
          </div>
        </>
      )}
    </Dialog>
  );
}

function NextOffer({ job, part, onClose }: FallbackProps & { part: From<'part'> }) {
  const answers = useAnswers();
  const { wrong, busy, act } = useAct();
  const { problem, currency } = answers.basketAsked({ only: [part.part] });
  const { found, working, wrong: unsolved } = useBasket(problem);
  const best = found?.cheapest;
  const offered = Object.keys(problem.need).length > 0;
  const order = async (basket: NonNullable<typeof best>) => {
    if (await act(() => writeAll(job.id, answers.orderEntries(basket, today())))) onClose();
  };
  return (
    <section className="card stack tight">
      <h3>The next offer</h3>
      {!offered && <p>No other offer for it is written down. Type one in, or import a file, under Offers.</p>}
      {offered && working && !best && <p className="soft">Looking …</p>}
      <Wrong words={wrong ?? unsolved} />
      {offered &&
        best &&
        answers.orders(best, today()).orders.map((o) => (
          <div key={o.supplier} className="row apart">
            <div>
              <b>{o.lines.map(({ offer }) => offer.name).join(', ')}</b>
              <div className="soft">
                {o.name}, {price(currency, best.goods + best.shipping)} with shipping, here{' '}
                {weekDay(o.arrives)}
              </div>
            </div>
            <Button look="go" disabled={busy} onClick={() => void order(best)}>
              Order this one
            </Button>
          </div>
        ))}
    </section>
  );
}

function OldPartBack({ job, part, onClose }: FallbackProps & { part: From<'part'> }) {
  const form = useForm({
    job: job.id,
    kind: 'decision',
    handle: `${part.part} back for now`,
    title: `${part.name}: the old one for now`,
    fields: {
      reason: {
        as: 'text',
        label: 'Why it may go back',
        hint: 'not torn, owner needs it by Friday …',
        need: 'Say why it may go back.',
      },
      until: {
        as: 'text',
        label: 'Until',
        begin: 'the new one is here, or the next service',
        need: 'Say until when.',
      },
    },
    also: {
      about: part.component === undefined ? 'part' : 'component',
      which: part.component ?? part.part,
      title: `${part.name}: the old one cleaned and put back for now`,
      choice: 'provisional',
    },
    onDone: onClose,
  });
  return (
    <section className="card stack tight">
      <h3>The old one back for now</h3>
      <p className="soft">
        Cleaned, looked at, and put back. It stays open, stands on the record, and comes back when the new one
        is here. Not where fuel could leak or the machine could not be stopped.
      </p>
      <FormBox form={form} keep="Put the old one back for now" className="stack tight" />
    </section>
  );
}
