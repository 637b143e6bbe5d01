import { useState } from 'react';
import { Link } from 'wouter';
import { doneSteps, type From, type Job, type Tally, tally, tightening } from '../../../job/index.js';
import { usePrimary } from '../../frame/job-frame.js';
import { Sheet, type SheetProps } from '../../frame/sheet.js';
import { Button } from '../../parts/act.js';
import { NumberWithOrigin } from '../../parts/number.js';
import { JointDrawing } from './joint-drawing.js';
import { LayOutJoint } from './lay-out-joint.js';
import { PutBack } from './put-back.js';

/** Putting together: what came off goes back in reverse, nothing left over, every joint tight. */
export function Assembly({ job, gate }: SheetProps) {
  const counts = tally(job);
  const [laying, setLaying] = useState<From<'joint'> | 'new'>();
  usePrimary({ label: 'Lay out a joint to tighten', act: () => setLaying('new') });
  const joints = [...job.joints.values()];
  const tight = joints.filter((j) => tightening(job, j).next === undefined).length;
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={headline(counts, joints.length, tight)}
      say="The last piece off is the first back on. Turn the shaft after each stage: what binds now binds worse when it is closed."
    >
      <section className="stack section">
        <h2>Joints</h2>
        {joints.length === 0 && (
          <p className="empty">
            No joint is laid out. Lay out the cylinder head, the sump or any group of bolts that is tightened
            together: holes, torque, passes and order. Then tighten it one bolt at a time.
          </p>
        )}
        <div className="joints">
          {joints.map((j) => (
            <JointCard key={j.joint} job={job} joint={j} onChange={() => setLaying(j)} />
          ))}
        </div>
      </section>
      <BackOn job={job} counts={counts} />
      <LayOutJoint job={job} joint={laying} onClose={() => setLaying(undefined)} />
    </Sheet>
  );
}

function headline({ notPutBack, stillPlugged }: Tally, joints: number, tight: number): string {
  if (notPutBack.length > 0)
    return `${notPutBack.length} ${notPutBack.length === 1 ? 'piece' : 'pieces'} to put back`;
  if (stillPlugged.length > 0) return 'Everything is back on, but a port is still plugged';
  if (tight < joints) return `${joints - tight} ${joints - tight === 1 ? 'joint' : 'joints'} to tighten`;
  return joints > 0 ? 'Together and tight' : 'Put it together';
}

function JointCard({ job, joint, onChange }: { job: Job; joint: From<'joint'>; onChange: () => void }) {
  const progress = tightening(job, joint);
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
          in {progress.passes} {progress.passes === 1 ? 'pass' : 'passes'} · order:{' '}
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

/** What came off, last off first, with a tick for what is back. */
function BackOn({ job, counts }: { job: Job; counts: Tally }) {
  const [putting, setPutting] = useState<From<'step'>>();
  const off = doneSteps(job, 'teardown').toReversed();
  const missing = new Set(counts.notPutBack.map((s) => s.step));
  if (off.length === 0) return null;
  return (
    <section className="section stack tight">
      <h2>Back on, last off first</h2>
      <ul className="lines">
        {off.map((s) => (
          <li key={s.step}>
            <div>
              <b>{s.title}</b>
              <div className="soft">
                {[
                  s.bag && `bag ${s.bag}`,
                  ...(s.fasteners ?? []).map(
                    (f) => `${f.count} × ${[f.size, f.length, f.what].filter(Boolean).join(' ')}`,
                  ),
                ]
                  .filter(Boolean)
                  .join(' · ')}
              </div>
            </div>
            {missing.has(s.step) ? (
              <Button onClick={() => setPutting(s)}>Put back</Button>
            ) : (
              <span className="verdict pass">back on</span>
            )}
          </li>
        ))}
      </ul>
      <Leftovers counts={counts} />
      <PutBack job={job} step={putting} onClose={() => setPutting(undefined)} />
    </section>
  );
}

function Leftovers({ counts }: { counts: Tally }) {
  const uneven = counts.fasteners.filter((f) => f.in !== f.out);
  if (uneven.length === 0) return null;
  return (
    <div className="scroll-x">
      <table>
        <thead>
          <tr>
            <th>Fasteners</th>
            <th>came out</th>
            <th>went back</th>
          </tr>
        </thead>
        <tbody>
          {uneven.map((f) => (
            <tr key={f.label}>
              <td>{f.label}</td>
              <td>{f.out}</td>
              <td>{f.in}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
