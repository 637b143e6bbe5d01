import { type Catalog, type Component, componentsOf as componentsOfKind } from '../../catalog/index.js';
import type { Job } from '../../job/index.js';

/** The components of this machine's kind of engine; none while the kind is not known. */
export function componentsOf(catalog: Catalog, job: Job): readonly Component[] {
  const { architecture } = job.intake;
  if (architecture === undefined || architecture === 'unknown') return [];
  return componentsOfKind(catalog, architecture);
}

/** Words to a handle: "Head bolts, long" → "head-bolts-long". */
export function handleOf(words: string): string {
  const handle = words
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 70);
  return handle || 'unnamed';
}
