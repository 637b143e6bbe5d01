import { Suspense, useDeferredValue, useMemo } from 'react';
import { Redirect, Route, Switch } from 'wouter';
import { type Answers, lastDoneOf, type Stage, stageNames, stages } from '../job/index.js';
import { AnswersOnScreen } from './data/answers.js';
import { Ahead } from './frame/ahead.js';
import { JobFrame } from './frame/job-frame.js';
import { OnJob } from './frame/on-job.js';
import { OnlyThis } from './frame/only-this.js';
import { later } from './later.js';
import { sheets } from './sheets/sheets.js';

const Tighten = later(() => import('./sheets/assembly/tighten.js').then((m) => m.Tighten));
const TakeApart = later(() => import('./sheets/teardown/take-apart.js').then((m) => m.TakeApart));
const OnTheMat = later(() => import('./mat/on-the-mat.js').then((m) => m.OnTheMat));
const WhereWasI = later(() => import('./sheets/where-was-i.js').then((m) => m.WhereWasISheet));
const FilmPage = later(() => import('./film/film-page.js').then((m) => m.FilmPage));
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
      <Route path="/job/:id/on-the-mat/:about?">
        {({ id, about }) => (
          <OnJob id={id}>{(answers) => <OnTheMat answers={answers} about={about} />}</OnJob>
        )}
      </Route>
      <Route path="/job/:id/film/:stage?">
        {({ id, stage }) => (
          <OnJob id={id}>{(answers) => <FilmPage answers={answers} stage={stage} />}</OnJob>
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

/** A touch is answered first; the stages and the sheet follow in slices, so that the page never stands still. */
function JobPage({ answers: now, stage: goneTo }: { answers: Answers; stage: string }) {
  const answers = useDeferredValue(now);
  const stage = useDeferredValue(goneTo);
  const sheet = useMemo(
    () => (isStage(stage) ? <SheetOf answers={answers} stage={stage} /> : <Told answers={answers} />),
    [answers, stage],
  );
  const ahead = useMemo(() => <Ahead pieces={aheadOf(answers, stage)} />, [answers, stage]);
  const telling = goneTo === 'where-was-i';
  if (!telling && !isStage(goneTo)) return <Redirect to={`/job/${now.job.id}/intake`} />;
  const at = isStage(goneTo) ? goneTo : (lastDoneOf(now.job)?.stage ?? 'intake');
  const following = answers !== now || stage !== goneTo;
  return (
    <JobFrame
      job={now.job}
      answers={answers}
      stage={at}
      telling={telling}
      following={following}
      ahead={ahead}
    >
      {sheet}
    </JobFrame>
  );
}

/** What the stages and the sheet will ask for, in pieces. */
const aheadOf = (answers: Answers, stage: string): (() => void)[] => [
  () => void answers.engine,
  () => void answers.teardown,
  () => void answers.listedRules,
  ...(stage === 'findings' ? answers.findingsAhead : [() => void answers.machine]),
  () => void answers.inference,
  () => void answers.gates,
];

const Told = ({ answers }: { answers: Answers }) => (
  <AnswersOnScreen value={answers}>
    <OnlyThis what="The sheet “Where was I”" of={answers.job.id}>
      <Suspense fallback={<p>Opening …</p>}>
        <WhereWasI answers={answers} />
      </Suspense>
    </OnlyThis>
  </AnswersOnScreen>
);

function SheetOf({ answers, stage }: { answers: Answers; stage: Stage }) {
  const Sheet = sheets[stage];
  const gate = answers.gates.find((g) => g.stage === stage)!;
  const key = `${answers.job.id} ${stage}`;
  return (
    <AnswersOnScreen value={answers}>
      <OnlyThis what={`The sheet “${stageNames[stage]}”`} of={key}>
        <Suspense fallback={<p>Opening …</p>}>
          <Sheet key={key} answers={answers} job={answers.job} gate={gate} />
        </Suspense>
      </OnlyThis>
    </AnswersOnScreen>
  );
}
