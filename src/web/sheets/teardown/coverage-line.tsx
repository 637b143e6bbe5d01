import { Link } from 'wouter';
import type { Coverage } from '../../../job/index.js';

/** How many of the views worth a picture have one, and which are missing or gone. */
export function CoverageLine({ job, coverage }: { job: string; coverage: Coverage }) {
  const { wanted, present, missing, figure } = coverage;
  if (wanted.length === 0) return null;
  const gone = wanted.filter((v) => v.gone);
  return (
    <section className="section stack tight" aria-label="Pictures wanted">
      <div className="row apart">
        <h2>Pictures</h2>
        <b>{figure}</b>
      </div>
      <div className="coverage" aria-hidden="true">
        <i style={{ width: `${(100 * present) / wanted.length}%` }} />
        <u style={{ width: `${(100 * gone.length) / wanted.length}%` }} />
      </div>
      {missing.length > 0 && (
        <details>
          <summary>{missing.length} can still be taken</summary>
          <Views views={missing} />
        </details>
      )}
      {gone.length > 0 && (
        <details>
          <summary>{gone.length} were not taken before it came off</summary>
          <div className="stack tight">
            <Views views={gone} />
            <div className="row">
              <Link className="button" href={`/job/${job}/film/${coverage.stage}`}>
                Look for them on a film
              </Link>
            </div>
          </div>
        </details>
      )}
    </section>
  );
}

function Views({ views }: { views: Coverage['wanted'] }) {
  return (
    <ul className="lines">
      {views.map((v) => (
        <li key={v.key}>
          <div>
            {v.view}
            <div className="soft">{[v.title, v.reason].filter(Boolean).join(' · ')}</div>
          </div>
        </li>
      ))}
    </ul>
  );
}
