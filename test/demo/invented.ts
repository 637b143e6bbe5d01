import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fold, type Job, type RawEntry } from '../../src/job/index.js';

export const demoFolder = resolve(import.meta.dirname, '../../demo');
export const jobNames = ['market-garden-pump', 'school-mower'] as const;

export function entriesOf(name: (typeof jobNames)[number], folder = demoFolder): readonly RawEntry[] {
  const text = readFileSync(join(folder, 'jobs', `${name}.json`), 'utf8');
  return (JSON.parse(text) as { entries: RawEntry[] }).entries;
}

export function jobOf(entries: readonly RawEntry[]): Job {
  return fold(entries[0]!.job, entries);
}

export const allEntries = jobNames.flatMap((name) => entriesOf(name));
export const pump = jobOf(entriesOf('market-garden-pump'));
export const mower = jobOf(entriesOf('school-mower'));
