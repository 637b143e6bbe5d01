import type { Findings } from '../../../diagnose/index.js';
import type { Job } from '../../../job/index.js';
import { capital, listed, percent, withinSentence } from '../../../phrase/index.js';
import { AllAtOnce } from './all-at-once.js';

type Joint = Findings['explanations'][number];

/** The likeliest sets of faults that are there at the same time, and what none of them explains. */
export function Together({ job, findings }: { job: Job; findings: Findings }) {
  const { explanations, unexplained } = findings;
  const [first, ...others] = explanations.filter((s) => s.faults.length > 0 || explanations.length > 1);
  if (!first && unexplained.length === 0) return null;
  return (
    <section className="stack tight" aria-label="Taken together">
      {first && (
        <>
          <h2>Taken together</h2>
          <p>
            {capital(sentence(first))} <span className="soft">({percent(first.probability)})</span>
          </p>
          <AllAtOnce job={job} together={first.faults} faults={findings.faults} />
          {others.length > 0 && (
            <details>
              <summary>Or it fits together otherwise</summary>
              <ol className="together">
                {others.map((s) => (
                  <li key={s.faults.map((f) => f.id).join()}>
                    <span>{capital(sentence(s))}</span>
                    <span className="figures">{percent(s.probability)}</span>
                  </li>
                ))}
              </ol>
            </details>
          )}
        </>
      )}
      {unexplained.map((u) => (
        <p className="care" key={u.what}>
          ! Still unexplained: {u.what}. Read it again, or look for something that is not on the list.
        </p>
      ))}
    </section>
  );
}

const mostNames = 5;

/** "stale fuel, and with it a stuck valve" — several faults at once, as one sentence. */
function sentence({ faults }: Joint): string {
  if (faults.length === 0) return 'None of the faults in question.';
  const names = faults.slice(0, mostNames).map((f) => withinSentence(f.name));
  const more = faults.length > mostNames ? [`${faults.length - mostNames} more`] : [];
  const said = listed([...names, ...more]);
  return faults.length === 1 ? `${said}, and no other that matters.` : `${said}: all of them at once.`;
}
