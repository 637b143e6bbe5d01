import type { Answers } from '../../../job/index.js';

/** The numbers that are on paper before the machine leaves; what nobody took yet says so. */
export function AcceptanceTable({ rows }: { rows: Answers['acceptance'] }) {
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
