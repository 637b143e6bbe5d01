import { builtInCatalog, byId } from '../../../catalog/index.js';
import type { Enough, Ranked } from '../../../diagnose/index.js';
import type { Job } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';

type Next = Ranked['best'][number];

/** The checks that earn most for their minutes, each with why. The first one is answered with one tap. */
export function NextChecks(props: {
  job: Job;
  next: Ranked;
  enough: Enough | undefined;
  onLog: (check: string) => void;
}) {
  const { next, enough } = props;
  return (
    <section className="stack tight" aria-label="Check next">
      <h2>Check next</h2>
      {enough && <EnoughWords enough={enough} />}
      {next.best.length === 0 && <p className="empty">No check that can be made now would tell more.</p>}
      {next.best.map((n, i) => (
        <NextCard key={n.id} job={props.job} next={n} first={i === 0} onLog={() => props.onLog(n.id)} />
      ))}
    </section>
  );
}

/** Whether enough is seen, in a sentence; what acting now would risk, on request. */
function EnoughWords({ enough }: { enough: Enough }) {
  const end = enough.words.indexOf('. ') + 1;
  const [first, rest] =
    end > 0 ? [enough.words.slice(0, end), enough.words.slice(end + 1)] : [enough.words, ''];
  return (
    <div className={enough.enough ? 'card' : undefined}>
      <p>{first}</p>
      {rest && (
        <details>
          <summary>What acting now would risk</summary>
          <p className="soft">{rest}</p>
        </details>
      )}
    </div>
  );
}

function NextCard({
  job,
  next: n,
  first,
  onLog,
}: {
  job: Job;
  next: Next;
  first: boolean;
  onLog: () => void;
}) {
  const check = byId(builtInCatalog().checks).get(n.id);
  const { wrong, busy, act } = useAct();
  const oneTap = first && check !== undefined;
  const log = (outcome: string) =>
    act(() => write(job.id, 'observation', { check: n.id, title: n.title, outcomes: [outcome] }));
  return (
    <article className={first ? 'card first' : 'card'}>
      <header>
        <b>{n.title}</b>
        <span className="minutes">{Math.round(n.minutes)} min</span>
      </header>
      <p className="soft">{n.why}</p>
      {n.comesOff.length > 0 && (
        <p className="soft">Comes off first: {n.comesOff.map((c) => c.name).join(', ')}.</p>
      )}
      {n.lacking.length > 0 && <p className="soft">Not on the shop’s list: {n.lacking.join(', ')}.</p>}
      {[...n.before, ...n.cautions.map((c) => c.title)].map((words) => (
        <p className="care" key={words}>
          ! {words}
        </p>
      ))}
      {oneTap && (
        <div className="outcomes">
          {check.outcomes.map((o) => (
            <Button key={o.id} disabled={busy} onClick={() => void log(o.words)}>
              {o.words}
            </Button>
          ))}
        </div>
      )}
      <Wrong words={wrong} />
      <Button look={oneTap ? 'quiet' : 'plain'} onClick={onLog}>
        {oneTap ? (check.several ? 'Several of them, or with words' : 'With words or conditions') : 'Log it'}
      </Button>
    </article>
  );
}
