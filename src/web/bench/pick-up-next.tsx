import { type PlannedJob, wallTime } from '../../job/index.js';
import { weekDay, withDays } from '../../phrase/index.js';
import { today } from '../parts/today.js';
import type { BenchView } from './use-bench-plan.js';

/** A wall-clock minute as it is said: "Fri Nov 27, 15:20". */
export const momentWords = (minute: number): string => {
  const at = wallTime(minute);
  return `${weekDay(at.slice(0, 10), today())}, ${at.slice(11)}`;
};

/** One sentence about what to do now, and each promise that cannot be kept. */
export function PickUpNext({ view }: { view: BenchView }) {
  const { plan, asked, wrong } = view;
  if (wrong) return <p className="verdict cannot-decide wraps">No plan for the days to come: {wrong}</p>;
  if (!plan || !asked)
    return (
      <section className="card first" aria-label="What to pick up next">
        <p className="next-words soft">Planning the bench …</p>
      </section>
    );
  const late = plan.jobs.filter((job) => job.late > 0);
  const closed = plan.next !== undefined && plan.next.from > asked.origin;
  return (
    <section className="card first stack tight" aria-label="What to pick up next">
      <p className="next-words">{withDays(plan.says, today())}</p>
      {closed && <p className="soft">From {momentWords(plan.next!.from)}.</p>}
      {late.map((job) => (
        <p key={job.work.job} className="verdict fail wraps">
          {lateWords(job)}
        </p>
      ))}
    </section>
  );
}

function lateWords({ work, blocks, ready }: PlannedJob): string {
  const held = blocks.filter(({ heldUntil }) => heldUntil !== undefined);
  const why = held.sort((a, b) => b.heldUntil! - a.heldUntil!)[0]?.waitsFor;
  const when = `Tag ${work.tag} is promised for ${weekDay(work.promised!, today())} and is ready ${momentWords(ready!)}`;
  return why === undefined ? `${when}.` : `${when}: ${withDays(why, today())}.`;
}
