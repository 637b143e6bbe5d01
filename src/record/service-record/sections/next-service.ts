import { capital, sentence, shortDays } from '../../../phrase/index.js';
import type { Block, Item, Section } from '../section.js';
import type { Sheet } from '../sheet.js';

/** As written down at the hand-over; before it, what usually falls due on an engine like this one. */
export const dueNext = ({ job, answers }: Pick<Sheet, 'job' | 'answers'>) =>
  job.handOver?.nextDue ?? (job.steps.size > 0 ? answers.nextDue : []);

/** What falls due, and what the owner was told when taking the machine. */
export function nextService({ answers, job, shop }: Sheet): Section | undefined {
  const { handOver } = job;
  const listed = new Set(handOver?.nextDue.map(({ what }) => what));
  // written down at the hand-over, or owed since: a part put back for now falls due either way
  const owed = handOver ? answers.dueFromProvisionals.filter(({ what }) => !listed.has(what)) : [];
  const due = [...dueNext({ job, answers }), ...owed].map(
    ({ what, when }): Item => ({ lead: `${capital(shortDays(when))}:`, words: sentence(what) }),
  );
  const told: Item[] = handOver?.told ? [{ lead: 'Told at hand-over:', words: sentence(handOver.told) }] : [];
  if (due.length + told.length === 0) return undefined;
  const blocks: Block[] = [{ type: 'list', items: [...due, ...told] }];
  const note = shop.settings['next-due-note'];
  if (note && due.length > 0) blocks.push({ type: 'words', words: note, soft: true });
  const title = due.length > 0 ? 'Next service' : 'What the owner was told';
  return { id: 'next', title, place: 'column', blocks };
}
