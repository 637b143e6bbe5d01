import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { byId, type Catalog } from '../../../catalog/index.js';
import type { Answers, Job, PlannedStep, TeardownPlan } from '../../../job/index.js';
import { capital, counted, listed, lowerFirst } from '../../../phrase/index.js';
import { useCatalog } from '../../data/answers.js';
import { Asked, Resumed } from '../../form/form.js';
import { type Form, useForm } from '../../form/use-form.js';
import { Page } from '../../frame/page.js';
import { Button, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { ActPage } from './act-page.js';
import { CountFromMat } from './count-from-mat.js';
import { type Count, CountOut, countsFor } from './counter.js';
import { Mind } from './mind.js';
import { missingViews, notCounted, offLine, openPorts, unseenBecause } from './off-line.js';
import { SeveralOff } from './several-off.js';
import { TickRows } from './tick-row.js';
import { useTeardownPlan } from './use-plan.js';
import { ViewRows } from './view-rows.js';
import { fastenerWords } from './words.js';

/** Taking apart step by step: the next of the plan, or the one named. */
export function TakeApart(props: { answers: Answers; step?: string | undefined }) {
  const { answers, step: named } = props;
  const { job } = answers;
  const { id } = job;
  const plan = useTeardownPlan(answers);
  const [, go] = useLocation();
  const [waiting, setWaiting] = useState(0);
  const planned = plan.state === 'planned' ? plan : undefined;
  const ready = planned ? readyNow(planned) : [];
  const first = ready[waiting % Math.max(1, ready.length)];
  const step = named === undefined ? first && inNextBag(first, planned!) : answers.step(named);
  const leave = () => go(`/job/${id}/teardown`);
  if (!step) return <NothingLeft id={id} named={named} plan={planned} />;
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
        named === undefined && (
          <>
            {ready.length > 1 && <Button onClick={() => setWaiting(waiting + 1)}>Another first</Button>}
            <SeveralOff job={job} steps={planned!.steps} />
          </>
        )
      }
    />
  );
}

/** Steps whose way is free: the order among them is the mechanic's. */
function readyNow({ steps }: TeardownPlan): PlannedStep[] {
  const left = new Set(steps.map((s) => s.id));
  return steps.filter((s) => s.after.every((id) => !left.has(id)));
}

/** Whichever comes off first lies in the next bag: no number is left out. */
function inNextBag(step: PlannedStep, { steps }: TeardownPlan): PlannedStep {
  const next = steps.find(({ bag }) => bag !== undefined)?.bag;
  return step.bag === undefined || next === undefined ? step : { ...step, bag: next };
}

function whereWords(taken: number, plan: TeardownPlan | undefined, here: number): string {
  const all = taken + (plan?.steps.length ?? 0);
  return `Teardown ${here >= 0 ? here + 1 : Math.min(taken + 1, all)} / ${Math.max(all, 1)}`;
}

function NothingLeft(props: { id: string; named: string | undefined; plan: TeardownPlan | undefined }) {
  const { id, named, plan } = props;
  const reached = plan?.goals.filter((g) => g.state === 'reached').map((g) => g.title) ?? [];
  const title =
    named !== undefined
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

/** What was done at a step as it is typed, and what still speaks against its counting as off. */
function useOff({ job, step, onDone }: ActProps) {
  const logged = job.steps.get(step.step);
  const missing = missingViews(step);
  const form = useForm({
    job: job.id,
    kind: 'step',
    handle: step.step,
    title: step.name,
    fields: {
      $counts: { as: 'drawn', label: 'Fasteners', begin: countsFor(step.fasteners) },
      plugged: { as: 'drawn', label: 'Plugged', begin: logged?.plugged ?? step.plugs.map((p) => p.name) },
      bag: { as: 'text', label: 'Bag', begin: step.bag },
      words: { as: 'text', label: 'Note', hint: 'which way round, how it felt', begin: logged?.words },
      $reason: {
        as: 'text',
        label: 'Or in your words',
        hint: 'filmed on another camera; nothing to see; came in without',
        help: 'It goes into the log with the step.',
      },
    },
    also: ({ words }, { $counts, plugged, $reason }) =>
      offLine(step, {
        counts: $counts as Count[],
        plugged: plugged as string[],
        reason: String($reason).trim(),
        ...(words && { words }),
        ...(logged?.unseen && { unseen: logged.unseen }),
      }),
    onDone,
  });
  const open = openPorts(step, form.list('plugged'));
  const uncounted = notCounted(form.list<Count>('$counts'));
  const isOff = logged?.state === 'done';
  return { form, missing, open, uncounted, isOff };
}

function Act(props: ActProps) {
  const { job, step, where, onBack, onLeave, other } = props;
  const catalog = useCatalog();
  const [asking, setAsking] = useState(false);
  const off = useOff(props);
  const { form, missing, open, uncounted, isOff } = off;
  const sure = isOff || missing.length + open.length + uncounted.length === 0;
  return (
    <ActPage
      job={job}
      stage="teardown"
      where={where}
      title={step.name}
      say={sayOf(step)}
      spoken={spokenOf(catalog, step)}
      back={onBack}
      onLeave={onLeave}
      other={other}
      go={{
        label: isOff ? 'Keep it so' : goWords(step, open.length),
        act: () => (sure ? void form.keep() : setAsking(true)),
        disabled: form.busy,
      }}
      side={<OffSide step={step} form={form} />}
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
      <Doubts {...off} open={asking} ports={open} onClose={() => setAsking(false)} />
    </ActPage>
  );
}

/** The touch says all that it claims. */
const goWords = ({ plugs }: PlannedStep, open: number) =>
  plugs.length > 0 && open === 0 ? 'Off and plugged · next' : 'It is off · next';

/** What is counted out, plugged, bagged and noted. */
function OffSide({ step, form }: { step: PlannedStep; form: Form }) {
  return (
    <>
      <Resumed form={form} />
      {step.fasteners.some((f) => f.stays) && (
        <p className="line-large">
          Held by {listed(step.fasteners.filter((f) => f.stays).map(fastenerWords))}
        </p>
      )}
      <CountOut counts={form.list<Count>('$counts')} onChange={(counts) => form.set('$counts', counts)} />
      {step.fasteners.some((f) => !f.stays) && (
        <CountFromMat
          counts={form.list<Count>('$counts')}
          onChange={(counts) => form.set('$counts', counts)}
        />
      )}
      <TickRows
        form={form}
        name="plugged"
        items={step.plugs.map((p) => p.name)}
        says={(name) => `Plug now: ${name}`}
        more={(name) => step.plugs.find((p) => p.name === name)?.plugWith}
      />
      <Asked form={form} names={['bag', 'words']} />
      {step.oneTimeParts.length > 0 && (
        <p className="soft">Not used twice: {listed([...new Set(step.oneTimeParts.map((p) => p.part))])}.</p>
      )}
      <Wrong words={form.wrong} />
    </>
  );
}

/** What it is, mostly, in one touch; anything else is typed. */
const leftBecause = ['Not on this one', 'Came in like that', 'Left so for now'];

interface Left {
  readonly missing: PlannedStep['views'];
  readonly ports: PlannedStep['plugs'];
  readonly uncounted: readonly Count[];
}

function WhatIsLeft({ missing, ports, uncounted }: Left) {
  return (
    <ul className="plain stack tight">
      {missing.map(({ view }) => (
        <li key={view}>
          <b className="verdict fail">no picture</b> of {view}: it cannot be taken once this is off.
        </li>
      ))}
      {ports.map(({ name }) => (
        <li key={name}>
          <b className="verdict fail">open</b> {name}: dirt falls in.
        </li>
      ))}
      {uncounted.map(({ usual }) => (
        <li key={usual}>
          <b className="verdict cannot-decide">not counted</b>: {usual}
        </li>
      ))}
    </ul>
  );
}

/** What is not as it should be before a piece moves, and the reason for going on all the same. */
function Doubts(props: Left & { form: Form; open: boolean; onClose: () => void }) {
  const { form, missing, ports, uncounted, onClose } = props;
  const goOn = () => {
    onClose();
    void form.keep();
  };
  return (
    <Dialog
      title={missing.length > 0 ? 'Take it off without the picture?' : 'Before it counts as off'}
      open={props.open}
      onClose={onClose}
    >
      <WhatIsLeft missing={missing} ports={ports} uncounted={uncounted} />
      <fieldset className="choices">
        <legend className="hidden">Why</legend>
        {(missing.length > 0 ? unseenBecause : leftBecause).map((reason) => (
          <Button
            key={reason}
            onClick={() => {
              form.set('$reason', reason);
              goOn();
            }}
          >
            {reason}
          </Button>
        ))}
      </fieldset>
      <Asked form={form} names={['$reason']} />
      <div className="row end">
        <Button look="go" onClick={onClose}>
          Go back
        </Button>
        <Button disabled={form.text('$reason') === ''} onClick={goOn}>
          {missing.length > 0 ? 'Off without the picture' : 'It is off all the same'}
        </Button>
      </div>
    </Dialog>
  );
}

function sayOf(step: PlannedStep): string {
  return [
    step.stillBefore.length > 0 && `Usually off before this: ${listed(step.stillBefore.map(lowerFirst))}.`,
    step.waitBefore >= 1 && `Wait ${counted(Math.round(step.waitBefore), 'minute')} first.`,
    step.notes.length > 0 && `${capital(step.notes.join('. '))}.`,
    step.holds.length > 0 && `In the way of ${listed(step.holds.map(lowerFirst))}.`,
  ]
    .filter(Boolean)
    .join(' ')
    .replaceAll('..', '.');
}

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
