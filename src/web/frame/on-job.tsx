import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { Answers } from '../../job/index.js';
import { AnswersOnScreen, useJob } from '../data/answers.js';
import { BellsOf } from './bells.js';
import { Page } from './page.js';

/** A job on screen: everything below can ask for what is computed from it. */
export function OnJob({ id, children }: { id: string; children: (answers: Answers) => ReactNode }) {
  const { answers, error } = useJob(id);
  if (!answers) return <Page title="Opening the job …">{undefined}</Page>;
  if (answers.job.log.length > 0)
    return (
      <AnswersOnScreen value={answers}>
        <BellsOf answers={answers} />
        {children(answers)}
      </AnswersOnScreen>
    );
  return (
    <Page title={error ? 'This job is not on this device' : 'There is no such job'}>
      <p>
        {error?.message ?? 'No tag with this address hangs in the shop.'}{' '}
        {error && 'A job that was open here once opens again without a network. '}
        <Link href="/">Back to the bench</Link>
      </p>
    </Page>
  );
}
