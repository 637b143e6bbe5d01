import { useState } from 'react';
import { applies, cautionsFor, type RunUpStep } from '../../catalog/index.js';
import { type From, factsOf, type Job } from '../../job/index.js';
import { write } from '../data/outbox.js';
import { useCatalog } from '../data/queries.js';
import { usePrimary } from '../frame/job-frame.js';
import { Sheet, type SheetProps } from '../frame/sheet.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { Caution } from '../parts/caution.js';
import { Dialog } from '../parts/dialog.js';
import { TextField } from '../parts/field.js';
import { readWritten, WrittenField } from '../parts/written.js';
import { grouped } from './grouped.js';

const phaseNames: Readonly<Record<RunUpStep['phase'], string>> = {
  'before-fuel': 'Before fuel',
  'base-settings': 'Base settings',
  'static-governor': 'Governor, standing still',
  'first-start': 'First start',
  'warm-up': 'Warm-up',
  carburetor: 'Carburetor',
  'governed-speed': 'Governed speed',
  hunting: 'If it hunts',
  'load-test': 'Under load',
  'heat-and-leak': 'Heat and leaks',
  'stop-checks': 'Does it stop?',
  'after-heat': 'After the heat',
  'break-in': 'Break-in',
};

/** Oil, fuel, guards, a second way to stop; then the first start, the settings, the load, and proof that it stops. */
export function RunUp({ job, gate }: SheetProps) {
  const catalog = useCatalog();
  const steps = catalog.runUp.filter((s) => applies(s.when, factsOf(job)) !== 'no');
  const [saying, setSaying] = useState<RunUpStep>();
  const next = steps.find((s) => !job.runUp.has(s.id));
  usePrimary(next && { label: 'Next step', act: () => setSaying(next) });
  const stops = [...job.runUp.values()].filter((r) => r.result === 'not-ok');
  const bars = steps.filter((s) => s.barsHandOver && stops.some((r) => r.item === s.id));
  const phases = grouped(steps, (s) => s.phase);
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={
        bars.length > 0
          ? 'Stop. Do not run it'
          : job.runUp.size === 0
            ? 'Prove that it runs right'
            : `${job.runUp.size} of ${steps.length} shown`
      }
      say={next ? `Next: ${next.title}` : 'Every step is done.'}
    >
      {bars.length > 0 && (
        <Caution
          stop
          lines={bars.map(
            (s) => `${s.title}: not in order. Stop the engine, pull the plug lead, put it right first.`,
          )}
        />
      )}
      <Caution lines={cautionsFor(catalog, { stage: 'run-up' })} />
      {[...phases].map(([phase, list]) => (
        <section key={phase} className="section">
          <h2>{phaseNames[phase]}</h2>
          <ul className="lines">
            {list.map((s) => (
              <StepLine key={s.id} step={s} said={job.runUp.get(s.id)} onSay={() => setSaying(s)} />
            ))}
          </ul>
        </section>
      ))}
      <SayDialog job={job} step={saying} onClose={() => setSaying(undefined)} />
    </Sheet>
  );
}

function StepLine({
  step,
  said,
  onSay,
}: {
  step: RunUpStep;
  said: From<'run-up'> | undefined;
  onSay: () => void;
}) {
  return (
    <li>
      <div>
        <b>{step.title}</b>
        {step.barsHandOver && <span className="chip">before hand-over</span>}
        {step.words && <div className="soft">{step.words}</div>}
        {said?.words && <div>{said.words}</div>}
      </div>
      <div className="row">
        {said && <Said said={said} />}
        <Button look={said ? 'quiet' : 'plain'} onClick={onSay}>
          {said ? 'Again' : 'Log it'}
        </Button>
      </div>
    </li>
  );
}

function Said({ said }: { said: From<'run-up'> }) {
  if (said.result === 'reading') return <b>{said.value?.written}</b>;
  if (said.result === 'not-applicable') return <span className="soft">does not apply</span>;
  return (
    <span className={said.result === 'ok' ? 'verdict pass' : 'verdict fail'}>
      {said.result === 'ok' ? 'in order' : 'not in order'}
    </span>
  );
}

function SayDialog({ job, step, onClose }: { job: Job; step: RunUpStep | undefined; onClose: () => void }) {
  return (
    <Dialog title={step?.title ?? ''} open={step !== undefined} onClose={onClose}>
      {step && <SayForm key={step.id} job={job} step={step} onClose={onClose} />}
    </Dialog>
  );
}

function SayForm({ job, step, onClose }: { job: Job; step: RunUpStep; onClose: () => void }) {
  const kind = step.kind ?? 'rotation';
  const [value, setValue] = useState(readWritten('', kind));
  const [words, setWords] = useState('');
  const { wrong, act } = useAct();
  const spec = step.spec ? job.specs.get(step.spec) : undefined;
  const mine = cautionsFor(useCatalog(), { runUp: step.id });
  const say = (result: From<'run-up'>['result']) =>
    act(async () => {
      if (result === 'reading' && !value.value) throw new Error('Write the reading with its unit.');
      await write(job.id, 'run-up', {
        item: step.id,
        title: step.title,
        result,
        ...(value.value && { value: value.value }),
        ...(words.trim() && { words: words.trim() }),
      });
      onClose();
    });
  return (
    <>
      <Caution lines={mine.map((c) => c.words)} />
      {step.words && <p>{step.words}</p>}
      {spec && (
        <p>
          This engine’s sheet:{' '}
          <b>{spec.text ?? [spec.value?.written, spec.upTo?.written].filter(Boolean).join(' to ')}</b>{' '}
          <span className="soft">({[spec.origin.from, spec.origin.detail].filter(Boolean).join(', ')})</span>
        </p>
      )}
      {(step.figures ?? []).map((f) => (
        <p key={`${f.of} ${f.from} ${f.to}`} className="soft">
          Of the class, not of this engine: {[f.from, f.to].filter((n) => n !== undefined).join(' to ')}{' '}
          {f.unit} {f.of} ({f.origin.detail})
        </p>
      ))}
      {step.answer === 'reading' && (
        <WrittenField label="Reading" kind={kind} state={value} onChange={setValue} />
      )}
      <TextField label="Note" value={words} onChange={setWords} />
      <Wrong words={wrong} />
      <div className="row end">
        <Button look="quiet" onClick={() => void say('not-applicable')}>
          Does not apply
        </Button>
        <Button look="danger" onClick={() => void say('not-ok')}>
          Not in order
        </Button>
        {step.answer === 'reading' ? (
          <Button look="go" onClick={() => void say('reading')}>
            Keep the reading
          </Button>
        ) : (
          <Button look="go" onClick={() => void say('ok')}>
            In order
          </Button>
        )}
      </div>
    </>
  );
}
