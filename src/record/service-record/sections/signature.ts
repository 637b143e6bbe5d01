import type { Job } from '../../../job/index.js';
import { counted, joined, plural } from '../../../phrase/index.js';
import type { Section } from '../section.js';
import type { Sheet } from '../sheet.js';

/** Who received it, and how much of the log this record stands on. */
export function signature({ job, detail }: Sheet): Section {
  const receivedBy = job.handOver?.receivedBy;
  return {
    id: 'signature',
    title: 'Received',
    place: 'column',
    blocks: [
      {
        type: 'signature',
        lines: [receivedBy ? `Received by ${receivedBy}` : 'Received by', 'For the shop', 'Date'],
        words: joined([logWords(job), detail === 'brief' ? briefNote : undefined], ' '),
      },
    ],
  };
}

const briefNote = 'This is the brief form; the full one has the words of every finding, step and check.';

/** Struck lines are not printed, but nobody can say that they were hidden. */
export function logWords(job: Job): string {
  const struck = job.log.filter((line) => line.struck).length;
  const unknown = job.log.filter((line) => !line.known && !line.struck).length;
  const spoken = job.spokenNotes.length;
  const notes = job.notes.length + spoken;
  const saidAloud = job.log.filter((line) => line.entry.spoken && !line.struck).length;
  const counts = [
    counted(job.log.length, 'line'),
    struck > 0 ? `${struck} struck` : undefined,
    saidAloud > 0 ? `${saidAloud} answered by voice` : undefined,
  ];
  const kept = [
    notes > 0
      ? `${counted(notes, 'working note')} of the shop ${plural(notes, 'is', 'are')} not printed${spokenWords(notes, spoken)}.`
      : undefined,
    unknown > 0
      ? `${counted(unknown, 'line')} written by another version of the program ${plural(unknown, 'is', 'are')} not printed.`
      : undefined,
  ];
  return [`From the shop’s log of this job: ${counts.filter(Boolean).join(', ')}.`, ...kept]
    .filter(Boolean)
    .join(' ');
}

function spokenWords(notes: number, spoken: number): string {
  if (spoken === 0) return '';
  if (spoken === notes) return ': kept as sound in the shop’s log';
  return `, ${spoken} of them kept as sound in the shop’s log`;
}
