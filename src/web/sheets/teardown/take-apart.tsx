import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { byId, type Catalog } from '../../../catalog/index.js';
import type { Job, PlannedStep, TeardownPlan } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { type JobView, useCatalog } from '../../data/queries.js';
import { Page } from '../../frame/page.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { TextField } from '../../parts/field.js';
import { ActPage } from './act-page.js';
import { type Count, CountOut, countedFasteners, countsFor } from './counter.js';
import { Mind } from './mind.js';
import { TickRow } from './tick-row.js';
import { useTeardownPlan } from './use-plan.js';
import { ViewRows } from './view-rows.js';
import { counted, fastenerWords, listed } from './words.js';

/** Taking apart step by step: the next of the plan, or the one named. */
export function TakeApart({ view, step: named }: { view: JobView; step?: string | undefined }) {
  const { answers, job, loading } = view;
  const { id } = job;
  const plan = useTeardownPlan(answers);
  const [, go] = useLocation();
  const [waiting, setWaiting] = useState(0);
  const planned = plan.state === 'planned' ? plan : undefined;
  const ready = planned ? readyNow(planned) : [];
  const step = named === undefined ? ready[waiting % Math.max(1, ready.length)] : answers.step(named);
  const leave = () => go(`/job/${id}/teardown`);
  if (!step) return <NothingLeft id={id} loading={loading} named={named} plan={planned} />;
  const taken = answers.takenOff;
  const here = taken.findIndex((s) => s.step === step.step);
  const before = here >= 0 ? taken[here - 1] : taken.at(-1);
  return (
    <Act
      key={step.step}
      job={job}
      step={step}
      where={whereWords(taken.length, planned, here)}
      onDone={() =>
        go(
          named === undefined || !planned?.steps.length
            ? `/job/${id}/${named === undefined ? 'take-apart' : 'teardown'}`
            : `/job/${id}/take-apart`,
        )
      }
      onBack={before && (() => go(`/job/${id}/take-apart/${before.step}`))}
      onLeave={leave}
      other={
        named === undefined && ready.length > 1 ? (
          <Button onClick={() => setWaiting(waiting + 1)}>Another first</Button>
        ) : undefined
      }
    />
  );
}

/** Steps whose way is free: the order among them is the mechanic's. */
function readyNow({ steps }: TeardownPlan): PlannedStep[] {
  const left = new Set(steps.map((s) => s.id));
  return steps.filter((s) => s.after.every((id) => !left.has(id)));
}

function whereWords(taken: number, plan: TeardownPlan | undefined, here: number): string {
  const all = taken + (plan?.steps.length ?? 0);
  return `Teardown ${here >= 0 ? here + 1 : Math.min(taken + 1, all)} / ${Math.max(all, 1)}`;
}

function NothingLeft(props: {
  id: string;
  loading: boolean;
  named: string | undefined;
  plan: TeardownPlan | undefined;
}) {
  const { id, loading, named, plan } = props;
  const reached = plan?.goals.filter((g) => g.state === 'reached').map((g) => g.title) ?? [];
  const title = loading
    ? 'Opening …'
    : named !== undefined
      ? 'There is no such piece'
      : reached.length > 0
        ? 'Everything wanted is off'
        : 'Nothing is to come off';
  return (
    <Page title={title}>
      {reached.length > 0 && <p>Reached: {listed(reached)}.</p>}
      <p className="row">
        <Link className="button go" href={`/job/${id}/teardown`}>
          To Teardown
        </Link>
        <Link className="button" href={`/job/${id}/measure`}>
          On to Measure
        </Link>
      </p>
    </Page>
  );
}

interface ActProps {
  readonly job: Job;
  readonly step: PlannedStep;
  readonly where: string;
  readonly onDone: () => void;
  readonly onBack: (() => void) | undefined;
  readonly onLeave: () => void;
  readonly other: React.ReactNode;
}

function Act({ job, step, where, onDone, onBack, onLeave, other }: ActProps) {
  const catalog = useCatalog();
  const logged = job.steps.get(step.step);
  const [counts, setCounts] = useState<readonly Count[]>(() => countsFor(step.fasteners));
  const [bag, setBag] = useState(step.bag ?? '');
  const [plugged, setPlugged] = useState<readonly string[]>(logged?.plugged ?? []);
  const [words, setWords] = useState(logged?.words ?? '');
  const [asking, setAsking] = useState(false);
  const { wrong, busy, act } = useAct();
  const missing = step.views.filter((v) => !v.shown && !v.gone);
  const open = step.plugs.filter((p) => !plugged.includes(p.name));
  const uncounted = counts.filter((c) => c.count === 0 && c.usual);
  const isOff = logged?.state === 'done';

  const off = async (reason?: string) => {
    const done = await act(() =>
      write(job.id, 'step', {
        step: step.step,
        stage: 'teardown',
        title: step.name,
        component: step.components.length === 1 ? step.components[0] : undefined,
        components: step.components.length > 0 ? [...step.components] : undefined,
        state: 'done',
        fasteners: countedFasteners(counts),
        bag: bag.trim() || undefined,
        plugged: [...plugged],
        unseen: reason === undefined ? logged?.unseen : missing.map((v) => ({ view: v.view, reason })),
        words:
          [words.trim(), reason !== undefined && leftWords(reason, open, uncounted)]
            .filter(Boolean)
            .join('. ') || undefined,
      }),
    );
    if (done) onDone();
  };
  const doubts = isOff ? [] : [...missing, ...open, ...uncounted];
  const press = () => (doubts.length > 0 ? setAsking(true) : void off());

  return (
    <ActPage
      job={job}
      where={where}
      title={step.name}
      say={sayOf(step)}
      spoken={spokenOf(catalog, step)}
      back={onBack}
      onLeave={onLeave}
      other={other}
      go={{ label: isOff ? 'Keep it so' : 'It is off · next', act: press, disabled: busy }}
      side={
        <>
          {step.fasteners.some((f) => f.stays) && (
            <p className="line-large">
              Held by {listed(step.fasteners.filter((f) => f.stays).map(fastenerWords))}
            </p>
          )}
          <CountOut counts={counts} onChange={setCounts} />
          {step.plugs.map((p) => (
            <TickRow
              key={p.port}
              checked={plugged.includes(p.name)}
              onChange={(on) => setPlugged(on ? [...plugged, p.name] : plugged.filter((x) => x !== p.name))}
              more={p.plugWith}
            >
              Plug now: {p.name}
            </TickRow>
          ))}
          <div className="fields">
            <TextField label="Bag" value={bag} onChange={setBag} />
            <TextField
              label="Note"
              value={words}
              onChange={setWords}
              placeholder="which way round, how it felt"
            />
          </div>
          {step.oneTimeParts.length > 0 && (
            <p className="soft">
              Not used twice: {listed([...new Set(step.oneTimeParts.map((p) => p.part))])}.
            </p>
          )}
          <Wrong words={wrong} />
        </>
      }
    >
      <Mind
        cautions={step.cautions}
        lookAlikes={step.lookAlikes}
        also={[
          ...step.spoils.map((look) => `Cannot be had after this: ${look}.`),
          ...(step.hides ? [`Left together, this stays unseen: ${step.hides}.`] : []),
        ]}
      />
      <ViewRows job={job} views={step.views} stage="teardown" when="before" />
      <Doubts
        open={asking}
        missing={missing.map((v) => v.view)}
        ports={open.map((p) => p.name)}
        uncounted={uncounted.map((c) => c.usual!)}
        onClose={() => setAsking(false)}
        onGo={(reason) => {
          setAsking(false);
          void off(reason);
        }}
      />
    </ActPage>
  );
}

/** What is not as it should be before a piece moves, and the reason for going on all the same. */
function Doubts(props: {
  open: boolean;
  missing: readonly string[];
  ports: readonly string[];
  uncounted: readonly string[];
  onClose: () => void;
  onGo: (reason: string) => void;
}) {
  const { missing, ports, uncounted } = props;
  const [reason, setReason] = useState('');
  return (
    <Dialog
      title={missing.length > 0 ? 'Take it off without the picture?' : 'Before it counts as off'}
      open={props.open}
      onClose={props.onClose}
    >
      <ul className="plain stack tight">
        {missing.map((view) => (
          <li key={view}>
            <b className="verdict fail">no picture</b> of {view}: it cannot be taken once this is off.
          </li>
        ))}
        {ports.map((port) => (
          <li key={port}>
            <b className="verdict fail">open</b> {port}: dirt falls in.
          </li>
        ))}
        {uncounted.map((what) => (
          <li key={what}>
            <b className="verdict cannot-decide">not counted</b>: {what}
          </li>
        ))}
      </ul>
      <TextField
        label="Why go on without"
        value={reason}
        onChange={setReason}
        placeholder="filmed on another camera; nothing to see; came in without"
        help="It goes into the log with the step."
      />
      <div className="row end">
        <Button look="go" onClick={props.onClose}>
          Go back
        </Button>
        <Button disabled={reason.trim() === ''} onClick={() => props.onGo(reason.trim())}>
          {missing.length > 0 ? 'Off without the picture' : 'It is off all the same'}
        </Button>
      </div>
    </Dialog>
  );
}

function leftWords(
  reason: string,
  open: PlannedStep['plugs'],
  uncounted: readonly Count[],
): string | undefined {
  const left = [
    open.length > 0 && `left open: ${listed(open.map((p) => p.name))}`,
    uncounted.length > 0 && `not counted: ${listed(uncounted.map((c) => c.usual!))}`,
  ].filter(Boolean);
  return left.length > 0 ? `${left.join('; ')} (${reason})` : undefined;
}

function sayOf(step: PlannedStep): string {
  return [
    step.stillBefore.length > 0 && `Usually off before this: ${listed(step.stillBefore)}.`,
    step.waitBefore >= 1 && `Wait ${counted(Math.round(step.waitBefore), 'minute')} first.`,
    step.notes.length > 0 && `${capital(step.notes.join('. '))}.`,
    step.holds.length > 0 && `In the way of ${listed(step.holds)}.`,
  ]
    .filter(Boolean)
    .join(' ')
    .replaceAll('..', '.');
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

function spokenOf(catalog: Catalog, step: PlannedStep): string {
  const cautions = byId(catalog.cautions);
  return [
    ...step.cautions.map((c) => cautions.get(c.id)!.title),
    `Take off: ${step.name}`,
    ...step.views.filter((v) => !v.shown).map((v) => `Photograph ${v.view}`),
    ...step.plugs.map((p) => `Plug ${p.name}`),
    step.bag && `Bag ${step.bag}`,
  ]
    .filter(Boolean)
    .join('. ');
}
