import { useAnswers } from '../../../data/answers.js';

/** Each thing that the recordings tell, before the work and after it. */
export function HeardTable() {
  const { heard: rows } = useAnswers();
  if (rows.length === 0) return null;
  return (
    <table className="heard">
      <thead>
        <tr>
          <th scope="col">Heard</th>
          <th scope="col">Before the work</th>
          <th scope="col">After it</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ what, before, after }) => (
          <tr key={what}>
            <th scope="row">{what}</th>
            <td>{before ?? '–'}</td>
            <td>
              <b>{after ?? '–'}</b>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
