import { useState } from 'react';
import type { Catalog } from '../../../catalog/index.js';
import { byId } from '../../../catalog/index.js';
import { type Body, type From, type Job, localTime } from '../../../job/index.js';
import { counted } from '../../../phrase/index.js';
import { useAnswers, useCatalog } from '../../data/answers.js';
import { write } from '../../data/outbox.js';
import { asBody } from '../../form/as-body.js';
import { AllowRinging } from '../../frame/bells.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { useNow } from '../../parts/now.js';
import { CleanPart } from './clean-part.js';

/** What lies in a bath or dries, with its time, and the way to the next part: materials first, then the cleaner. */
export function Cleaning({ job }: { job: Job }) {
  const catalog = useCatalog();
  const [asking, setAsking] = useState(false);
  const states = useAnswers().cleanings;
  const open = states.filter(({ cleaning }) => cleaning.state !== 'done');
  const done = states.length - open.length;
  return (
    <section className="section stack tight" aria-label="Cleaning">
      <h2>Cleaning</h2>
      {open.length > 0 && (
        <ul className="lines">
          {open.map(({ cleaning, until }) => (
            <CleaningLine key={cleaning.cleaning} job={job} cleaning={cleaning} until={until} />
          ))}
        </ul>
      )}
      {done > 0 && (
        <details>
          <summary>{counted(done, 'part')} clean</summary>
          <ul className="lines">
            {states
              .filter(({ cleaning }) => cleaning.state === 'done')
              .map(({ cleaning }) => (
                <li key={cleaning.cleaning}>
                  <div>
                    <b>{cleaning.title}</b> <span className="soft">{agentName(catalog, cleaning.agent)}</span>
                  </div>
                  <span className="verdict pass">clean</span>
                </li>
              ))}
          </ul>
        </details>
      )}
      <div className="row">
        <Button onClick={() => setAsking(true)}>Clean a part</Button>
        {open.some(({ until }) => until !== undefined) && <AllowRinging />}
      </div>
      <CleanPart job={job} open={asking} onClose={() => setAsking(false)} />
    </section>
  );
}

const agentName = (catalog: Catalog, id: string): string =>
  (byId(catalog.agents).get(id)?.name ?? id).split(':')[0]!;

type State = Body<'cleaning'>['state'];

/** What comes next for it, and how a hand says so. */
function nextOf({ state, soakMinutes = 0, dryMinutes = 0 }: From<'cleaning'>): {
  state: State;
  label: string;
} {
  const dry = dryMinutes > 0 ? ('drying' as const) : ('done' as const);
  if (state === 'planned')
    return soakMinutes > 0
      ? { state: 'soaking', label: 'Put it in' }
      : { state: dry, label: dry === 'drying' ? 'Cleaned, drying' : 'Cleaned' };
  if (state === 'soaking') return { state: dry, label: 'Take it out' };
  return { state: 'done', label: 'Dry and oiled' };
}

function CleaningLine(props: { job: Job; cleaning: From<'cleaning'>; until: number | undefined }) {
  const { job, cleaning, until } = props;
  const { catalog, cleaningRefused } = useAnswers();
  const { wrong, busy, act } = useAct(job);
  const next = nextOf(cleaning);
  const move = (state: State) =>
    act(async () => {
      const never = cleaning.state === 'planned' && state !== 'dropped' && cleaningRefused(cleaning);
      if (never) throw new Error(`Not with ${agentName(catalog, cleaning.agent).toLowerCase()}. ${never}.`);
      await write(job.id, 'cleaning', { ...asBody(cleaning), state });
    });
  return (
    <li>
      <div>
        <b>{cleaning.title}</b> <span className="soft">{agentName(catalog, cleaning.agent)}</span>
        <div>
          <TimeLeft state={cleaning.state} until={until} />
        </div>
        <Wrong words={wrong} />
      </div>
      <div className="row">
        <Button
          disabled={busy}
          aria-label={`${next.label}: ${cleaning.title}`}
          onClick={() => void move(next.state)}
        >
          {next.label}
        </Button>
        {cleaning.state === 'planned' && (
          <Button
            look="quiet"
            disabled={busy}
            aria-label={`Drop ${cleaning.title}`}
            onClick={() => void move('dropped')}
          >
            Drop
          </Button>
        )}
      </div>
    </li>
  );
}

const clockAt = (ms: number) => localTime(new Date(ms)).slice(11, 16);

function TimeLeft({ state, until }: { state: State; until: number | undefined }) {
  const now = useNow();
  if (state === 'planned') return <span className="soft">planned</span>;
  const word = state === 'soaking' ? 'soaks' : 'dries';
  if (until === undefined) return <span className="soft">{word}</span>;
  if (until <= now)
    return <span className="verdict cannot-decide">time is up since {clockAt(until)}: look at it</span>;
  return (
    <span>
      {word} until <b>{clockAt(until)}</b>{' '}
      <span className="soft">({minutesWords((until - now) / 60_000)})</span>
    </span>
  );
}

function minutesWords(minutes: number): string {
  const whole = Math.ceil(minutes);
  return whole < 120 ? `${whole} min` : `${Math.round(whole / 60)} h`;
}
