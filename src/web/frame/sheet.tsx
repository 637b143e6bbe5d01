import { type ReactNode, useState } from 'react';
import { useLocation } from 'wouter';
import { type Answers, type Gate, type Job, type Stage, stageNames, stages } from '../../job/index.js';
import { write } from '../data/outbox.js';
import { FormBox } from '../form/form.js';
import { useForm } from '../form/use-form.js';
import { Button, useAct } from '../parts/act.js';
import { Dialog } from '../parts/dialog.js';
import { TalkOnSheet } from '../talk/talk.js';
import { StillThere, WidePrimary } from './job-frame.js';

export interface SheetProps {
  readonly answers: Answers;
  readonly job: Job;
  readonly gate: Gate;
}

interface SheetWords {
  readonly headline: string;
  readonly say?: ReactNode;
  /** what is minded while one works here; nobody does once the machine is handed over */
  readonly rule?: string;
  readonly children: ReactNode;
}

/** A stage's sheet: what it says in a headline and a sentence, its blocks, and at its end the gate to the next stage. */
export function Sheet(props: Omit<SheetProps, 'answers'> & SheetWords) {
  const say = props.say ?? (props.job.handOver ? undefined : props.rule);
  return (
    <div className="stack">
      <header className="sheet-head">
        <h1>{props.headline}</h1>
        <WidePrimary />
        {say && <p className="say">{say}</p>}
      </header>
      <StillThere />
      {props.children}
      <TalkOnSheet job={props.job} stage={props.gate.stage} />
      <GateBox job={props.job} gate={props.gate} />
    </div>
  );
}

/** What must be true before the next stage, in words. */
function GateBox({ job, gate }: Omit<SheetProps, 'answers'>) {
  const [, go] = useLocation();
  const [asking, setAsking] = useState(false);
  const next = stages[stages.indexOf(gate.stage) + 1];
  const open = [...gate.blocks, ...gate.missing];
  const [shown, rest] = openLines(gate.missing);
  return (
    <section
      className={gate.state === 'blocked' ? 'gate blocked' : 'gate'}
      aria-label="Before the next stage"
    >
      {open.length === 0 ? (
        <p>{closedWords(gate)}</p>
      ) : (
        <>
          <h3>{gate.state === 'blocked' ? 'Barred until this is shown' : 'Still open here'}</h3>
          <ul>
            {gate.blocks.map((b) => (
              <li key={b} className="block">
                {b}
              </li>
            ))}
            {shown.map((m) => (
              <li key={m}>{m}</li>
            ))}
          </ul>
          {rest.length > 0 && (
            <details>
              <summary>and {rest.length} more</summary>
              <ul>
                {rest.map((m) => (
                  <li key={m}>{m}</li>
                ))}
              </ul>
            </details>
          )}
        </>
      )}
      <div className="row" style={{ marginTop: 10 }}>
        {next && (
          <Button
            look={open.length === 0 && gate.state !== 'untouched' ? 'go' : 'plain'}
            onClick={() => go(`/job/${job.id}/${next}`)}
          >
            On to {stageNames[next]}
          </Button>
        )}
        {gate.stage !== 'hand-over' && gate.stage !== 'intake' && open.length > 0 && (
          <Button look="quiet" onClick={() => setAsking(true)}>
            Not needed on this machine
          </Button>
        )}
        {gate.state === 'not-needed' && <TakeUpAgain job={job} stage={gate.stage} />}
      </div>
      <NotNeeded job={job} stage={gate.stage} open={asking} onClose={() => setAsking(false)} />
    </section>
  );
}

const readAtOnce = 8;

/** A long list is cut, but never for the sake of one or two lines. */
function openLines(missing: readonly string[]): [readonly string[], readonly string[]] {
  const cut = missing.length > readAtOnce + 2 ? readAtOnce : missing.length;
  return [missing.slice(0, cut), missing.slice(cut)];
}

function closedWords(gate: Gate): string {
  if (gate.state === 'not-needed') return `Not needed: ${gate.summary}`;
  return gate.state === 'untouched' ? 'Nothing is logged here yet.' : 'Nothing is open here.';
}

function TakeUpAgain({ job, stage }: { job: Job; stage: Stage }) {
  const { act } = useAct();
  return (
    <Button
      look="quiet"
      onClick={() => void act(() => write(job.id, 'stage', { stage, state: 'reopened', reason: '' }))}
    >
      Take it up again
    </Button>
  );
}

interface Waived {
  readonly job: Job;
  readonly stage: Stage;
  readonly onClose: () => void;
}

function NotNeeded({ job, stage, open, onClose }: Waived & { open: boolean }) {
  return (
    <Dialog title={`${stageNames[stage]} not needed`} open={open} onClose={onClose}>
      <NotNeededForm job={job} stage={stage} onClose={onClose} />
    </Dialog>
  );
}

function NotNeededForm({ job, stage, onClose }: Waived) {
  const form = useForm({
    job: job.id,
    kind: 'stage',
    handle: stage,
    title: `${stageNames[stage]} not needed`,
    fields: {
      reason: {
        as: 'text',
        label: 'Why',
        hint: 'nothing came apart, no parts used …',
        need: 'Say why it is not needed.',
      },
    },
    also: { stage, state: 'not-needed' },
    onDone: onClose,
  });
  return <FormBox form={form} keep="Not needed" leave="Leave it open" onLeave={onClose} />;
}
