import { useMemo, useRef, useState } from 'react';
import type { Findings } from '../../../diagnose/index.js';
import type { Job } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { Choices, TextField } from '../../parts/field.js';

type Fault = Findings['faults'][number];

const shownAtFirst = 7;
const worthShowing = 0.02;
const percent = (p: number) => (p > 0.995 ? '> 99 %' : p < 0.005 ? '< 1 %' : `${Math.round(100 * p)} %`);

/** Every fault with its bar: how likely now, the tick how likely before anything was seen, and what speaks for it. */
export function Faults({ job, findings }: { job: Job; findings: Findings }) {
  const [all, setAll] = useState(false);
  const [deciding, setDeciding] = useState<Fault>();
  const before = useBefore(findings);
  const likely = findings.faults.filter((f) => f.posterior >= worthShowing || f.known !== undefined);
  const shown = all ? likely : likely.slice(0, shownAtFirst);
  return (
    <section className="stack tight" aria-label="Faults">
      <h2>Faults, most likely first</h2>
      <ul className="plain">
        {shown.map((f) => (
          <FaultLine key={f.id} fault={f} was={before.get(f.id)} onDecide={() => setDeciding(f)} />
        ))}
      </ul>
      {likely.length > shownAtFirst && (
        <Button look="quiet" onClick={() => setAll(!all)}>
          {all ? 'Only the likeliest' : `${likely.length - shownAtFirst} more`}
        </Button>
      )}
      <DecideFault job={job} fault={deciding} onClose={() => setDeciding(undefined)} />
    </section>
  );
}

/**
 * What each fault stood at before the last change, so that the screen says what moved. The answer is worked out anew
 * also when nothing changed (a line was saved): then the figures are the same and the comparison stands.
 */
function useBefore(findings: Findings): ReadonlyMap<string, number> {
  const figures = useMemo(() => new Map(findings.faults.map((f) => [f.id, f.posterior])), [findings]);
  const seen = useRef({ now: figures, before: new Map<string, number>() });
  const same =
    figures.size === seen.current.now.size && [...figures].every(([id, p]) => seen.current.now.get(id) === p);
  if (!same) seen.current = { now: figures, before: seen.current.now };
  return seen.current.before;
}

function FaultLine({
  fault: f,
  was,
  onDecide,
}: {
  fault: Fault;
  was: number | undefined;
  onDecide: () => void;
}) {
  const moved = was !== undefined && Math.abs(was - f.posterior) >= 0.03;
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
        {moved && (
          <span className="chip moved">
            was {percent(was)}, {f.posterior > was ? 'up' : 'down'}
          </span>
        )}
        {f.known && <span className="chip">{f.known === 'confirmed' ? 'confirmed' : 'ruled out'}</span>}
        {f.repaired && <span className="chip">repaired</span>}
        {f.safety === 3 && <span className="chip">dangerous</span>}
        {f.evidence.slice(0, 4).map((e) => (
          <span key={e.what} className="chip">
            {e.says === 'for' ? '▲' : '▽'} {e.what}
          </span>
        ))}
        <button
          type="button"
          className="button quiet"
          onClick={onDecide}
          aria-label={`Say what it is: ${f.name}`}
        >
          Say what it is
        </button>
      </div>
    </li>
  );
}

const choices = [
  { id: 'repair', label: 'It is there: repair it' },
  { id: 'repaired', label: 'Repaired' },
  { id: 'excluded', label: 'Seen sound' },
  { id: 'declined', label: 'The owner declines' },
] as const;
type Choice = (typeof choices)[number]['id'];

/** Seen with the eyes: a fault confirmed, ruled out, repaired or declined counts as such from here on. */
function DecideFault({ job, fault, onClose }: { job: Job; fault: Fault | undefined; onClose: () => void }) {
  const [choice, setChoice] = useState<Choice>();
  const [reason, setReason] = useState('');
  const { wrong, act } = useAct();
  const save = () =>
    act(async () => {
      if (!fault || !choice) throw new Error('Choose one.');
      const title = `${fault.name}: ${choices.find((c) => c.id === choice)!.label.toLowerCase()}`;
      await write(job.id, 'decision', {
        about: 'fault',
        which: fault.id,
        title,
        choice,
        reason: reason.trim(),
      });
      setReason('');
      onClose();
    });
  return (
    <Dialog title={fault?.name ?? ''} open={fault !== undefined} onClose={onClose}>
      <p>{fault?.sentence}</p>
      <Choices label="What it is" choices={choices} value={choice} onChange={setChoice} />
      <TextField label="How it was seen" value={reason} onChange={setReason} />
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Leave it open</Button>
        <Button look="go" disabled={!choice} onClick={() => void save()}>
          Write it down
        </Button>
      </div>
    </Dialog>
  );
}
