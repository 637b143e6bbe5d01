import { Link } from 'wouter';
import type { Job, PlannedStep, TeardownPlan } from '../../../job/index.js';
import { counted, listed, minutesWords } from '../../../phrase/index.js';
import { fastenerWords } from './words.js';

/** The least teardown as a list: what comes off, in which order, why, and how long it takes. */
export function Way({ job, plan }: { job: Job; plan: TeardownPlan }) {
  const { steps, minutes, elapsed, proof } = plan;
  if (steps.length === 0) return null;
  return (
    <section className="section stack tight" aria-label="The way there">
      <div className="row apart">
        <h2>The way there</h2>
        <span>
          <b className="minutes">{minutesWords(minutes)}</b> <span className="soft">of work</span>
          {elapsed > minutes + 0.5 && (
            <>
              , <b className="minutes">{minutesWords(elapsed)}</b>{' '}
              <span className="soft">with the waiting</span>
            </>
          )}
        </span>
      </div>
      <ol className="way">
        {steps.map((step, i) => (
          <Step key={step.step} step={step} place={i + 1} />
        ))}
      </ol>
      <p className="soft">
        {proof} {minutesFrom(plan)}
      </p>
      <div className="row">
        <Link className="button go" href={`/job/${job.id}/take-apart`}>
          Take it apart step by step
        </Link>
      </div>
      <details>
        <summary>Why this order</summary>
        <ol className="why">
          {steps.map((step) => (
            <li key={step.step}>
              <b>{step.name}</b>: {why(step)}
            </li>
          ))}
        </ol>
      </details>
    </section>
  );
}

/** Where the minutes come from. */
function minutesFrom({ steps, engine }: TeardownPlan): string {
  const own = steps.filter(({ id }) => engine.timed.has(id)).length;
  if (own === 0) return 'Minutes are the catalog’s usual ones (trade judgement, no source).';
  const rest = own < steps.length ? ', the others the catalog’s usual ones (trade judgement, no source)' : '';
  return `Minutes of ${counted(own, 'step')} are this shop’s own, by the clock of its logs${rest}.`;
}

function Step({ step, place }: { step: PlannedStep; place: number }) {
  const missing = step.views.filter((v) => !v.shown).length;
  const isGoal = step.components.length === 1 && step.goals.includes(step.name);
  return (
    <li className={isGoal ? 'goal' : undefined}>
      <span className="place">{place}</span>
      <div>
        <b>{step.name}</b>
        {isGoal && <span className="verdict"> wanted</span>}
        <div className="soft">
          {[
            step.fasteners.map(fastenerWords).join('; '),
            step.plugs.length > 0 && `plug ${listed(step.plugs.map((p) => p.name.toLowerCase()))}`,
            missing > 0 && counted(missing, 'picture first', 'pictures first'),
          ]
            .filter(Boolean)
            .join(' · ')}
        </div>
        {step.hides && <div className="care">! stays unseen inside: {step.hides}</div>}
        {step.waitBefore >= 1 && (
          <div className="care">! {minutesWords(step.waitBefore)} of waiting before it</div>
        )}
      </div>
      <span className="minutes">{minutesWords(step.minutes)}</span>
    </li>
  );
}

/** What a step is for, in words. */
function why({ how, holds, goals, name, hides }: PlannedStep): string {
  const reasons = [
    goals.includes(name) && 'it is wanted',
    holds.length > 0 && `it is in the way of ${listed(holds)}`,
    how === 'whole' &&
      `it leaves in one piece because that is quicker${hides ? `; hidden inside: ${hides}` : ''}`,
  ].filter(Boolean);
  return reasons.length > 0 ? reasons.join('; ') : `on the way to ${listed(goals)}`;
}
