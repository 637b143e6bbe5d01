import { type ComponentProps, useState } from 'react';
import { applies, builtInCatalog, type Check, cautionsFor } from '../../catalog/index.js';
import { type From, factsOf, type Job } from '../../job/index.js';
import { write } from '../data/outbox.js';
import { usePrimary } from '../frame/job-frame.js';
import { Sheet, type SheetProps } from '../frame/sheet.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { Caution } from '../parts/caution.js';
import { Dialog } from '../parts/dialog.js';
import { ManyChoices, TextField } from '../parts/field.js';
import { TakePicture } from '../parts/picture.js';

/** What was looked at and what was seen. The standing first looks come first, whatever the complaint. */
export function Findings({ job, gate }: SheetProps) {
  const [find, setFind] = useState('');
  const [logging, setLogging] = useState<Check | 'own'>();
  usePrimary({ label: 'Log something seen', act: () => setLogging('own') });
  const checks = builtInCatalog().checks.filter((c) => applies(c.when, factsOf(job)) !== 'no');
  const seen = new Map(job.observations.map((o) => [o.check, o]));
  const words = find.trim().toLowerCase();
  const found = checks.filter(
    (c) =>
      words !== '' && `${c.title} ${c.outcomes.map((o) => o.words).join(' ')}`.toLowerCase().includes(words),
  );
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={headline(job)}
      say="A neglected engine usually has several faults at once. Go on looking after the first one."
    >
      <FirstLooks job={job} checks={checks} onLog={setLogging} />
      <section className="section stack tight">
        <h2>Other checks</h2>
        <input
          aria-label="Find a check"
          placeholder="find a check: spark, bowl, rebound, leak-down …"
          value={find}
          onChange={(e) => setFind(e.target.value)}
        />
        {words !== '' && found.length === 0 && (
          <p className="empty">No check has these words. Log it as something seen.</p>
        )}
        <ul className="lines">
          {(words === '' ? suggested(job, checks) : found).map((c) => (
            <CheckLine key={c.id} check={c} seen={seen.get(c.id)} onLog={() => setLogging(c)} />
          ))}
        </ul>
      </section>
      <Seen job={job} />
      <LogCheck job={job} check={logging} onClose={() => setLogging(undefined)} />
    </Sheet>
  );
}

function headline(job: Job): string {
  const n = job.observations.length;
  return n === 0 ? 'Nothing is looked at yet' : n === 1 ? 'One thing looked at' : `${n} things looked at`;
}

/** With a complaint in the trade's words, its usual first checks; each only once and only while open. */
function suggested(job: Job, checks: readonly Check[]): readonly Check[] {
  const seen = new Set(job.observations.map((o) => o.check));
  const wanted = builtInCatalog()
    .complaints.filter((c) => job.intake.complaints?.includes(c.id))
    .flatMap((c) => c.firstChecks);
  return [...new Set(wanted)].flatMap((id) => checks.filter((c) => c.id === id && !seen.has(id))).slice(0, 8);
}

function FirstLooks({
  job,
  checks,
  onLog,
}: {
  job: Job;
  checks: readonly Check[];
  onLog: (c: Check) => void;
}) {
  return (
    <section className="stack tight">
      <h2>First looks</h2>
      <ul className="lines">
        {builtInCatalog()
          .firstLooks.filter((look) => applies(look.when, factsOf(job)) !== 'no')
          .map((look) => {
            const seen = job.observations.filter(
              (o) => o.check !== undefined && look.checks.includes(o.check),
            );
            const ways = look.checks.flatMap((id) => checks.filter((c) => c.id === id));
            return (
              <li key={look.id}>
                <div>
                  <b>{look.title}</b> <span className="soft">{look.asks}</span>
                  {seen.map((o) => (
                    <div key={o.entry}>
                      {o.title}: <b>{o.outcomes.join(', ')}</b>
                    </div>
                  ))}
                  <div className="row" style={{ marginTop: 6 }}>
                    {ways
                      .filter((c) => !seen.some((o) => o.check === c.id))
                      .map((c) => (
                        <Button key={c.id} onClick={() => onLog(c)}>
                          {c.title}
                        </Button>
                      ))}
                  </div>
                </div>
                {seen.length > 0 ? (
                  <span className="verdict pass">looked</span>
                ) : (
                  <span className="soft">open</span>
                )}
              </li>
            );
          })}
      </ul>
    </section>
  );
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

/** One check: its cautions and what it would destroy come before its outcomes. */
function LogCheck({
  job,
  check,
  onClose,
}: {
  job: Job;
  check: Check | 'own' | undefined;
  onClose: () => void;
}) {
  return (
    <Dialog
      title={check === 'own' ? 'Something seen' : (check?.title ?? '')}
      open={check !== undefined}
      onClose={onClose}
    >
      {check && (
        <LogForm
          key={check === 'own' ? 'own' : check.id}
          job={job}
          check={check === 'own' ? undefined : check}
          onClose={onClose}
        />
      )}
    </Dialog>
  );
}

function LogForm({ job, check, onClose }: { job: Job; check: Check | undefined; onClose: () => void }) {
  const [title, setTitle] = useState('');
  const [outcomes, setOutcomes] = useState<string[]>([]);
  const [words, setWords] = useState('');
  const [conditions, setConditions] = useState('');
  const [doubtful, setDoubtful] = useState(false);
  const { wrong, act } = useAct();
  const save = (chosen: readonly string[]) =>
    act(async () => {
      const said = check?.title ?? title.trim();
      if (!said) throw new Error('Say what you looked at.');
      await write(job.id, 'observation', {
        check: check?.id,
        title: said,
        outcomes: [...chosen],
        words: words.trim() || undefined,
        conditions: conditions.trim() || undefined,
        doubtful: doubtful || undefined,
      });
      onClose();
    });
  const oneTap = check !== undefined && !check.several;
  return (
    <>
      <Caution lines={before(check)} />
      {!check && (
        <TextField label="What" value={title} onChange={setTitle} placeholder="exhaust side of the shroud" />
      )}
      {check?.note && <p className="soft">{check.note}</p>}
      <TextField
        label="Conditions"
        value={conditions}
        onChange={setConditions}
        placeholder="cold, choke closed, six pulls"
        help="A result without its conditions cannot be compared later."
      />
      <TextField label="In your words" value={words} onChange={setWords} />
      <label className="tick">
        <input type="checkbox" checked={doubtful} onChange={(e) => setDoubtful(e.target.checked)} />
        Doubtful: I would want to see it again
      </label>
      {check?.several && (
        <ManyChoices
          label="What was seen"
          choices={check.outcomes.map((o) => ({ id: o.words, label: o.words }))}
          value={outcomes}
          onChange={setOutcomes}
        />
      )}
      {oneTap && (
        <div className="stack tight">
          <h3>Tap what was seen</h3>
          <div className="row">
            {check.outcomes.map((o) => (
              <Button key={o.id} onClick={() => void save([o.words])}>
                {o.words}
              </Button>
            ))}
          </div>
        </div>
      )}
      <TakePicture
        job={job.id}
        stage="findings"
        when="before"
        caption={check?.title ?? title}
        label="Photograph it"
      />
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Close</Button>
        {!oneTap && (
          <Button look="go" onClick={() => void save(outcomes)}>
            Log it
          </Button>
        )}
      </div>
    </>
  );
}

/** Cautions of the check, and what it spoils for checks not made yet. */
function before(check: Check | undefined): ComponentProps<typeof Caution>['lines'] {
  if (!check) return [];
  const { checks } = builtInCatalog();
  const spoils = checks.filter((c) => check.destroys?.includes(c.id)).map((c) => c.title);
  return [
    ...cautionsFor(builtInCatalog(), { check: check.id }),
    ...(spoils.length > 0 ? [`Look first at what this spoils: ${spoils.join('; ')}.`] : []),
  ];
}
