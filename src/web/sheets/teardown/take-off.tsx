import { type ComponentProps, useState } from 'react';
import { applies, type Catalog, type Component, cautionsFor } from '../../../catalog/index.js';
import { type Fastener, type From, factsOf, type Job } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { useCatalog } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { TextField, Ticks } from '../../parts/field.js';
import { TakePicture } from '../../parts/picture.js';
import { componentFor, componentsOf } from '../components.js';
import { missingViews } from './missing-views.js';

/** One piece comes off: cautions and look-alikes first, then pictures, fasteners, bag and ports. */
export function TakeOff({
  job,
  step,
  onClose,
}: {
  job: Job;
  step: From<'step'> | undefined;
  onClose: () => void;
}) {
  return (
    <Dialog title={step ? `Take off: ${step.title}` : ''} open={step !== undefined} onClose={onClose}>
      {step && <Form key={step.step} job={job} step={job.steps.get(step.step) ?? step} onClose={onClose} />}
    </Dialog>
  );
}

interface FastenerLine {
  readonly count: string;
  readonly size: string;
  readonly length: string;
  readonly what: string;
  readonly hole: string;
}

const emptyLine: FastenerLine = { count: '', size: '', length: '', what: 'bolt', hole: '' };

function Form({ job, step, onClose }: { job: Job; step: From<'step'>; onClose: () => void }) {
  const catalog = useCatalog();
  const component = componentFor(catalog, job, step.component);
  const [lines, setLines] = useState<readonly FastenerLine[]>(() => firstLines(step, component));
  const [bag, setBag] = useState(step.bag ?? nextBag(job));
  const ports = portsOf(catalog, component);
  const [plugged, setPlugged] = useState<readonly string[]>(step.plugged ?? []);
  const [words, setWords] = useState(step.words ?? '');
  const { wrong, act } = useAct();
  const views = missingViews(job, step, component);

  const save = (state: 'done' | 'dropped') =>
    act(async () => {
      await write(job.id, 'step', {
        step: step.step,
        stage: 'teardown',
        title: step.title,
        component: step.component,
        state,
        fasteners: fastenersIn(lines),
        bag: bag.trim() || undefined,
        plugged: [...plugged],
        words: words.trim() || undefined,
      });
      onClose();
    });

  return (
    <>
      <Caution lines={warnings(catalog, job, component)} />
      {holding(catalog, job, component).length > 0 && (
        <p>
          Usually off before this: <b>{holding(catalog, job, component).join(', ')}</b>.
        </p>
      )}
      <div className="stack tight">
        <h3>Pictures before it moves</h3>
        {views.length === 0 ? (
          <TakePicture
            job={job.id}
            stage="teardown"
            when="before"
            about={step.step}
            caption={step.title}
            label="Photograph"
          />
        ) : (
          views.map((v) => (
            <div className="row apart" key={v}>
              <span>
                {v}: <span className="verdict cannot-decide">none yet</span>
              </span>
              <TakePicture
                job={job.id}
                stage="teardown"
                when="before"
                about={`${step.step}:${v}`.slice(0, 120)}
                caption={v}
                label="Photograph"
              />
            </div>
          ))
        )}
      </div>
      <Fasteners lines={lines} onChange={setLines} />
      <div className="fields">
        <TextField label="Bag" value={bag} onChange={setBag} />
      </div>
      {ports.length > 0 && (
        <Ticks label="Plug now, and say so" items={ports} value={plugged} onChange={setPlugged} />
      )}
      <TextField
        label="Note"
        value={words}
        onChange={setWords}
        placeholder="which hole, which way round, how it felt breaking loose"
      />
      <Wrong words={wrong} />
      <div className="row end">
        {step.state === 'planned' && (
          <Button look="quiet" onClick={() => void save('dropped')}>
            It stays on
          </Button>
        )}
        <Button onClick={onClose}>Not yet</Button>
        <Button look="go" onClick={() => void save('done')}>
          It is off
        </Button>
      </div>
    </>
  );
}

function Fasteners({
  lines,
  onChange,
}: {
  lines: readonly FastenerLine[];
  onChange: (lines: FastenerLine[]) => void;
}) {
  const change = (i: number, part: Partial<FastenerLine>) =>
    onChange(lines.map((l, j) => (j === i ? { ...l, ...part } : l)));
  return (
    <div className="stack tight">
      <h3>Fasteners, counted as they come out</h3>
      {lines.map((l, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line has no identity but its place
        <div className="fastener" key={i}>
          <TextField
            label="Count"
            value={l.count}
            inputMode="numeric"
            onChange={(count) => change(i, { count })}
          />
          <TextField
            label="Size"
            value={l.size}
            onChange={(size) => change(i, { size })}
            placeholder="5/16-18"
          />
          <TextField
            label="Length"
            value={l.length}
            onChange={(length) => change(i, { length })}
            placeholder="1-1/2 in"
          />
          <TextField label="What" value={l.what} onChange={(what) => change(i, { what })} />
          <TextField
            label="Hole"
            value={l.hole}
            onChange={(hole) => change(i, { hole })}
            placeholder="if lengths differ"
          />
        </div>
      ))}
      <div>
        <Button look="quiet" onClick={() => onChange([...lines, emptyLine])}>
          Another kind of fastener
        </Button>
      </div>
    </div>
  );
}

function firstLines(step: From<'step'>, component: Component | undefined): FastenerLine[] {
  if (step.fasteners?.length) {
    return step.fasteners.map((f) => ({
      count: String(f.count),
      size: f.size ?? '',
      length: f.length ?? '',
      what: f.what,
      hole: f.hole ?? '',
    }));
  }
  return (component?.fasteners ?? []).map((f) => ({
    ...emptyLine,
    what: f.what,
    size: f.sizes?.length === 1 ? f.sizes[0]! : '',
  }));
}

/** Only lines with a whole count are fasteners; an empty count means that nothing of it was found. */
function fastenersIn(lines: readonly FastenerLine[]): Fastener[] {
  return lines.flatMap((l) => {
    if (l.count.trim() === '') return [];
    const count = Number(l.count);
    if (!Number.isInteger(count) || count < 1)
      throw new Error(`A count is a whole number; “${l.count}” is not.`);
    const optional = (key: 'size' | 'length' | 'hole') => (l[key].trim() ? { [key]: l[key].trim() } : {});
    return [
      {
        what: l.what.trim() || 'fastener',
        count,
        ...optional('size'),
        ...optional('length'),
        ...optional('hole'),
      },
    ];
  });
}

function nextBag(job: Job): string {
  const used = [...job.steps.values()].map((s) => Number(s.bag)).filter(Number.isInteger);
  return String(1 + Math.max(0, ...used));
}

function portsOf({ ports }: Catalog, component: Component | undefined): string[] {
  return (component?.opens ?? []).map((id) => ports.find((p) => p.id === id)?.name ?? id);
}

function warnings(
  catalog: Catalog,
  job: Job,
  component: Component | undefined,
): ComponentProps<typeof Caution>['lines'] {
  const { lookAlikes } = catalog;
  if (!component) return [];
  return [
    ...cautionsFor(catalog, { component: component.id }),
    ...lookAlikes.filter((l) => component.lookAlikes?.includes(l.id)).map((l) => `${l.name}: ${l.tell}`),
    ...(component.note && job.intake.architecture ? [component.note] : []),
  ];
}

function holding(catalog: Catalog, job: Job, component: Component | undefined): string[] {
  const names = new Map(componentsOf(catalog, job).map((c) => [c.id, c.name]));
  return (component?.before ?? [])
    .filter((b) => applies(b.when, factsOf(job)) !== 'no' && job.steps.get(b.component)?.state !== 'done')
    .flatMap((b) => names.get(b.component) ?? []);
}
