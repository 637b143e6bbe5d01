import type { BarredCheck } from '../../../job/index.js';
import { capital, counted } from '../../../phrase/index.js';
import { useAnswers } from '../../data/answers.js';

/** Stands over the findings while nothing may be pulled or run. */
export function Stop() {
  const { stop, stopsFrom } = useAnswers().engine;
  if (stop === undefined) return null;
  const end = stop.indexOf('. First: ');
  return (
    <div className="stop-now" role="alert">
      <b>Stop</b>
      <p>
        <strong>{stop.slice(0, end)}.</strong>{' '}
        {stopsFrom === 'running' ? 'It is not run' : 'Nothing is pulled or run'} before that is put right.
      </p>
      <p>{stop.slice(end + 2)}</p>
    </div>
  );
}

/** Checks that cannot or must not be made now, under their reasons. */
export function NotNow() {
  const { barred } = useAnswers();
  if (barred.length === 0) return null;
  const reasons = new Map<string, BarredCheck[]>();
  for (const one of barred) reasons.set(one.why, [...(reasons.get(one.why) ?? []), one]);
  return (
    <details className="section">
      <summary>Not now: {counted(barred.length, 'check')}</summary>
      <ul className="lines">
        {[...reasons].map(([why, checks]) => (
          <li key={why}>
            <div>
              <b>{capital(why)}</b>
              <div className="soft">{checks.map((c) => c.title).join('; ')}</div>
            </div>
          </li>
        ))}
      </ul>
    </details>
  );
}
