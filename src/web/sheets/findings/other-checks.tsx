import { useState } from 'react';
import type { Check } from '../../../catalog/index.js';
import type { From, Job } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { Button } from '../../parts/act.js';

/** All checks by their words; without words, the usual first checks of the complaint. */
export function OtherChecks(props: { job: Job; checks: readonly Check[]; onLog: (c: Check) => void }) {
  const { job, checks, onLog } = props;
  const catalog = useCatalog();
  const [find, setFind] = useState('');
  const seen = new Map(job.observations.map((o) => [o.check, o]));
  const words = find.trim().toLowerCase();
  const textOf = (c: Check) => `${c.title} ${c.outcomes.map((o) => o.words).join(' ')}`.toLowerCase();
  const usual = catalog.complaints
    .filter((c) => job.intake.complaints?.includes(c.id))
    .flatMap((c) => c.firstChecks);
  const shown =
    words === '' ? suggested(usual, checks, seen) : checks.filter((c) => textOf(c).includes(words));
  return (
    <section className="section stack tight">
      <h2>Other checks</h2>
      <input
        aria-label="Find a check"
        placeholder="find a check: spark, bowl, rebound, leak-down …"
        value={find}
        onChange={(e) => setFind(e.target.value)}
      />
      {words === '' && shown.length > 0 && <p className="soft">Usual first checks for this complaint:</p>}
      {words !== '' && shown.length === 0 && (
        <p className="empty">No check has these words. Log it as something seen.</p>
      )}
      <ul className="lines">
        {shown.map((c) => (
          <CheckLine key={c.id} check={c} seen={seen.get(c.id)} onLog={() => onLog(c)} />
        ))}
      </ul>
    </section>
  );
}

const mostSuggested = 6;

/** Each only once and only while open. */
function suggested(
  usual: readonly string[],
  checks: readonly Check[],
  seen: ReadonlyMap<string | undefined, unknown>,
): readonly Check[] {
  return [...new Set(usual)]
    .flatMap((id) => checks.filter((c) => c.id === id && !seen.has(id)))
    .slice(0, mostSuggested);
}

function CheckLine(props: { check: Check; seen: From<'observation'> | undefined; onLog: () => void }) {
  const { check, seen, onLog } = props;
  return (
    <li>
      <div>
        <b>{check.title}</b>{' '}
        <span className="soft">
          {check.minutes} min{check.instruments.length > 0 && ` · ${check.instruments.join(', ')}`}
        </span>
        {seen && (
          <div>
            seen: <b>{seen.outcomes.join(', ')}</b>
          </div>
        )}
      </div>
      <Button onClick={onLog}>{seen ? 'Again' : 'Log it'}</Button>
    </li>
  );
}
