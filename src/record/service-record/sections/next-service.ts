import { capital, dayWords, sentence } from '../../../phrase/index.js';
import type { Block, Item, Section } from '../section.js';
import type { Sheet } from '../sheet.js';

/** What falls due, and what the owner was told when taking the machine. */
export function nextService({ answers, job, shop }: Sheet): Section | undefined {
  const { handOver } = job;
  const listed = new Set(handOver?.nextDue.map(({ what }) => what));
  // written down at the hand-over, or owed since: a part put back for now falls due either way
  const owed = handOver ? answers.dueFromProvisionals.filter(({ what }) => !listed.has(what)) : [];
  // before the hand-over it is what usually falls due on an engine like this one
  const due = [...(handOver?.nextDue ?? (job.steps.size > 0 ? answers.nextDue : [])), ...owed].map(
    ({ what, when }): Item => ({ lead: `${capital(dayWords(when))}:`, words: sentence(what) }),
  );
  const told: Item[] = handOver?.told ? [{ lead: 'Told at hand-over:', words: sentence(handOver.told) }] : [];
  if (due.length + told.length === 0) return undefined;
  const blocks: Block[] = [{ type: 'list', items: [...due, ...told] }];
  const note = shop.settings['next-due-note'];
  if (note && due.length > 0) blocks.push({ type: 'words', words: note, soft: true });
  return { id: 'next', title: 'Next service', place: 'column', blocks };
}
