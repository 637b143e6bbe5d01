import { useState } from 'react';
import { byId, type Catalog } from '../../../catalog/index.js';
import type { Findings } from '../../../diagnose/index.js';
import { type Job, type LastMove, type OwnSay, timesWords } from '../../../job/index.js';
import { percent } from '../../../phrase/index.js';
import { useCatalog } from '../../data/answers.js';
import { Asked, FormBox } from '../../form/form.js';
import { useForm } from '../../form/use-form.js';
import { Button } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { shortEvidence } from './words.js';

type Fault = Findings['faults'][number];

const shownAtFirst = 7;
const worthShowing = 0.02;

interface FaultsProps {
  readonly job: Job;
  readonly findings: Findings;
  readonly move: LastMove | undefined;
  readonly own: OwnSay | undefined;
  readonly onLog: (check: string) => void;
}

/** Every fault with its bar: how likely now, the tick how likely before anything was seen, and what speaks for it. */
export function Faults(props: FaultsProps) {
  const { job, findings, own } = props;
  const [all, setAll] = useState(false);
  const [deciding, setDeciding] = useState<Fault>();
  const likely = findings.faults.filter(
    (f) => f.posterior >= worthShowing || f.known !== undefined || f.repaired,
  );
  const shown = all ? likely : likely.slice(0, shownAtFirst);
  const decided = all ? [] : likely.slice(shownAtFirst).filter((f) => f.repaired);
  return (
    <section className="stack tight" aria-label="Faults">
      <h2>Faults, most likely first</h2>
      <ul className="plain">
        {[...shown, ...decided].map((f) => (
          <FaultLine key={f.id} {...props} fault={f} onDecide={() => setDeciding(f)} />
        ))}
      </ul>
      {likely.length > shownAtFirst && (
        <Button look="quiet" onClick={() => setAll(!all)}>
          {all ? 'Only the likeliest' : `${likely.length - shownAtFirst} more`}
        </Button>
      )}
      <DecideFault job={job} fault={deciding} own={own} onClose={() => setDeciding(undefined)} />
    </section>
  );
}

const chipsShown = 4;

function FaultLine({
  fault: f,
  job,
  move,
  onLog,
  onDecide,
}: FaultsProps & { fault: Fault; onDecide: () => void }) {
  const catalog = useCatalog();
  const was = move?.faults.find((m) => m.id === f.id);
  const again = f.repaired && f.known === undefined ? showedItself(catalog, job, f.id) : undefined;
  return (
    <li className="fault">
      <b>{f.name}</b>
      <span className="likely">{percent(f.posterior)}</span>
      <div
        className="bar"
        role="img"
        aria-label={`${percent(f.posterior)} likely; ${percent(f.prior)} in machines like this before anything was seen`}
      >
        <i style={{ width: `${100 * f.posterior}%` }} />
        <u style={{ left: `${100 * f.prior}%` }} />
      </div>
      <div className="why">
        {was && (
          <span className="chip moved">
            was {percent(was.from)}, {was.to > was.from ? 'up' : 'down'}
          </span>
        )}
        {f.known && <span className="chip">{f.known === 'confirmed' ? 'confirmed' : 'ruled out'}</span>}
        {f.repaired && <span className="chip">✓ repaired; this is how likely it is still there</span>}
        {f.safety === 3 && <span className="chip">! dangerous</span>}
        {f.evidence.slice(0, chipsShown).map((e) => (
          <span key={e.what} className="chip">
            {e.says === 'for' ? '▲' : '▽'} {shortEvidence(catalog, e)}
          </span>
        ))}
        {again && (
          <Button look="quiet" onClick={() => onLog(again.id)}>
            Look again: {again.title}
          </Button>
        )}
        <Button look="quiet" className="decide" onClick={onDecide} aria-label={`Say what it is: ${f.name}`}>
          Say what it is
        </Button>
      </div>
    </li>
  );
}

/** The check that showed a fault before its repair, to be made again after it. */
function showedItself({ checks }: Catalog, job: Job, fault: string) {
  const known = byId(checks);
  const shows = job.observations.flatMap(({ check: id, outcomes }) => {
    const check = known.get(id ?? '');
    const seen = check?.outcomes.filter((o) => outcomes.includes(o.words)).map((o) => o.id) ?? [];
    const linked = check?.links.some((l) => l.fault === fault && l.outcomes.some((o) => seen.includes(o)));
    return check && linked ? [check] : [];
  });
  // the plain check, rather than one that leaves the suspect out
  return shows.findLast((c) => !c.differentialOf) ?? shows.at(-1);
}

const choices = [
  { id: 'repair', label: 'It is there: repair it' },
  { id: 'repaired', label: 'Repaired' },
  { id: 'excluded', label: 'Seen sound' },
  { id: 'declined', label: 'The owner declines' },
] as const;
/** After a repair it is another question: did it hold? */
const choicesAfter = [
  { id: 'excluded', label: 'Seen sound: the repair holds' },
  { id: 'repair-failed', label: 'The repair failed: it is there again' },
  { id: 'repaired', label: 'Repaired once more' },
] as const;
type Choice = (typeof choices)[number]['id'] | (typeof choicesAfter)[number]['id'];
interface DecideProps {
  readonly job: Job;
  readonly fault: Fault | undefined;
  readonly own: OwnSay | undefined;
  readonly onClose: () => void;
}

/** Seen with the eyes: a fault confirmed, ruled out, repaired or declined counts as such from here on. */
function DecideFault({ job, fault, own, onClose }: DecideProps) {
  return (
    <Dialog title={fault?.name ?? ''} open={fault !== undefined} onClose={onClose}>
      {fault && <DecideForm job={job} fault={fault} own={own} onClose={onClose} />}
    </Dialog>
  );
}

function DecideForm({ job, fault, own, onClose }: DecideProps & { fault: Fault }) {
  const form = useForm({
    job: job.id,
    kind: 'decision',
    handle: `fault ${fault.id}`,
    title: fault.name,
    fields: { reason: { as: 'text', label: 'How it was seen, if there is more to say' } },
    also: ({ reason = '' }) => ({ about: 'fault', which: fault.id, title: fault.name, reason }),
    onDone: onClose,
  });
  const say = ({ id, label }: { id: Choice; label: string }) =>
    form.keep({ also: { choice: id, title: `${fault.name}: ${label.toLowerCase()}` } });
  return (
    <FormBox
      form={form}
      leave="Leave it open"
      onLeave={onClose}
      before={
        <>
          <p>{fault.sentence}</p>
          <WhatSpeaks fault={fault} own={own} />
        </>
      }
    >
      <fieldset className="choices">
        <legend className="hidden">What it is</legend>
        {(fault.repaired ? choicesAfter : choices).map((choice) => (
          <Button key={choice.id} disabled={form.busy} onClick={() => void say(choice)}>
            {choice.label}
          </Button>
        ))}
      </fieldset>
      <Asked form={form} />
    </FormBox>
  );
}

/** Each piece of evidence with its weight, and where the figure starts from. */
function WhatSpeaks({ fault: f, own }: { fault: Fault; own: OwnSay | undefined }) {
  const { repair } = byId(useCatalog().faults).get(f.id) ?? {};
  const count = own?.counts.get(f.id);
  return (
    <details>
      <summary>What speaks for it and against it</summary>
      <ul className="lines">
        {f.evidence.map((e) => (
          <li key={e.what}>
            <span>
              {e.says === 'for' ? '▲' : '▽'} {e.what}
            </span>
            <b>{timesWords(2 ** e.weight)}</b>
          </li>
        ))}
        <li>
          <span>
            Before anything was seen, in machines like this
            {count && `; found in ${count.found} of ${count.of} of your own jobs`}
          </span>
          <b>{percent(f.prior)}</b>
        </li>
      </ul>
      {repair && <p className="soft">Usual repair: {repair}.</p>}
    </details>
  );
}
