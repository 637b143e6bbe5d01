import { useDeferredValue, useState } from 'react';
import { uuidv7 } from 'uuidv7';
import { Link, useLocation } from 'wouter';
import { daysBetween, type JobSummary, restDays } from '../../job/index.js';
import { weekDay, withDays } from '../../phrase/index.js';
import { api } from '../data/api.js';
import { write } from '../data/outbox.js';
import { queries, useHandedOver, useJobCounts, useOpenJobs } from '../data/queries.js';
import { countIn } from '../form/amount.js';
import { Page } from '../frame/page.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { Dialog } from '../parts/dialog.js';
import { TextField } from '../parts/field.js';
import { today } from '../parts/today.js';
import { FindField, FoundJobs, useFindWords } from './find.js';
import { momentWords, PickUpNext } from './pick-up-next.js';
import { BenchTimeline } from './timeline.js';
import { type BenchView, useBenchPlan } from './use-bench-plan.js';
import { WhereWasI } from './where-was-i.js';

/** Handed over, as many as are looked for by eye. */
const mostGone = 50;
/** So few are read before anybody has looked. */
const mostBehind = 20;

const noJobs: readonly JobSummary[] = [];

/** All open jobs, each by its tag; what is looked for stands in their place. */
export function Bench() {
  const { data, isPending, error } = useOpenJobs();
  const open = data ?? noJobs;
  const counts = useJobCounts();
  const plan = useBenchPlan(open);
  const [words, setWords] = useFindWords();
  const asked = useDeferredValue(words.trim());
  if (isPending) return <Page title="Bench">Looking at the bench …</Page>;
  if (!data) return <NotSeenYet words={error?.message} />;
  return (
    <Page title={benchTitle(open.length)}>
      <Wrong words={error?.message} />
      {(counts?.all ?? open.length) > 0 && <FindField words={words} onChange={setWords} />}
      {counts !== undefined && counts.behind > mostBehind && (
        <p className="soft">
          Reading the jobs: {counts.all - counts.behind} of {counts.all}. Those not read yet are not listed.
        </p>
      )}
      {asked === '' ? (
        <OnTheBench open={open} plan={plan} counts={counts} />
      ) : (
        <FoundJobs words={asked} open={open} />
      )}
    </Page>
  );
}

function benchTitle(jobs: number): string {
  if (jobs === 0) return 'The bench is empty';
  return jobs === 1 ? 'One machine on the bench' : `${jobs} machines on the bench`;
}

function OnTheBench(props: {
  open: readonly JobSummary[];
  plan: BenchView;
  counts: ReturnType<typeof useJobCounts>;
}) {
  const { open, plan, counts } = props;
  const gone = useHandedOver(mostGone);
  const [hanging, setHanging] = useState(false);
  return (
    <>
      {open.length === 0 && <EmptyBench />}
      <WhereWasI open={open} />
      {open.length > 0 && <PickUpNext view={plan} />}
      <div className="row">
        <Button look="go" onClick={() => setHanging(true)}>
          Hang a tag on a machine
        </Button>
        {open.length === 0 && <DemoButton />}
      </div>
      <TagList jobs={open} plan={plan} />
      <BenchTimeline view={plan} jobs={open.length} />
      {gone.length > 0 && (
        <details open={gone.some((j) => j.invented)}>
          <summary>Handed over ({Math.max(gone.length, counts?.handedOver ?? 0)})</summary>
          <TagList jobs={gone} />
          {gone.length < (counts?.handedOver ?? 0) && (
            <p className="soft">The latest {gone.length} are shown.</p>
          )}
        </details>
      )}
      <HangTag
        jobs={open}
        next={1 + (counts?.greatestTag ?? 0)}
        open={hanging}
        onClose={() => setHanging(false)}
      />
    </>
  );
}

/** An empty bench is said of a store that was asked, never of one that could not be. */
function NotSeenYet({ words }: { words: string | undefined }) {
  return (
    <Page title="The bench has not been seen from this device yet">
      <Wrong words={words} />
      <p>
        Come within reach of the shop’s network once: from then on the bench and its open jobs stand here
        without it too. The reference desk needs no store.
      </p>
      <div>
        <Button look="go" onClick={() => void queries.refetchQueries()}>
          Look again
        </Button>
      </div>
    </Page>
  );
}

function EmptyBench() {
  return (
    <div className="empty stack tight">
      <p>
        Begin with the machine in front of you: hang a tag on it, write down what the owner says, photograph
        it before a wrench moves. From there each stage says what is still open.
      </p>
      <p>
        Or open an invented machine first, to see every stage filled in. It can be removed again in one act.
      </p>
    </div>
  );
}

function DemoButton() {
  const { wrong, busy, act } = useAct();
  const load = () =>
    act(async () => {
      await api.loadDemo();
      await queries.invalidateQueries();
    });
  return (
    <>
      <Button disabled={busy} onClick={() => void load()}>
        {busy ? 'Opening …' : 'Open the invented machine'}
      </Button>
      <Wrong words={wrong} />
    </>
  );
}

function TagList({ jobs, plan }: { jobs: readonly JobSummary[]; plan?: BenchView }) {
  if (jobs.length === 0) return null;
  return (
    <ul className="lines">
      {jobs.map((j) => (
        <li key={j.id} className="tag-line">
          <Link
            href={`/job/${j.id}/${opensAt(j)}`}
            className="tag"
            aria-label={`Tag ${j.tag}: ${j.machine || j.title}`}
          >
            <i aria-hidden="true" />
            <b>{j.tag}</b>
          </Link>
          <div>
            <b>{j.machine || j.title || 'Machine not named yet'}</b>
            {j.invented && <span className="chip">invented</span>}
            <div className="soft">{j.complaint}</div>
            {plan && <Standing view={plan} job={j.id} />}
          </div>
          <small>{(j.lastAt ?? j.opened ?? '').slice(0, 10)}</small>
        </li>
      ))}
    </ul>
  );
}

/** The sheet in hand; of a job that lay, what one has forgotten of it first. */
function opensAt({ last, handedOver }: JobSummary): string {
  if (!last) return 'intake';
  const lay = !handedOver && daysBetween(last.at, new Date().toISOString()) >= restDays;
  return lay ? 'where-was-i' : last.stage;
}

/** What the job waits for, and when it can be ready. Its place is kept while that is worked out: no row moves under a finger. */
function Standing({ view: { plan, wrong }, job }: { view: BenchView; job: string }) {
  const planned = plan?.jobs.find(({ work }) => work.job === job);
  if (!planned) return !plan && !wrong && <div className="soft standing-to-come">…</div>;
  const { work, ready, late } = planned;
  return (
    <>
      {work.waits.length > 0 && (
        <div>
          waits for:{' '}
          {work.waits
            .slice(0, 3)
            .map((wait) => withDays(wait, today()))
            .join('; ')}
        </div>
      )}
      {ready !== undefined && (
        <div className={late > 0 ? 'verdict fail wraps' : 'soft'}>
          ready {momentWords(ready)}
          {work.promised && `, promised for ${weekDay(work.promised, today())}`}
        </div>
      )}
    </>
  );
}

/** The tag's number hangs on the machine; the next free one is offered. */
function HangTag({
  jobs,
  next,
  open,
  onClose,
}: {
  /** the open ones */
  jobs: readonly JobSummary[];
  next: number;
  open: boolean;
  onClose: () => void;
}) {
  const [tag, setTag] = useState('');
  const [title, setTitle] = useState('');
  const { wrong, act } = useAct();
  const [, go] = useLocation();
  const taken = jobs.some((j) => String(j.tag) === tag.trim());
  const hang = async () => {
    const id = uuidv7();
    const hung = () =>
      write(id, 'open', {
        tag: tag.trim() === '' ? next : countIn('Tag number', tag),
        title: title.trim(),
      });
    if (await act(async () => hung())) go(`/job/${id}/intake`);
  };
  return (
    <Dialog title="Hang a tag on a machine" open={open} onClose={onClose}>
      <TextField
        label="Tag number"
        value={tag}
        onChange={setTag}
        inputMode="numeric"
        placeholder={String(next)}
        help="The number on the tag that hangs on the machine. Left empty, it is the next free one."
        wrong={taken ? `Tag ${tag.trim()} already hangs on an open job` : undefined}
      />
      <TextField
        label="What it is"
        value={title}
        onChange={setTitle}
        placeholder="water pump, overhead-valve"
      />
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Not now</Button>
        <Button look="go" disabled={taken} onClick={() => void hang()}>
          Hang the tag
        </Button>
      </div>
    </Dialog>
  );
}
