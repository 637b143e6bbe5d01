import { useState } from 'react';
import { cautionsFor } from '../../catalog/index.js';
import { type Answers, dueDay, type Gate, type Job, stageNames } from '../../job/index.js';
import { capital, counted, dayWords, saidOnce, shortDays } from '../../phrase/index.js';
import { useAnswers } from '../data/answers.js';
import { bundleUrl, documentUrl, recordUrl } from '../data/api.js';
import { linesIn } from '../form/field.js';
import { FormBox } from '../form/form.js';
import { useForm } from '../form/use-form.js';
import { usePrimary } from '../frame/job-frame.js';
import { Sheet, type SheetProps } from '../frame/sheet.js';
import { Caution } from '../parts/caution.js';
import { Dialog } from '../parts/dialog.js';
import { PictureGrid, TakePicture } from '../parts/picture.js';
import { sideKey, sideToRepeat } from '../parts/sides.js';

/** The owner knows what was found, done, not done, and due next. The record says it in print. */
export function HandOver({ answers, job, gate }: SheetProps) {
  const [handing, setHanding] = useState(false);
  const open = answers.gates.filter((g) => g.stage !== 'hand-over' && g.blocks.length + g.missing.length > 0);
  // once it is handed over, or the run-up has begun, the gate itself names them
  const unshown = gate.blocks.length > 0 ? [] : answers.safetyNotShown;
  const held = !answers.asItIs && open.some((g) => g.blocks.length > 0);
  const barred = gate.blocks.length + unshown.length > 0 || held;
  usePrimary({
    label: job.handOver ? 'Say it anew' : 'Hand over',
    act: () => setHanding(true),
    disabled: barred,
  });
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={headline(answers, barred)}
      say={asItIsWords(answers)}
      rule={released}
    >
      <GoesAsItIs asItIs={answers.asItIs} left={job.handOver !== undefined} />
      <Papers job={job} />
      <PutBackForNow provisional={answers.provisionals} />
      {unshown.length > 0 && (
        <section className="section">
          <h2>Not shown to be safe yet</h2>
          <ul>
            {unshown.map((title) => (
              <li key={title}>{title}</li>
            ))}
          </ul>
          <p className="soft">Each is logged in the run-up. No reason stands in for it.</p>
        </section>
      )}
      {!answers.asItIs && <OpenElsewhere open={open} />}
      {!answers.asItIs && <NotLookedAt items={answers.runUp.items} />}
      <section className="section stack tight">
        <h2>Photographs after the work</h2>
        <PictureGrid job={job.id} photographs={job.photographs.filter((p) => p.when === 'after')} />
        <TakeAfter job={job} />
      </section>
      <DueNext job={job} />
      <HandOverDialog job={job} open={handing} onClose={() => setHanding(false)} />
    </Sheet>
  );
}

function DueNext({ job: { handOver } }: { job: Job }) {
  if (!handOver || handOver.nextDue.length === 0) return null;
  return (
    <section className="section">
      <h2>Due next</h2>
      <ul className="lines">
        {handOver.nextDue.map((n) => (
          <li key={n.what}>
            <span>{n.what}</span>
            <span>
              <b>{n.when}</b>
              <div className="soft">{dayOf(n.when, handOver.at)}</div>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Hours and tanks name no day: those are not in the calendar. */
function dayOf(when: string, from: string): string {
  const due = dueDay(when, from);
  return due ? dayWords(due.day) : 'no day: not in the calendar';
}

function headline({ job, asItIs }: Answers, barred: boolean): string {
  if (job.handOver) return `Handed over to ${job.handOver.receivedBy}`;
  if (barred) return 'Not to be handed over yet';
  return asItIs ? 'To be handed back as it is' : 'Ready to hand over';
}

const released =
  'A machine that cannot be stopped, leaks fuel, has a loose flywheel or lacks a guard is not handed over. If the owner declines such work, write it down with their name.';
function asItIsWords({ job, asItIs }: Answers): string | undefined {
  if (!asItIs) return undefined;
  return job.handOver
    ? 'It went without the work. What can hurt someone was said and signed for.'
    : 'It goes without the work. Nothing is barred; what can hurt someone is said and signed for.';
}

/** It goes without the work: what can hurt someone stands in red, above everything. */
function GoesAsItIs({ asItIs, left }: { asItIs: Answers['asItIs']; left: boolean }) {
  if (!asItIs) return null;
  const { runs, inPieces, unsafe } = asItIs;
  return (
    <section className="section stack tight">
      <h2>{[runs, inPieces].filter(Boolean).join(', ')}</h2>
      {unsafe.length > 0 && (
        <ul className="plain">
          {unsafe.map((words) => (
            <li key={words}>
              <b className="verdict fail">unsafe</b>: {words}
            </li>
          ))}
        </ul>
      )}
      {!left && (
        <p className="soft">
          {unsafe.length > 0
            ? 'Read it to the owner. Each stands under “Declined” when you hand it over, with their name.'
            : 'Nothing unsafe was found; not everything was looked at.'}
        </p>
      )}
    </section>
  );
}

function Papers({ job }: { job: Job }) {
  return (
    <>
      <div className="row">
        <a className="button" href={recordUrl(job.id, 'brief')} target="_blank" rel="noreferrer">
          The record in brief (PDF)
        </a>
        <a className="button" href={recordUrl(job.id, 'full')} target="_blank" rel="noreferrer">
          Every word of it (PDF)
        </a>
        <a className="button" href={bundleUrl(job.id)} download>
          Take the whole job along (ZIP)
        </a>
      </div>
      <details>
        <summary>Other papers</summary>
        <div className="row">
          <a className="button" href={documentUrl(job.id, 'calendar.ics')} download>
            Due dates for a calendar
          </a>
          {(['measurements', 'torques', 'parts'] as const).map((table) => (
            <a key={table} className="button" href={documentUrl(job.id, `tables/${table}.csv`)} download>
              {table} as a table
            </a>
          ))}
        </div>
      </details>
    </>
  );
}

function PutBackForNow({ provisional }: { provisional: Answers['provisionals'] }) {
  if (provisional.length === 0) return null;
  return (
    <section className="section">
      <h2>Put back for now</h2>
      <ul className="lines">
        {provisional.map(({ decision, comesBack }) => (
          <li key={decision.entry}>
            <div>
              {decision.title}
              <div className="soft">
                {decision.reason && `${decision.reason.replace(/\.$/, '')}. `}To be replaced:{' '}
                {shortDays(comesBack)}
              </div>
            </div>
            <span className="verdict cannot-decide">provisional</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function OpenElsewhere({ open }: { open: readonly Gate[] }) {
  if (open.length === 0) return null;
  return (
    <section className="section">
      <h2>Still open on other sheets</h2>
      <ul className="lines">
        {open.map((g) => (
          <li key={g.stage}>
            <div>
              <b>{stageNames[g.stage]}</b>
              {g.blocks.map((b) => (
                <div key={b}>
                  <b className="verdict fail">barred</b>: {b}
                </div>
              ))}
              <div className="soft">
                {saidOnce(g.missing.slice(0, 4)).map((line) => (
                  <div key={line}>{capital(line)}</div>
                ))}
                {g.missing.length > 4 && `and ${g.missing.length - 4} more`}
              </div>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What the run-up did not ask for on this job: the record says so too. */
function NotLookedAt({ items }: { items: Answers['runUp']['items'] }) {
  const open = items.filter(({ state }) => state === 'open');
  if (open.length === 0) return null;
  return (
    <details>
      <summary>Not looked at in the run-up: {counted(open.length, 'point')}</summary>
      <ul>
        {open.map(({ step }) => (
          <li key={step.id}>{step.title}</li>
        ))}
      </ul>
    </details>
  );
}

function HandOverDialog({ job, open, onClose }: { job: Job; open: boolean; onClose: () => void }) {
  return (
    <Dialog title="Hand over" open={open} onClose={onClose}>
      {open && <HandOverForm job={job} onClose={onClose} />}
    </Dialog>
  );
}

/** One line an item, "what: when". */
function dueIn(text: string): { what: string; when: string } {
  const [what = '', ...when] = text.split(':');
  return { what: what.trim(), when: when.join(':').trim() };
}

function HandOverForm({ job, onClose }: { job: Job; onClose: () => void }) {
  const { catalog, dueFromProvisionals, nextDue, asItIs } = useAnswers();
  const before = job.handOver;
  const due = before?.nextDue ?? [...dueFromProvisionals, ...nextDue];
  const form = useForm({
    job: job.id,
    kind: 'hand-over',
    title: 'Hand over',
    before,
    fields: {
      receivedBy: {
        as: 'text',
        label: 'Received by',
        begin: job.intake.owner,
        need: 'Say who received it.',
      },
      told: {
        as: 'long',
        label: 'What they were told',
        hint: 'fresh fuel only; drain it before winter; run it outdoors',
      },
      declined: {
        as: 'lines',
        label: 'Declined by the owner, one a line',
        ...(asItIs &&
          asItIs.unsafe.length > 0 && { begin: asItIs.unsafe.join('\n'), need: 'Say what is unsafe.' }),
      },
      $due: {
        as: 'lines',
        label: 'Due next, one a line',
        begin: due.map((n) => `${n.what}: ${n.when}`).join('\n'),
        help: 'What: when. A date such as 2027-05-01, “yearly” or “every 6 months” goes into the calendar file.',
      },
    },
    also: ({ declined = [] }, { $due }) => ({ declined, nextDue: linesIn(String($due)).map(dueIn) }),
    onDone: onClose,
  });
  return (
    <FormBox
      form={form}
      keep="Handed over"
      leave="Not yet"
      onLeave={onClose}
      barred={form.text('receivedBy') === ''}
      before={<Caution lines={cautionsFor(catalog, { stage: 'hand-over' })} />}
    />
  );
}

/** The sides that were pictured as it came in are pictured as it leaves: each pair stands side by side in the record. */
function TakeAfter({ job }: { job: Job }) {
  const side = sideToRepeat(job.photographs);
  return (
    <TakePicture
      job={job.id}
      stage="hand-over"
      when="after"
      {...(side && { about: sideKey(side), caption: side })}
      label={side ? `Photograph as it leaves: ${side}` : 'Photograph it as it leaves'}
    />
  );
}
