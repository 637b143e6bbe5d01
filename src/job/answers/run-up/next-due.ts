import type { Answers } from '../answers.js';

/** What falls due on this very engine: nothing of pieces that it has not, nothing on a machine that runs no more. */
export function nextDueOf({
  job,
  catalog,
  engine,
}: Answers): { readonly what: string; readonly when: string }[] {
  const choice = job.decisions.findLast((d) => d.about === 'machine')?.choice;
  if (choice === 'scrap' || choice === 'donor' || choice === 'declined') return [];
  return catalog.nextDue.filter((due) => engine.concerns(due)).map(({ what, due }) => ({ what, when: due }));
}
