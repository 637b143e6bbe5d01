import { Link } from 'wouter';
import { type JobSummary, stageNames } from '../../job/index.js';
import { weekDay } from '../../phrase/index.js';
import { signature } from '../data/device.js';
import { today } from '../parts/today.js';

/** The job that this hand, or else anybody, worked on last, and the way back to that very place. */
export function WhereWasI({ open }: { open: readonly JobSummary[] }) {
  const job = inHandLast(open, signature());
  if (!job?.last) return null;
  const { tag, machine, title, id, last } = job;
  const mine = last.by === signature();
  return (
    <section className="card where-was-i" aria-label="Where was I">
      <div>
        <p className="next-words">
          {mine ? 'You were at' : 'Last worked on:'} tag {tag}, {machine || title || 'machine not named yet'}
        </p>
        <p>
          {stageNames[last.stage]} · {last.words}
        </p>
        <p className="soft">
          {weekDay(last.at, today())}, {last.at.slice(11, 16)}
          {!mine && `, by ${last.by}`}
        </p>
      </div>
      <Link className="button go" href={`/job/${id}/${last.page}`}>
        Go on there
      </Link>
    </section>
  );
}

function inHandLast(open: readonly JobSummary[], by: string): JobSummary | undefined {
  const begun = open.filter(({ last }) => last !== undefined);
  const own = begun.filter(({ last }) => last!.by === by);
  return (own.length > 0 ? own : begun).reduce<JobSummary | undefined>(
    (latest, job) => (latest && Date.parse(latest.last!.at) >= Date.parse(job.last!.at) ? latest : job),
    undefined,
  );
}
