import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { cautionsFor } from '../../../catalog/index.js';
import { type From, type Job, lineWords, type TeardownPlan } from '../../../job/index.js';
import { counted, dayWords, listed, minutesWords } from '../../../phrase/index.js';
import { useAnswers, useCatalog } from '../../data/answers.js';
import { usePrimary } from '../../frame/job-frame.js';
import { Sheet, type SheetProps } from '../../frame/sheet.js';
import { Button, useAct } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { useInHand } from '../../parts/in-hand.js';
import { NameClip } from '../../parts/name-clip.js';
import { PictureGrid, TakePicture } from '../../parts/picture.js';
import { PrintLabels } from '../../parts/print-labels.js';
import { TwoAccountsAsked } from '../two-accounts.js';
import { ChooseComponent } from './choose-component.js';
import { CoverageLine } from './coverage-line.js';
import { Differs } from './differs.js';
import { Early } from './early.js';
import { allOffered, Goals } from './goals.js';
import { GraphPicture } from './graph-picture.js';
import { useTeardownPlan } from './use-plan.js';
import { Way } from './way.js';

/** What must be reached and the cheapest way there; then off in order, seen, counted, bagged and plugged. */
export function Teardown({ answers, job, gate }: SheetProps) {
  const catalog = useCatalog();
  const [choosing, setChoosing] = useState(false);
  const [, go] = useLocation();
  const found = useTeardownPlan(answers);
  const plan = found.state === 'planned' ? found : undefined;
  const { offNow: off, takenOff } = answers;
  const next = plan?.steps[0];
  useInHand(pieceInHand(plan));
  const all = plan && allOffered(job, plan);
  const { busy, act } = useAct(job);
  usePrimary(
    all
      ? { label: all.label, act: () => void act(all.write), disabled: busy }
      : next
        ? { label: `Next: ${next.name}`, act: () => go(`/job/${job.id}/take-apart`) }
        : { label: 'Something comes off', act: () => setChoosing(true) },
  );
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={headline(takenOff.length, plan)}
      rule="Photograph each joint before it is parted, count the fasteners, bag them by assembly, plug what stands open."
    >
      <Caution lines={cautionsFor(catalog, { stage: 'teardown' })} />
      {found.state === 'cannot' && (
        <p className="empty">
          {found.words} Say on the Intake sheet which kind of engine it is, and the cheapest way to any piece
          is worked out. Any piece can be logged without that.
        </p>
      )}
      <TwoAccountsAsked job={job} of="pieces" />
      {plan && <Goals job={job} plan={plan} />}
      {plan && <Early job={job} early={plan.early} />}
      {plan && <Way job={job} plan={plan} />}
      <OffAlready job={job} />
      {plan && <CoverageLine job={job.id} coverage={plan.coverage} />}
      {plan && <HangsTogether job={job} plan={plan} off={off} />}
      <section className="section stack tight">
        <h2>Photographs of the teardown</h2>
        <PictureGrid job={job.id} photographs={job.photographs.filter((p) => p.stage === 'teardown')} />
        <div className="row">
          <TakePicture job={job.id} stage="teardown" when="before" label="Photograph" />
          <NameClip job={job.id} stage="teardown" />
          <Link className="button" href={`/job/${job.id}/film/teardown`}>
            Film
          </Link>
          {next && <Button onClick={() => setChoosing(true)}>Something else comes off</Button>}
        </div>
      </section>
      <ChooseComponent job={job} off={off} open={choosing} onClose={() => setChoosing(false)} />
    </Sheet>
  );
}

function HangsTogether({ job, plan, off }: { job: Job; plan: TeardownPlan; off: ReadonlySet<string> }) {
  return (
    <section className="section stack tight" aria-label="How it hangs together">
      <h2>How it hangs together</h2>
      <GraphPicture plan={plan} off={off} />
      <Assumed plan={plan} />
      <Differs job={job} engine={plan.engine} />
    </section>
  );
}

/** The next that lies in a bag afterwards: draining is no piece. */
function pieceInHand(plan: TeardownPlan | undefined): string | undefined {
  const piece = plan?.steps.find(({ bag }) => bag !== undefined);
  return piece && `${piece.name}, before it comes off`;
}

function headline(off: number, plan: TeardownPlan | undefined): string {
  if (plan && plan.steps.length > 0) {
    const wanted = plan.goals.filter((g) => g.state === 'wanted').map((g) => g.title);
    const to = wanted.length > 2 ? counted(wanted.length, 'goal') : listed(wanted);
    return `${counted(plan.steps.length, 'step')}, ${minutesWords(plan.minutes)} to ${to}`;
  }
  if (plan?.goals.some((g) => g.state === 'reached')) return 'Everything wanted is off';
  return off === 0 ? 'Nothing has come off yet' : `${counted(off, 'piece')} off`;
}

/** What was taken for granted because nobody has looked. */
function Assumed({ plan }: { plan: TeardownPlan }) {
  const { assumed, nameOf } = plan.engine;
  if (assumed.length === 0) return null;
  return (
    <details>
      <summary>{counted(assumed.length, 'thing')} taken for granted</summary>
      <ul>
        {assumed.map((a) => (
          <li key={`${a.component} ${a.other ?? ''}`}>
            {a.what === 'fitted'
              ? `${nameOf(a.component)} is taken to be fitted.`
              : `${nameOf(a.component)} is taken to wait for ${nameOf(a.other!)}.`}
          </li>
        ))}
      </ul>
      <p className="soft">The engine’s facts on the Intake sheet settle it, or say below how it differs.</p>
    </details>
  );
}

/** What hands or eyes did at the machine: after a year it says where the work stopped. */
const atTheBench: ReadonlySet<string> = new Set([
  ...['step', 'observation', 'measurement', 'cleaning', 'torque', 'run-up'],
]);

function OffAlready({ job }: { job: Job }) {
  const { takenOff: done } = useAnswers();
  const planned = [...job.steps.values()].filter((s) => s.stage === 'teardown' && s.state === 'planned');
  if (done.length + planned.length === 0) return null;
  const lastTouched = job.log.findLast(({ struck, known }) => !struck && known && atTheBench.has(known.kind));
  const { title, value } = lastTouched ? lineWords(lastTouched) : { title: undefined, value: undefined };
  return (
    <section className="section stack tight">
      <div className="row apart">
        <h2>Off so far</h2>
        {done.some((s) => s.bag) && <PrintLabels job={job.id} kind="bag" />}
      </div>
      {lastTouched && (
        <p>
          Last worked on {dayWords(lastTouched.entry.at)} ({lastTouched.entry.by}):{' '}
          {[title, value].filter(Boolean).join(': ')}.
        </p>
      )}
      <ol className="lines">
        {[...planned, ...done].map((s) => (
          <StepLine key={s.step} job={job} step={s} />
        ))}
      </ol>
    </section>
  );
}

function StepLine({ job, step }: { job: Job; step: From<'step'> }) {
  const details = [
    step.bag && `bag ${step.bag}`,
    ...(step.fasteners ?? []).map(
      (f) => `${f.count} × ${[f.size, f.length, f.what, f.hole].filter(Boolean).join(' ')}`,
    ),
    step.plugged?.length ? `plugged: ${step.plugged.join(', ')}` : undefined,
    ...(step.unseen ?? []).map((u) => `no picture of ${u.view}: ${u.reason}`),
  ];
  return (
    <li>
      <div>
        <b>{step.title}</b>
        <div className="soft">{details.filter(Boolean).join(' · ')}</div>
      </div>
      <span className="row">
        {step.state === 'done' && <span className="verdict pass">off</span>}
        <Link
          className={step.state === 'done' ? 'button quiet' : 'button go'}
          href={`/job/${job.id}/take-apart/${step.step}`}
        >
          {step.state === 'done' ? 'Change' : 'Take off'}
        </Link>
      </span>
    </li>
  );
}
