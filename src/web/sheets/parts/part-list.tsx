import { useId } from 'react';
import type { From, Job } from '../../../job/index.js';
import { price, weekDay } from '../../../phrase/index.js';
import { write, writeAll } from '../../data/outbox.js';
import { asBody } from '../../form/as-body.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { today } from '../../parts/today.js';
import { stateWord } from './part-form.js';

interface Acts {
  readonly onChange: (part: From<'part'>) => void;
  readonly onArrive: (part: From<'part'>) => void;
  readonly onMismatch: (part: From<'part'>) => void;
}

/** The list as it was written: a row keeps its place whatever comes of its part. */
export function PartList({ job, ...acts }: { job: Job } & Acts) {
  const live = livePartsOf(job);
  if (live.length === 0)
    return (
      <p className="empty">
        List what must be bought. Each part keeps its number, price, supplier and the day it is due.
      </p>
    );
  return (
    <section className="section stack tight">
      <h2>On the list</h2>
      <AllOfThem job={job} />
      <ul className="lines part-lines">
        {live.map((part) => (
          <PartLine key={part.part} job={job} part={part} {...acts} />
        ))}
      </ul>
    </section>
  );
}

export const livePartsOf = (job: Job) => [...job.parts.values()].filter((p) => p.state !== 'dropped');

/** Several parts in the same state, and the one touch that says the same of them all; an exception is said at its row. */
export function lotsOf(job: Job) {
  const lot = (state: From<'part'>['state'], to: From<'part'>['state'], words: string) => {
    const parts = livePartsOf(job).filter((p) => p.state === state);
    const write = () =>
      writeAll(
        job.id,
        parts.map((p) => ({ kind: 'part', body: { ...asBody(p), state: to } })),
      );
    return parts.length > 1 ? [{ label: `All ${parts.length} ${words}`, write }] : [];
  };
  return [
    ...lot('wanted', 'ordered', 'are ordered'),
    ...lot('ordered', 'arrived', 'are here and match the old ones'),
  ];
}

function AllOfThem({ job }: { job: Job }) {
  const { wrong, busy, act } = useAct(job);
  const lots = lotsOf(job);
  if (lots.length === 0) return <Wrong words={wrong} />;
  return (
    <>
      <div className="row">
        {lots.map((lot) => (
          <Button key={lot.label} disabled={busy} onClick={() => void act(lot.write)}>
            {lot.label}
          </Button>
        ))}
      </div>
      <Wrong words={wrong} />
    </>
  );
}

function PartLine({ job, part, onChange, onArrive, onMismatch }: { job: Job; part: From<'part'> } & Acts) {
  const name = useId();
  const provisional = job.decisions.findLast(
    (d) => d.choice === 'provisional' && (d.which === part.part || d.which === part.component),
  );
  return (
    <li>
      <div>
        <b id={name}>
          {part.count > 1 && `${part.count} × `}
          {part.name}
        </b>
        <div className="soft">
          {[
            part.number,
            part.supplier,
            part.price && price(part.price.currency, part.price.amount),
            part.words,
          ]
            .filter(Boolean)
            .join(' · ')}
        </div>
        {part.state === 'ordered' && part.due && <Due date={part.due} />}
        {provisional && part.state !== 'fitted' && part.state !== 'arrived' && (
          <div>
            <span className="chip">old part back for now, until {provisional.until}</span>
          </div>
        )}
      </div>
      <div className="row">
        <StateWord state={part.state} />
        {part.state === 'wanted' && <SayState job={job} part={part} to="ordered" words="Ordered" />}
        {part.state === 'ordered' && (
          <Button aria-label={`It is here: ${part.name}`} onClick={() => onArrive(part)}>
            It is here
          </Button>
        )}
        {part.state === 'arrived' && <SayState job={job} part={part} to="ordered" words="Not here yet" />}
        {part.state === 'mismatch' && (
          <Button aria-label={`What now: ${part.name}`} onClick={() => onMismatch(part)}>
            What now
          </Button>
        )}
        <Button look="quiet" aria-describedby={name} onClick={() => onChange(part)}>
          Change
        </Button>
      </div>
    </li>
  );
}

/** What came of one part, in one touch. */
function SayState(props: { job: Job; part: From<'part'>; to: From<'part'>['state']; words: string }) {
  const { job, part, to, words } = props;
  const { busy, wrong, act } = useAct(job);
  return (
    <>
      <Button
        look={part.state === 'arrived' ? 'quiet' : 'plain'}
        aria-label={`${words}: ${part.name}`}
        disabled={busy}
        onClick={() => void act(() => write(job.id, 'part', { ...asBody(part), state: to }))}
      >
        {words}
      </Button>
      <Wrong words={wrong} />
    </>
  );
}

function Due({ date }: { date: string }) {
  return date < today() ? (
    <div className="verdict cannot-decide">was due {weekDay(date, today())}</div>
  ) : (
    <div className="soft">due {weekDay(date, today())}</div>
  );
}

function StateWord({ state }: { state: From<'part'>['state'] }) {
  const look =
    state === 'fitted' || state === 'arrived'
      ? 'verdict pass'
      : state === 'mismatch'
        ? 'verdict fail'
        : 'soft';
  return <span className={look}>{stateWord(state)}</span>;
}
