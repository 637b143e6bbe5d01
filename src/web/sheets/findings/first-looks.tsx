import { applies, builtInCatalog, type Check, type FirstLook } from '../../../catalog/index.js';
import { factsOf, type Job } from '../../../job/index.js';
import { Button } from '../../parts/act.js';

/** The shop's standing list of first looks, there from the start whatever the complaint. */
export function FirstLooks({
  job,
  checks,
  advised,
  onLog,
}: {
  job: Job;
  checks: readonly Check[];
  /** check ids in the order of the advice: habit and advice meet */
  advised: readonly string[];
  onLog: (c: Check) => void;
}) {
  const rank = (look: FirstLook) =>
    Math.min(...look.checks.map((c) => advised.indexOf(c)).map((at) => (at < 0 ? advised.length : at)));
  return (
    <section className="section stack tight">
      <h2>First looks</h2>
      <ul className="lines">
        {builtInCatalog()
          .firstLooks.filter((look) => applies(look.when, factsOf(job)) !== 'no')
          .toSorted((a, b) => rank(a) - rank(b))
          .map((look) => {
            const seen = job.observations.filter(
              (o) => o.check !== undefined && look.checks.includes(o.check),
            );
            const ways = look.checks.flatMap((id) => checks.filter((c) => c.id === id));
            return (
              <li key={look.id}>
                <div>
                  <b>{look.title}</b> <span className="soft">{look.asks}</span>
                  {seen.map((o) => (
                    <div key={o.entry}>
                      {o.title}: <b>{o.outcomes.join(', ')}</b>
                    </div>
                  ))}
                  <div className="row" style={{ marginTop: 6 }}>
                    {ways
                      .filter((c) => !seen.some((o) => o.check === c.id))
                      .map((c) => (
                        <Button key={c.id} onClick={() => onLog(c)}>
                          {c.title}
                        </Button>
                      ))}
                  </div>
                </div>
                {seen.length > 0 ? (
                  <span className="verdict pass">looked</span>
                ) : (
                  <span className="soft">open</span>
                )}
              </li>
            );
          })}
      </ul>
    </section>
  );
}
