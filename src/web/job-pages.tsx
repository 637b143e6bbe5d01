import { Link, Redirect, Route, Switch } from 'wouter';
import { type Stage, stages } from '../job/index.js';
import type { JobView } from './data/answers.js';
import { JobFrame } from './frame/job-frame.js';
import { OnJob } from './frame/on-job.js';
import { Page } from './frame/page.js';
import { later } from './later.js';
import { sheets } from './sheets/sheets.js';

const Tighten = later(() => import('./sheets/assembly/tighten.js').then((m) => m.Tighten));
const TakeApart = later(() => import('./sheets/teardown/take-apart.js').then((m) => m.TakeApart));
const PutTogether = later(() => import('./sheets/assembly/put-together.js').then((m) => m.PutTogether));

/** One job: its sheets, and its steps one at a time. */
export function JobPages() {
  return (
    <Switch>
      <Route path="/job/:id/tighten/:joint">
        {({ id, joint }) => <OnJob id={id}>{(view) => <Tighten view={view} joint={joint} />}</OnJob>}
      </Route>
      <Route path="/job/:id/take-apart/:step?">
        {({ id, step }) => <OnJob id={id}>{(view) => <TakeApart view={view} step={step} />}</OnJob>}
      </Route>
      <Route path="/job/:id/put-together/:step?">
        {({ id, step }) => <OnJob id={id}>{(view) => <PutTogether view={view} step={step} />}</OnJob>}
      </Route>
      <Route path="/job/:id/:stage">
        {({ id, stage }) => <OnJob id={id}>{(view) => <JobPage view={view} stage={stage} />}</OnJob>}
      </Route>
      <Route path="/job/:id">{({ id }) => <Redirect to={`/job/${id}/intake`} />}</Route>
    </Switch>
  );
}

const isStage = (text: string): text is Stage => (stages as readonly string[]).includes(text);

function JobPage({ view, stage }: { view: JobView; stage: string }) {
  const { id } = view.job;
  if (!isStage(stage)) return <Redirect to={`/job/${id}/intake`} />;
  if (view.job.log.length === 0) {
    return (
      <Page title={view.loading ? 'Opening the job …' : 'There is no such job'}>
        {!view.loading && (
          <p>
            {view.error?.message ?? 'No tag with this address hangs in the shop.'}{' '}
            <Link href="/">Back to the bench</Link>
          </p>
        )}
      </Page>
    );
  }
  const Sheet = sheets[stage];
  const gate = view.gates.find((g) => g.stage === stage)!;
  return (
    <JobFrame view={view} stage={stage}>
      <Sheet key={`${id} ${stage}`} answers={view.answers} job={view.job} gate={gate} />
    </JobFrame>
  );
}
