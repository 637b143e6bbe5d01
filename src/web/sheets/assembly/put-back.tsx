import { useState } from 'react';
import { type Fastener, type From, fastenerLabel, type Job } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { useCatalog } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { TextField, Ticks } from '../../parts/field.js';
import { componentFor } from '../components.js';

/** One piece goes back: its fasteners counted in, its ports opened again, its checks read before it closes. */
export function PutBack({
  job,
  step,
  onClose,
}: {
  job: Job;
  step: From<'step'> | undefined;
  onClose: () => void;
}) {
  return (
    <Dialog title={step ? `Put back: ${step.title}` : ''} open={step !== undefined} onClose={onClose}>
      {step && <Form key={step.entry} job={job} step={step} onClose={onClose} />}
    </Dialog>
  );
}

function Form({ job, step, onClose }: { job: Job; step: From<'step'>; onClose: () => void }) {
  const catalog = useCatalog();
  const component = componentFor(catalog, job, step.component);
  const out = step.fasteners ?? [];
  const [counts, setCounts] = useState(out.map((f) => String(f.count)));
  const [opened, setOpened] = useState<readonly string[]>([]);
  const [checked, setChecked] = useState<readonly string[]>([]);
  const [words, setWords] = useState('');
  const { wrong, act } = useAct();
  const checks = component?.reassemblyChecks.map((c) => c.words) ?? [];
  const lookAlikes = catalog.lookAlikes.filter((l) => component?.lookAlikes?.includes(l.id));

  const save = async () => {
    const fasteners: Fastener[] = out.flatMap((f, i) => {
      const count = Number(counts[i]);
      return Number.isInteger(count) && count > 0 ? [{ ...f, count }] : [];
    });
    const done = await act(() =>
      write(job.id, 'step', {
        step: `${step.step}-back`.slice(0, 80),
        stage: 'assembly',
        title: `${step.title}: back on`,
        state: 'done',
        putsBack: step.step,
        component: step.component,
        fasteners,
        unplugged: [...opened],
        words:
          [checked.length > 0 && `checked: ${checked.join('; ')}`, words.trim()].filter(Boolean).join('. ') ||
          undefined,
      }),
    );
    if (done) onClose();
  };

  return (
    <>
      <Caution lines={lookAlikes.map((l) => `${l.name}: ${l.tell}`)} />
      {component && component.oneTimeParts.length > 0 && <p>Renew: {component.oneTimeParts.join(', ')}.</p>}
      {checks.length > 0 && (
        <Ticks label="Check before it closes" items={checks} value={checked} onChange={setChecked} />
      )}
      {out.map((f, i) => (
        <TextField
          key={fastenerLabel(f)}
          label={`${fastenerLabel(f)}: went back in`}
          value={counts[i] ?? ''}
          inputMode="numeric"
          help={`${f.count} came out`}
          onChange={(v) => setCounts(counts.map((c, j) => (j === i ? v : c)))}
        />
      ))}
      {(step.plugged ?? []).length > 0 && (
        <Ticks label="Opened again" items={step.plugged ?? []} value={opened} onChange={setOpened} />
      )}
      <TextField
        label="Note"
        value={words}
        onChange={setWords}
        placeholder="sealant, lubricant, which way round"
      />
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Not yet</Button>
        <Button look="go" onClick={() => void save()}>
          It is back on
        </Button>
      </div>
    </>
  );
}
