import { useLocation } from 'wouter';
import type { LastAct } from '../../../job/index.js';
import { useAnswers } from '../../data/answers.js';
import { writeAll } from '../../data/outbox.js';
import { useAct } from '../../parts/act.js';

/** Strikes what an act wrote. */
export const strikeAct = (job: string, { entries }: LastAct) =>
  writeAll(
    job,
    entries.map((entry) => ({ kind: 'strike', body: { entry, reason: 'back in step mode' } })),
  );

/** The back key of step mode: it takes back what was last done, or leads to the bolts where that was one. */
export function useTakeBack(): { readonly words: string; readonly act: () => void } | undefined {
  const { job, lastAct } = useAnswers();
  const { act, busy } = useAct();
  const [, go] = useLocation();
  if (!lastAct) return undefined;
  if (lastAct.what === 'bolt')
    return { words: 'Back to the bolts', act: () => go(`/job/${job.id}/tighten/${lastAct.joint}`) };
  const back = async () => {
    if (!busy && (await act(() => strikeAct(job.id, lastAct))) && lastAct.what === 'piece')
      go(`/job/${job.id}/put-together`);
  };
  const words = lastAct.what === 'note' ? 'Take back the note' : `Take back: ${lastAct.words}`;
  return { words, act: () => void back() };
}
