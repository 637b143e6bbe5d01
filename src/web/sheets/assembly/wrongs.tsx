import { listed } from '../../../phrase/index.js';
import { useAnswers } from '../../data/answers.js';

/** Bolts left over and plugs still in, in words. */
export function Wrongs() {
  const { leftOver, tooMany, plugsForgotten } = useAnswers().tally;
  if (leftOver.length + tooMany.length + plugsForgotten.length === 0) return null;
  return (
    <div className="wrong-box" role="alert">
      <ul className="plain stack tight">
        {leftOver.map((u) => (
          <li key={u.label}>
            <b>
              Left over: {u.count} × {u.label}
            </b>
            , from {listed(u.from)}.
          </li>
        ))}
        {tooMany.map((u) => (
          <li key={u.label}>
            <b>
              More went in than came out: {u.count} × {u.label}
            </b>
            , at {listed(u.from)}.
          </li>
        ))}
        {plugsForgotten.map((p) => (
          <li key={p.port}>
            <b>Still plugged: {p.port}</b>, and {p.title} is back on.
          </li>
        ))}
      </ul>
    </div>
  );
}
