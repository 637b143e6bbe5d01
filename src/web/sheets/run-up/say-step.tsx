import { cautionsFor, type RunUpStep } from '../../../catalog/index.js';
import { droopBetween, type From, type Job, type RunUpItem, topSpeedSaid } from '../../../job/index.js';
import { joined } from '../../../phrase/index.js';
import type { Kind } from '../../../quantity/index.js';
import { useAnswers, useCatalog } from '../../data/answers.js';
import { FieldError } from '../../form/field.js';
import { Asked, FormFrame, Resumed } from '../../form/form.js';
import { useForm } from '../../form/use-form.js';
import { Button, Wrong } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { limitWords } from './limit-words.js';

type Result = From<'run-up'>['result'];

/** One step of the run-up: its cautions first, what the sheet says, then what was seen. */
export function SayStep(props: {
  job: Job;
  item: RunUpItem | undefined;
  onSaid: (item: RunUpItem) => void;
  onClose: () => void;
}) {
  const { job, item, onSaid, onClose } = props;
  const done = (said: RunUpItem) => {
    onSaid(said);
    onClose();
  };
  return (
    <Dialog title={item?.step.title ?? ''} open={item !== undefined} onClose={onClose}>
      {item && <SayForm job={job} item={item} onDone={() => done(item)} />}
    </Dialog>
  );
}

function SayForm({ job, item, onDone }: { job: Job; item: RunUpItem; onDone: () => void }) {
  const catalog = useCatalog();
  const { step, limit } = item;
  const kind = step.kind ?? limit?.kind ?? 'rotation';
  const noLoad = topSpeedSaid(useAnswers());
  const form = useForm({
    job: job.id,
    kind: 'run-up',
    handle: step.id,
    title: step.title,
    fields: {
      value: {
        as: 'quantity',
        kind: ({ value }) => kindTyped(kind, value),
        unit: ({ value }) => (limit?.kind === kind ? limit.unit : soleUnits[kindTyped(kind, value)]),
        label: 'Reading',
        doubt: ({ value }) =>
          kindTyped(kind, value) !== kind && !noLoad
            ? 'Log the top speed first: the droop is worked out from both. Or write it in percent.'
            : undefined,
        when: () => step.answer === 'reading',
      },
      words: { as: 'text', label: 'Note' },
    },
    also: { item: step.id, title: step.title },
    lines: (body) => {
      if (body.result === 'reading' && !body.value)
        throw new FieldError('value', 'Write the reading with its unit.');
      const droop = body.value && kind === 'ratio' && noLoad && droopBetween(noLoad, body.value);
      if (!droop) return [{ kind: 'run-up', body }];
      return [{ kind: 'run-up', body: { ...body, ...droop, words: joined([body.words, droop.words]) } }];
    },
    onDone,
  });
  const ask = asks(item, form.text('value') !== '' && form.wrongAt('value') === undefined);
  const say = (result: Result) => void form.keep({ also: { result } });
  return (
    <FormFrame form={form} onEnter={() => say(ask === 'reading' ? 'reading' : 'ok')}>
      <Caution lines={cautionsFor(catalog, { runUp: step.id }).map((c) => c.words)} />
      <Resumed form={form} />
      {step.words && <p>{step.words}</p>}
      {limit && (
        <p>
          Must be <b>{limitWords(limit)}</b>
        </p>
      )}
      <SheetLines job={job} step={step} />
      <ClassFigures step={step} />
      <Asked form={form} />
      <Wrong words={form.wrong} />
      <Answers asks={ask} say={say} />
    </FormFrame>
  );
}

/** Where a kind of number is read in one unit only, that need not be typed. */
const soleUnits: Partial<Record<Kind, string>> = {
  rotation: 'rpm',
  ratio: '%',
  voltage: 'V',
  frequency: 'Hz',
};

/** Droop is read off as a speed: such a number is understood as the speed under load. */
const kindTyped = (kind: Kind, value: unknown): Kind =>
  kind === 'ratio' && /rpm|\d{3}/i.test(String(value)) ? 'rotation' : kind;

type Asks = 'done' | 'reading' | 'reading-judged-by-hand';

/** A reading with no limit known to the program is judged by the person who took it. */
function asks({ step, limit }: RunUpItem, read: boolean): Asks {
  if (step.answer === 'done') return 'done';
  return limit || !step.barsHandOver || !read ? 'reading' : 'reading-judged-by-hand';
}

const answerWords: Readonly<Record<Asks, string>> = {
  done: 'In order',
  reading: 'Keep the reading',
  'reading-judged-by-hand': 'Keep it: in order by the machine’s plate',
};

function Answers({ asks, say }: { asks: Asks; say: (result: Result) => void }) {
  return (
    <div className="row end">
      <Button look="quiet" onClick={() => say('not-applicable')}>
        Does not apply
      </Button>
      <Button look="danger" onClick={() => say('not-ok')}>
        Not in order
      </Button>
      <Button look="go" type="submit">
        {answerWords[asks]}
      </Button>
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
