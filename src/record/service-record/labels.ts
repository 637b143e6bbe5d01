import type { Architecture } from '../../catalog/index.js';
import type { Body } from '../../job/index.js';
import { handleWords } from './words.js';

export const architectureLabels: Readonly<Record<Architecture, string>> = {
  'side-valve': 'side-valve engine',
  'overhead-valve': 'overhead-valve engine',
  'two-stroke': 'two-stroke engine',
};

const choiceLabels: Readonly<Record<string, string>> = {
  repair: 'repaired',
  'part-repair': 'repaired in part',
  donor: 'kept for parts',
  scrap: 'scrapped',
  reuse: 'used again',
  renew: 'renewed',
  recondition: 'reconditioned',
  provisional: 'put back for now',
  declined: 'declined by the owner',
  repaired: 'repaired',
  excluded: 'seen sound',
  'repair-failed': 'the repair did not hold',
  service: 'wanted as service',
  'ask-owner': 'the owner is asked',
};

/** The same words about a machine are a choice that is still ahead, not something done. */
const machineChoices: Readonly<Record<string, string>> = {
  repair: 'to be repaired',
  'part-repair': 'to be repaired in part',
  donor: 'to be kept for parts',
  scrap: 'to be scrapped',
};

/** What was decided, in a word or two; a handle of the shop's own is printed as its words. */
export function choiceLabel(
  { about, choice }: Pick<Body<'decision'>, 'about' | 'choice'>,
  isDone = false,
): string {
  // a handle may be called like something that every object has
  const said = (labels: typeof choiceLabels) => (Object.hasOwn(labels, choice) ? labels[choice] : undefined);
  return (
    (about === 'machine' && !isDone ? said(machineChoices) : undefined) ??
    said(choiceLabels) ??
    handleWords(choice)
  );
}
