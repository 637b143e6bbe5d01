import { useId } from 'react';
import type { From, Job } from '../../../job/index.js';
import { price, weekDay } from '../../../phrase/index.js';
import { Button } from '../../parts/act.js';
import { stateWord } from './part-form.js';
import { today } from './today.js';

interface Acts {
  readonly onChange: (part: From<'part'>) => void;
  readonly onArrive: (part: From<'part'>) => void;
  readonly onMismatch: (part: From<'part'>) => void;
}

/** The list, what needs a hand first. */
export function PartList({ job, ...acts }: { job: Job } & Acts) {
  const live = [...job.parts.values()].filter((p) => p.state !== 'dropped');
  if (live.length === 0)
    return (
      <p className="empty">
        List what must be bought. Each part keeps its number, price, supplier and the day it is due.
      </p>
    );
  const rank: readonly From<'part'>['state'][] = ['mismatch', 'ordered', 'wanted', 'arrived', 'fitted'];
  const inOrder = live.toSorted((a, b) => rank.indexOf(a.state) - rank.indexOf(b.state));
  return (
    <section className="section stack tight">
      <h2>On the list</h2>
      <ul className="lines part-lines">
        {inOrder.map((part) => (
          <PartLine key={part.part} job={job} part={part} {...acts} />
        ))}
      </ul>
    </section>
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
        {part.state === 'ordered' && (
          <Button aria-label={`It is here: ${part.name}`} onClick={() => onArrive(part)}>
            It is here
          </Button>
        )}
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

function Due({ date }: { date: string }) {
  return date < today() ? (
    <div className="verdict cannot-decide">was due {weekDay(date)}</div>
  ) : (
    <div className="soft">due {weekDay(date)}</div>
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
