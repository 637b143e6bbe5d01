import { useState } from 'react';
import type { Check } from '../../../catalog/index.js';
import { type From, type Job, seenWords } from '../../../job/index.js';
import { useAnswers } from '../../data/answers.js';
import { Button } from '../../parts/act.js';
import { Meant } from './meant.js';

/** All checks by their words; without words, the usual first checks of the complaint. */
export function OtherChecks(props: { job: Job; checks: readonly Check[]; onLog: (c: Check) => void }) {
  const { job, checks, onLog } = props;
  const { catalog, barred } = useAnswers();
  const [find, setFind] = useState('');
  const seen = new Map(job.observations.map((o) => [o.check, o]));
  const words = find.trim().toLowerCase();
  const textOf = (c: Check) => `${c.title} ${c.outcomes.map((o) => o.words).join(' ')}`.toLowerCase();
  const usual = catalog.complaints
    .filter((c) => job.intake.complaints?.includes(c.id))
    .flatMap((c) => c.firstChecks);
  const shown =
    words === ''
      ? suggested(job.handOver ? [] : usual, checks, seen, new Set(barred.map((b) => b.id)))
      : checks.filter((c) => textOf(c).includes(words));
  return (
    <section className="section stack tight">
      <h2>Other checks</h2>
      <input
        type="search"
        aria-label="Find a check"
        placeholder="say it your way: cleaner drips with gas, no spark …"
        value={find}
        onChange={(e) => setFind(e.target.value)}
      />
      <Meant job={job} words={words} onTaken={() => setFind('')} />
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

/** Each only once, only while open, and nothing that is not to be done now. */
function suggested(
  usual: readonly string[],
  checks: readonly Check[],
  seen: ReadonlyMap<string | undefined, unknown>,
  barred: ReadonlySet<string>,
): readonly Check[] {
  return [...new Set(usual)]
    .flatMap((id) => checks.filter((c) => c.id === id && !seen.has(id) && !barred.has(id)))
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
            seen: <b>{seenWords(seen) || seen.words}</b>
          </div>
        )}
      </div>
      <Button onClick={onLog}>{seen ? 'Again' : 'Log it'}</Button>
    </li>
  );
}
