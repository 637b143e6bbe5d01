import { applies, type Check, type FirstLook } from '../../../catalog/index.js';
import { type From, type Job, seenWords } from '../../../job/index.js';
import { useAnswers, useCatalog } from '../../data/answers.js';
import { Button } from '../../parts/act.js';

interface Looks {
  readonly job: Job;
  readonly checks: readonly Check[];
  /** all check ids in the order of the advice: habit and advice meet */
  readonly advised: readonly string[];
  readonly onLog: (c: Check) => void;
}

/** The shop's standing list of first looks, there from the start whatever the complaint. */
export function FirstLooks(props: Looks) {
  const { job, advised } = props;
  const { facts } = useAnswers().engine;
  const looks = useCatalog().firstLooks.filter((look) => applies(look.when, facts) !== 'no');
  const rank = (look: FirstLook) => Math.min(...look.checks.map((c) => placeOf(c, advised)));
  const seenOf = (look: FirstLook) =>
    job.observations.filter((o) => o.check !== undefined && look.checks.includes(o.check));
  const open = looks.filter((l) => seenOf(l).length === 0).toSorted((a, b) => rank(a) - rank(b));
  const done = looks.filter((l) => seenOf(l).length > 0);
  return (
    <section className="section stack tight" aria-labelledby="first-looks">
      <h2 id="first-looks">First looks</h2>
      {open.length > 0 && (
        <ul className="lines">
          {open.map((look) => (
            <Look key={look.id} {...props} look={look} seen={[]} />
          ))}
        </ul>
      )}
      {done.length > 0 && (
        <details>
          <summary>
            <span className="verdict pass">looked</span> {done.map((l) => l.title).join(', ')}
          </summary>
          <ul className="lines">
            {done.map((look) => (
              <Look key={look.id} {...props} look={look} seen={seenOf(look)} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

const placeOf = (check: string, advised: readonly string[]): number => {
  const at = advised.indexOf(check);
  return at < 0 ? advised.length : at;
};

function Look(props: Looks & { look: FirstLook; seen: readonly From<'observation'>[] }) {
  const { look, seen, checks, advised, onLog } = props;
  const barred = new Map(useAnswers().barred.map((b) => [b.id, b.why]));
  const ways = look.checks
    .flatMap((id) => checks.filter((c) => c.id === id))
    .filter((c) => !seen.some((o) => o.check === c.id))
    .toSorted((a, b) => placeOf(a.id, advised) - placeOf(b.id, advised));
  return (
    <li>
      <div>
        <b>{look.title}</b> <span className="soft">{look.asks}</span>
        {seen.map((o) => (
          <div key={o.entry}>
            {o.title}: <b>{seenWords(o)}</b>
          </div>
        ))}
        <div className="row ways">
          {ways.map((c) =>
            barred.has(c.id) ? (
              <span key={c.id} className="soft">
                {c.title}: not now, {barred.get(c.id)}
              </span>
            ) : (
              <Button key={c.id} onClick={() => onLog(c)}>
                {c.title}
              </Button>
            ),
          )}
        </div>
      </div>
      {seen.length === 0 && <span className="soft">open</span>}
    </li>
  );
}
