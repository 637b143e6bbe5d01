import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { cautionsFor } from '../../../catalog/index.js';
import {
  type AssemblyPlan,
  type BackStep,
  type From,
  fastenerLabel,
  type Job,
  type Tally,
} from '../../../job/index.js';
import { counted, listed, shortDays } from '../../../phrase/index.js';
import { useAnswers, useCatalog } from '../../data/answers.js';
import { usePrimary } from '../../frame/job-frame.js';
import { Sheet, type SheetProps } from '../../frame/sheet.js';
import { Button } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { NumberWithOrigin } from '../../parts/number.js';
import { CoverageLine } from '../teardown/coverage-line.js';
import { TwoAccountsAsked } from '../two-accounts.js';
import { JointDrawing } from './joint-drawing.js';
import { LayOutJoint } from './lay-out-joint.js';
import { OldOneForNow } from './old-one-for-now.js';
import { Wrongs } from './wrongs.js';

/** Putting together: what came off goes back in reverse, nothing left over, every joint tight. */
export function Assembly({ answers, job, gate }: SheetProps) {
  const catalog = useCatalog();
  const [laying, setLaying] = useState<From<'joint'> | 'new'>();
  const { assembly: plan, tally: counts, tightening } = answers;
  const [, go] = useLocation();
  const joints = [...job.joints.values()];
  const loose = joints.filter((j) => tightening.get(j.joint)!.next !== undefined);
  const tight = joints.length - loose.length;
  // it has left the shop: what nobody looked at then is told below, and no longer asked
  const goOn = job.handOver ? undefined : goOnWords(plan);
  const begun = loose.find((j) => tightening.get(j.joint)!.done.size > 0);
  const toTighten = begun ?? (goOn ? undefined : loose[0]);
  usePrimary(
    toTighten
      ? {
          label: `${begun ? 'Go on tightening' : 'Begin tightening'}: ${toTighten.name}`,
          act: () => go(`/job/${job.id}/tighten/${toTighten.joint}`),
        }
      : goOn
        ? { label: goOn, act: () => go(`/job/${job.id}/put-together`) }
        : { label: 'Lay out a joint to tighten', act: () => setLaying('new') },
  );
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={headline(counts, joints.length, tight)}
      rule="The last piece off is the first back on. Turn the shaft after each stage: what binds now binds worse when it is closed."
    >
      <Caution lines={cautionsFor(catalog, { stage: 'assembly' })} />
      <TwoAccountsAsked job={job} of="pieces" />
      <BackOn job={job} plan={plan} />
      <Gates plan={plan} />
      <ForNow plan={plan} />
      <CoverageLine job={job.id} coverage={plan.coverage} />
      <section className="stack section">
        <h2>Joints</h2>
        {joints.length === 0 && (
          <p className="empty">
            No joint is laid out. Lay out the cylinder head, the sump or any group of bolts that is tightened
            together: holes, torque, passes and order. Then tighten it one bolt at a time.
          </p>
        )}
        {(goOn || toTighten) && (
          <div className="row">
            <Button onClick={() => setLaying('new')}>Lay out a joint to tighten</Button>
          </div>
        )}
        <div className="joints">
          {joints.map((j) => (
            <JointCard key={j.joint} job={job} joint={j} onChange={() => setLaying(j)} />
          ))}
        </div>
      </section>
      <TwoAccountsAsked job={job} of="bolts" />
      <LayOutJoint job={job} joint={laying} onClose={() => setLaying(undefined)} />
    </Sheet>
  );
}

function goOnWords(plan: AssemblyPlan): string | undefined {
  const asked = plan.gates.find((g) => g.state === 'asked');
  return asked ? `Look: ${asked.gate.name}` : plan.next && `Next: ${plan.next.title}`;
}

function headline({ notPutBack, plugsForgotten, leftOver }: Tally, joints: number, tight: number): string {
  if (notPutBack.length > 0) return `${counted(notPutBack.length, 'piece')} to put back`;
  if (plugsForgotten.length > 0) return 'Everything is back on, but a port is still plugged';
  if (leftOver.length > 0) return 'Everything is back on, but something is left over';
  if (tight < joints) return `${counted(joints - tight, 'joint')} to tighten`;
  return joints > 0 ? 'Together and tight' : 'Put it together';
}

function JointCard({ job, joint, onChange }: { job: Job; joint: From<'joint'>; onChange: () => void }) {
  const progress = useAnswers().tightening.get(joint.joint)!;
  const done = progress.done.size;
  return (
    <article className="card">
      <header>
        <h2>{joint.name}</h2>
        {progress.trouble.length > 0 ? (
          <span className="verdict fail">look into it</span>
        ) : progress.next === undefined ? (
          <span className="verdict pass">tight</span>
        ) : (
          <span className="soft">
            {done} of {progress.turns.length}
          </span>
        )}
      </header>
      <JointDrawing
        joint={joint}
        lit={{ done: progress.next === undefined ? new Set(joint.order) : new Set() }}
      />
      <p>
        <NumberWithOrigin
          what={`${joint.name} torque`}
          quantity={{ ...joint.target, origin: joint.targetOrigin as never }}
        />
        <span className="soft">
          {' '}
          in {counted(progress.passes, 'pass', 'passes')} · order:{' '}
          {joint.orderOrigin.detail ?? joint.orderOrigin.from}
        </span>
      </p>
      <div className="row">
        <Link
          className={progress.next === undefined ? 'button' : 'button go'}
          href={`/job/${job.id}/tighten/${joint.joint}`}
        >
          {done === 0 ? 'Begin tightening' : progress.next === undefined ? 'Look at it' : 'Go on tightening'}
        </Link>
        <Button look="quiet" onClick={onChange}>
          Change
        </Button>
      </div>
    </article>
  );
}

/** What came off, last off first: what is back, what can go back now, and what must wait for a part. */
function BackOn({ job, plan }: { job: Job; plan: AssemblyPlan }) {
  if (plan.steps.length === 0) return null;
  const waiting = plan.steps.filter((s) => s.state === 'waits');
  const open = plan.steps.filter((s) => s.state !== 'waits' && s.state !== 'back');
  const back = plan.steps.filter((s) => s.state === 'back');
  return (
    <section className="section stack tight" aria-label="Back on, last off first">
      <h2>Back on, last off first</h2>
      <Wrongs />
      <ol className="way">
        {open.map((s) => (
          <BackLine key={s.off.step} job={job} step={s} />
        ))}
      </ol>
      {plan.soFar && (
        <div className="no-further" role="note">
          <b>So far and no further.</b> {plan.soFar}
          <div className="row">
            {plan.late.map((wait) => (
              <OldOneForNow key={wait.component} job={job} wait={wait} />
            ))}
          </div>
        </div>
      )}
      <ol className="way waits">
        {waiting.map((s) => (
          <BackLine key={s.off.step} job={job} step={s} />
        ))}
      </ol>
      {back.length > 0 && (
        <details open={open.length + waiting.length === 0}>
          <summary>{counted(back.length, 'piece')} back on</summary>
          <ol className="way">
            {back.map((s) => (
              <BackLine key={s.off.step} job={job} step={s} />
            ))}
          </ol>
        </details>
      )}
    </section>
  );
}

function BackLine({ job, step }: { job: Job; step: BackStep }) {
  const { off, state } = step;
  // what is back on has as new only what was fitted: a part of no list was not
  const news = state === 'back' ? step.renew.filter((r) => r.state === 'fitted') : step.renew;
  const late = step.renew.filter((r) => r.state === 'late' || r.state === 'not listed');
  return (
    <li>
      <span className="place">{state !== 'back' && off.bag ? `bag ${off.bag}` : ''}</span>
      <div>
        <b>{off.title}</b>
        <div className="soft">
          {[
            ...step.fasteners.map((f) => `${f.count} × ${fastenerLabel(f)}`),
            ...step.unplug.map((p) => `plug out of ${p.toLowerCase()}`),
            news.length > 0 && `new: ${news.map((r) => r.name).join(', ')}`,
            state === 'later' && `after ${listed(step.under)}`,
          ]
            .filter(Boolean)
            .join(' · ')}
        </div>
        {state === 'waits' && (
          <div className="verdict cannot-decide wraps">
            waits for{' '}
            {listed(
              step.waitsFor.flatMap((w) => w.parts.map((p) => `${p.name}${p.due ? `, due ${p.due}` : ''}`)),
            )}
          </div>
        )}
        {state !== 'back' && state !== 'waits' && late.length > 0 && (
          <div className="soft">on no list or not here: {late.map((r) => r.name).join(', ')}</div>
        )}
      </div>
      {state === 'back' ? (
        <span className="row">
          <span className="verdict pass">back on</span>
          <Link className="button quiet" href={`/job/${job.id}/put-together/${off.step}`}>
            Change
          </Link>
        </span>
      ) : (
        <Link
          className={state === 'next' ? 'button go' : state === 'can' ? 'button' : 'button quiet'}
          href={`/job/${job.id}/put-together/${off.step}`}
        >
          Put back
        </Link>
      )}
    </li>
  );
}

/** What must be proved before what would hide it. */
function Gates({ plan }: { plan: AssemblyPlan }) {
  const shown = plan.gates.filter((g) => g.state !== 'not yet');
  if (shown.length === 0) return null;
  return (
    <section className="section stack tight" aria-label="Before you go on">
      <h2>Before you go on</h2>
      <ul className="lines">
        {shown.map(({ gate, state, answer }) => (
          <li key={gate.id}>
            <div>
              <b>{gate.name}</b>
              <div className="soft">
                {[gate.demands.join(', '), answer?.words].filter(Boolean).join(' · ')}
              </div>
            </div>
            <span className={state === 'passed' ? 'verdict pass' : 'verdict cannot-decide'}>
              {state === 'passed' ? 'all so' : answer ? 'not so yet' : 'not looked at yet'}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function ForNow({ plan }: { plan: AssemblyPlan }) {
  if (plan.provisional.length === 0) return null;
  return (
    <section className="section stack tight" aria-label="In for now">
      <h2>In for now</h2>
      <ul className="lines">
        {plan.provisional.map(({ decision, state, comesBack }) => (
          <li key={decision.entry}>
            <div>
              <b>{decision.title}</b>
              <div className="soft">
                {decision.reason && `${decision.reason.replace(/\.$/, '')}. `}To be replaced:{' '}
                {shortDays(comesBack)}
              </div>
            </div>
            <span className={`verdict ${state === 'here' ? 'fail' : 'cannot-decide'}`}>
              {state === 'here' ? 'renew it now' : 'open'}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
