import { useState } from 'react';
import { cautionsFor, type RunUpStep } from '../../../catalog/index.js';
import type { From, Job, RunUpItem } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { useCatalog } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { TextField } from '../../parts/field.js';
import { readWritten, WrittenField, type WrittenState } from '../../parts/written.js';
import { limitWords } from './limit-words.js';

type Result = From<'run-up'>['result'];

/** One step of the run-up: its cautions first, what the sheet says, then what was seen. */
export function SayStep(props: { job: Job; item: RunUpItem | undefined; onClose: () => void }) {
  const { job, item, onClose } = props;
  return (
    <Dialog title={item?.step.title ?? ''} open={item !== undefined} onClose={onClose}>
      {item && <SayForm key={item.step.id} job={job} item={item} onClose={onClose} />}
    </Dialog>
  );
}

function SayForm({ job, item, onClose }: { job: Job; item: RunUpItem; onClose: () => void }) {
  const catalog = useCatalog();
  const { step, limit } = item;
  const kind = step.kind ?? limit?.kind ?? 'rotation';
  const [value, setValue] = useState(readWritten('', kind));
  const [words, setWords] = useState('');
  const { wrong, act } = useAct();
  const say = (result: Result) =>
    act(async () => {
      if (value.wrong) throw new Error(value.wrong);
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
      <Caution lines={cautionsFor(catalog, { runUp: step.id }).map((c) => c.words)} />
      {step.words && <p>{step.words}</p>}
      {limit && (
        <p>
          Must be <b>{limitWords(limit)}</b>
        </p>
      )}
      <SheetLines job={job} step={step} />
      <ClassFigures step={step} />
      {step.answer === 'reading' && (
        <WrittenField label="Reading" kind={kind} state={value} onChange={setValue} />
      )}
      <TextField label="Note" value={words} onChange={setWords} />
      <Wrong words={wrong} />
      <Answers asks={asks(item, value)} say={(result) => void say(result)} />
    </>
  );
}

type Asks = 'done' | 'reading' | 'reading-judged-by-hand';

/** A reading with no limit known to the program is judged by the person who took it. */
function asks({ step, limit }: RunUpItem, value: WrittenState): Asks {
  if (step.answer === 'done') return 'done';
  return limit || !step.barsHandOver || !value.value ? 'reading' : 'reading-judged-by-hand';
}

function Answers({ asks, say }: { asks: Asks; say: (result: Result) => void }) {
  return (
    <div className="row end">
      <Button look="quiet" onClick={() => say('not-applicable')}>
        Does not apply
      </Button>
      <Button look="danger" onClick={() => say('not-ok')}>
        Not in order
      </Button>
      {asks === 'reading' ? (
        <Button look="go" onClick={() => say('reading')}>
          Keep the reading
        </Button>
      ) : (
        <Button look="go" onClick={() => say('ok')}>
          {asks === 'done' ? 'In order' : 'Keep it: in order by the machine’s plate'}
        </Button>
      )}
    </div>
  );
}

/** What this engine's own sheet says for the step, each with where it stands. */
function SheetLines({ job, step }: { job: Job; step: RunUpStep }) {
  const lines = [step.spec, ...(step.alsoSpecs ?? [])].flatMap((id) => {
    const spec = id === undefined ? undefined : job.specs.get(id);
    return spec ? [spec] : [];
  });
  if (lines.length === 0 && step.spec !== undefined)
    return <p className="soft">No line of this engine’s own sheet is confirmed for it yet.</p>;
  return lines.map((spec) => (
    <p key={spec.spec}>
      {spec.label}:{' '}
      <b>{spec.text ?? [spec.value?.written, spec.upTo?.written].filter(Boolean).join(' to ')}</b>{' '}
      <span className="soft">({[spec.origin.from, spec.origin.detail].filter(Boolean).join(', ')})</span>
    </p>
  ));
}

function ClassFigures({ step }: { step: RunUpStep }) {
  return (step.figures ?? []).map((f) => (
    <p key={`${f.of} ${f.from} ${f.to}`} className="soft">
      Of the class, not of this engine: {[f.from, f.to].filter((n) => n !== undefined).join(' to ')} {f.unit}{' '}
      {f.of ?? f.words} ({f.origin.detail})
    </p>
  ));
}
