import { acceptanceOf, type Job } from '../../../job/index.js';
import { useCatalog } from '../../data/queries.js';

/** The numbers that are on paper before the machine leaves; what nobody took yet says so. */
export function AcceptanceTable({ job }: { job: Job }) {
  const catalog = useCatalog();
  const rows = acceptanceOf(job, catalog);
  const taken = rows.filter(({ said }) => said).length;
  return (
    <details className="section phase" open={taken > 0}>
      <summary>
        <h2>Numbers it leaves with</h2>
        <span className="soft">
          {taken} of {rows.length} taken
        </span>
      </summary>
      <ul className="lines">
        {rows.map(({ acceptance, said }) => (
          <li key={acceptance.id}>
            <div>
              {acceptance.title}
              {said && <div className="soft">{said.from}</div>}
            </div>
            {said ? <b>{said.words}</b> : <span className="soft">not taken yet</span>}
          </li>
        ))}
      </ul>
    </details>
  );
}
