import type { Job } from '../job/index.js';
import { RecordError } from './error.js';
import { type ContentLine, contentLines, dateValue, textValue, utcValue } from './icalendar.js';

export interface CalendarOptions {
  /** ISO 8601: when the calendar is written */
  readonly now: string;
}

/**
 * What falls due in a job, as iCalendar (RFC 5545) text: next services that name a day, and parts on their way that
 * have one. Whole-day events; the same item keeps its UID, so that importing again moves it instead of doubling it.
 * What is due after so many hours has no day and is not in it: see `undated`.
 */
export function calendar(job: Job, { now }: CalendarOptions): string {
  const stamp = new Date(now);
  if (Number.isNaN(stamp.getTime()))
    throw new RecordError(`“${now}” is not a time; ISO 8601 is wanted.`, 'now');
  const events = dueItems(job).flatMap((item) => eventLines(item, stamp));
  return contentLines([
    { name: 'BEGIN', value: 'VCALENDAR' },
    { name: 'VERSION', value: '2.0' },
    { name: 'PRODID', value: '-//Wristpin//Bench log//EN' },
    { name: 'CALSCALE', value: 'GREGORIAN' },
    ...events,
    { name: 'END', value: 'VCALENDAR' },
  ]);
}

/** Next services that name no day ("after 25 hours"), for the caller to say that they are not in the calendar. */
export function undated(job: Job): string[] {
  return (job.handOver?.nextDue ?? [])
    .filter((due) => !dayIn(due.when))
    .map((due) => `${due.what}: ${due.when}`);
}

interface DueItem {
  readonly uid: string;
  readonly day: string;
  readonly summary: string;
  readonly description: string;
}

function dueItems(job: Job): DueItem[] {
  return [...serviceItems(job), ...partItems(job)];
}

function serviceItems(job: Job): DueItem[] {
  const seen = new Map<string, number>();
  return (job.handOver?.nextDue ?? []).flatMap(({ what, when }) => {
    const day = dayIn(when);
    if (!day) return [];
    const handle = slug(what);
    const times = (seen.get(handle) ?? 0) + 1;
    seen.set(handle, times);
    const uid = `${job.id}-due-${handle}${times > 1 ? `-${times}` : ''}@wristpin`;
    return [{ uid, day, summary: `${what} (tag ${job.tag})`, description: describe(job, `Due ${when}.`) }];
  });
}

function partItems(job: Job): DueItem[] {
  const awaited = [...job.parts.values()].filter(
    (part) => part.state === 'ordered' || part.state === 'wanted',
  );
  return awaited.flatMap((part) => {
    if (!part.due) return [];
    const from = part.supplier ? ` from ${part.supplier}` : '';
    const summary = `Part due: ${part.name} (tag ${job.tag})`;
    const description = describe(job, `${part.count} × ${part.name}${from}, ${part.state}.`);
    return [{ uid: `${job.id}-part-${part.part}@wristpin`, day: part.due, summary, description }];
  });
}

function describe(job: Job, words: string): string {
  const invented = job.invented ? '\nInvented, for demonstration.' : '';
  return `${words}\nTag ${job.tag}: ${job.title}${invented}`;
}

/** The day that the words name, if they name one that exists. */
function dayIn(when: string): string | undefined {
  const day = /\b\d{4}-\d{2}-\d{2}\b/.exec(when)?.[0];
  if (!day) return undefined;
  const read = new Date(`${day}T00:00:00Z`);
  return !Number.isNaN(read.getTime()) && read.toISOString().startsWith(day) ? day : undefined;
}

function slug(words: string): string {
  const plain = words
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');
  return plain || 'service';
}

function eventLines({ uid, day, summary, description }: DueItem, stamp: Date): ContentLine[] {
  return [
    { name: 'BEGIN', value: 'VEVENT' },
    { name: 'UID', value: uid },
    { name: 'DTSTAMP', value: utcValue(stamp) },
    { name: 'DTSTART;VALUE=DATE', value: dateValue(day) },
    { name: 'SUMMARY', value: textValue(summary) },
    { name: 'DESCRIPTION', value: textValue(description) },
    { name: 'TRANSP', value: 'TRANSPARENT' },
    { name: 'END', value: 'VEVENT' },
  ];
}
