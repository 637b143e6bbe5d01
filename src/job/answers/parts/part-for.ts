import type { From, Job } from '../../job.js';

const plain = (words: string): string =>
  words
    .toLowerCase()
    .replace(/\(.*?\)/g, ' ')
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();

/** Not on the machine and not on the bench. */
const notHere: ReadonlySet<From<'part'>['state']> = new Set(['wanted', 'ordered', 'mismatch']);

export const isLate = (part: From<'part'>): boolean => !part.consumable && notHere.has(part.state);

/**
 * The part on the list that renews a one-time part of a component: one that names the component and has the same
 * words, or the same words alone where it names no component.
 */
export function partFor(job: Job, component: string, oneTimePart: string): From<'part'> | undefined {
  const wanted = plain(oneTimePart);
  const words = wanted.split(' ').filter((word) => word.length > 2);
  const alike = (part: From<'part'>) => {
    const name = plain(part.name);
    return name.includes(wanted) || (words.length > 0 && words.every((word) => name.includes(word)));
  };
  const parts = [...job.parts.values()].filter((part) => part.state !== 'dropped' && alike(part));
  return (
    parts.find((part) => part.component === component) ?? parts.find((part) => part.component === undefined)
  );
}
