import { useDeferredValue, useMemo, useState } from 'react';
import { applies, builtInCatalog, byId, type Check } from '../../../catalog/index.js';
import { type From, factsOf, findingsOf, type Job, type JobFindings } from '../../../job/index.js';
import { usePrimary } from '../../frame/job-frame.js';
import { Sheet, type SheetProps } from '../../frame/sheet.js';
import { Button } from '../../parts/act.js';
import { Faults } from './faults.js';
import { FirstLooks } from './first-looks.js';
import { LogCheck } from './log-check.js';
import { NextChecks } from './next-checks.js';
import { SafetyQuestions } from './safety-questions.js';

/**
 * What is wrong, what to check next. Every answer is worked out from the log as it stands; a line logged or struck
 * changes all of it at once.
 */
export function Findings({ job, gate }: SheetProps) {
  const [logging, setLogging] = useState<Check | 'own'>();
  usePrimary({ label: 'Log something seen', act: () => setLogging('own') });
  const catalog = builtInCatalog();
  const checks = catalog.checks.filter((c) => applies(c.when, factsOf(job)) !== 'no');
  // the tap is answered first; the faults follow a moment later
  const settled = useDeferredValue(job);
  const answer = useMemo(() => findingsOf(settled, catalog), [settled, catalog]);
  const logById = (id: string) => setLogging(byId(catalog.checks).get(id));
  const advised = answer.state === 'answered' ? (answer.next?.best.map((n) => n.id) ?? []) : [];
  return (
    <Sheet job={job} gate={gate} headline={headline(job, answer)} say={say(answer)}>
      <div className="findings">
        {answer.state === 'answered' && <Faults job={job} findings={answer.findings} />}
        <div className="stack">
          {answer.state === 'answered' && answer.next && (
            <NextChecks job={job} next={answer.next} enough={answer.enough} onLog={logById} />
          )}
          {answer.state === 'answered' && (
            <SafetyQuestions questions={answer.findings.safety} onLog={logById} />
          )}
        </div>
      </div>
      <FirstLooks job={job} checks={checks} advised={advised} onLog={setLogging} />
      <OtherChecks job={job} checks={checks} onLog={setLogging} />
      <Seen job={job} />
      <LogCheck job={job} check={logging} onClose={() => setLogging(undefined)} />
    </Sheet>
  );
}

function headline(job: Job, answer: JobFindings): string {
  if (answer.state === 'cannot') return 'The log contradicts itself';
  return job.observations.length === 0 ? 'Nothing is looked at yet' : headOf(answer.findings.headline)[0];
}

function say(answer: JobFindings): string {
  if (answer.state === 'cannot') return answer.words;
  const { unexplained, exact } = answer.findings;
  const which = headOf(answer.findings.headline)[1];
  const open = unexplained.map((u) => `${u.what} is explained by none of them`);
  const bounded = exact ? [] : ['So much was seen that each figure is the middle of sure bounds'];
  return [
    which,
    ...open,
    ...bounded,
    'A neglected engine usually has several faults at once: go on looking after the first one.',
  ]
    .filter((sentence) => sentence !== '')
    .join('. ');
}

/** "Two faults explain what you saw: a and b" → the headline, and which ones as a sentence of its own. */
function headOf(headline: string): [string, string] {
  const at = headline.indexOf(': ');
  if (at < 0) return [headline, ''];
  const which = headline.slice(at + 2);
  return [headline.slice(0, at), which.charAt(0).toUpperCase() + which.slice(1)];
}

/** All checks by their words; without words, the usual first checks of the complaint. */
function OtherChecks({
  job,
  checks,
  onLog,
}: {
  job: Job;
  checks: readonly Check[];
  onLog: (c: Check) => void;
}) {
  const [find, setFind] = useState('');
  const seen = new Map(job.observations.map((o) => [o.check, o]));
  const words = find.trim().toLowerCase();
  const textOf = (c: Check) => `${c.title} ${c.outcomes.map((o) => o.words).join(' ')}`.toLowerCase();
  const shown = words === '' ? suggested(job, checks) : checks.filter((c) => textOf(c).includes(words));
  return (
    <section className="section stack tight">
      <h2>Other checks</h2>
      <input
        aria-label="Find a check"
        placeholder="find a check: spark, bowl, rebound, leak-down …"
        value={find}
        onChange={(e) => setFind(e.target.value)}
      />
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

/** With a complaint in the trade's words, its usual first checks; each only once and only while open. */
function suggested(job: Job, checks: readonly Check[]): readonly Check[] {
  const seen = new Set(job.observations.map((o) => o.check));
  const wanted = builtInCatalog()
    .complaints.filter((c) => job.intake.complaints?.includes(c.id))
    .flatMap((c) => c.firstChecks);
  return [...new Set(wanted)].flatMap((id) => checks.filter((c) => c.id === id && !seen.has(id))).slice(0, 8);
}

function CheckLine({
  check,
  seen,
  onLog,
}: {
  check: Check;
  seen: From<'observation'> | undefined;
  onLog: () => void;
}) {
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

function Seen({ job }: { job: Job }) {
  if (job.observations.length === 0) return null;
  return (
    <section className="section">
      <h2>Evidence so far</h2>
      <ul className="lines">
        {job.observations.toReversed().map((o) => (
          <li key={o.entry}>
            <div>
              {o.title}
              {o.outcomes.length > 0 && (
                <>
                  : <b>{o.outcomes.join(', ')}</b>
                </>
              )}
              <div className="soft">{[o.words, o.conditions].filter(Boolean).join(' · ')}</div>
            </div>
            {o.doubtful && <span className="verdict cannot-decide">doubtful</span>}
          </li>
        ))}
      </ul>
    </section>
  );
}
