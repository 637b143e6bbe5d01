import type { ReactNode } from 'react';
import { AnswersOnScreen, type JobView, useJob } from '../data/answers.js';

/** A job on screen: everything below can ask for what is computed from it. */
export function OnJob({ id, children }: { id: string; children: (view: JobView) => ReactNode }) {
  const view = useJob(id);
  return <AnswersOnScreen value={view.answers}>{children(view)}</AnswersOnScreen>;
}
