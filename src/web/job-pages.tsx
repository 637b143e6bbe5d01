import { Suspense, useDeferredValue } from 'react';
import { Redirect, Route, Switch } from 'wouter';
import { type Answers, type Stage, stages } from '../job/index.js';
import { JobFrame } from './frame/job-frame.js';
import { OnJob } from './frame/on-job.js';
import { OnlyThis } from './frame/only-this.js';
import { stageNames } from './frame/stage-names.js';
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
        {({ id, joint }) => <OnJob id={id}>{({ job }) => <Tighten job={job} joint={joint} />}</OnJob>}
      </Route>
      <Route path="/job/:id/take-apart/:step?">
        {({ id, step }) => <OnJob id={id}>{(answers) => <TakeApart answers={answers} step={step} />}</OnJob>}
      </Route>
      <Route path="/job/:id/put-together/:step?">
        {({ id, step }) => (
          <OnJob id={id}>{(answers) => <PutTogether answers={answers} step={step} />}</OnJob>
        )}
      </Route>
      <Route path="/job/:id/:stage">
        {({ id, stage }) => <OnJob id={id}>{(answers) => <JobPage answers={answers} stage={stage} />}</OnJob>}
      </Route>
      <Route path="/job/:id">{({ id }) => <Redirect to={`/job/${id}/intake`} />}</Route>
    </Switch>
  );
}

const isStage = (text: string): text is Stage => (stages as readonly string[]).includes(text);

function JobPage({ answers, stage }: { answers: Answers; stage: string }) {
  if (!isStage(stage)) return <Redirect to={`/job/${answers.job.id}/intake`} />;
  return (
    <JobFrame answers={answers} stage={stage}>
      <SheetInSlices answers={answers} stage={stage} />
    </JobFrame>
  );
}

/** The sheet follows the frame in slices, so that the page answers a touch while a large one is being drawn. */
function SheetInSlices({ answers, stage: goneTo }: { answers: Answers; stage: Stage }) {
  const stage = useDeferredValue(goneTo);
  const Sheet = sheets[stage];
  const gate = answers.gates.find((g) => g.stage === stage)!;
  const key = `${answers.job.id} ${stage}`;
  return (
    <OnlyThis what={`The sheet “${stageNames[stage]}”`} of={key}>
      <Suspense fallback={<p>Opening …</p>}>
        <Sheet key={key} answers={answers} job={answers.job} gate={gate} />
      </Suspense>
    </OnlyThis>
  );
}
