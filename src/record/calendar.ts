import { type DueDay, dueDay, type Job } from '../job/index.js';
import { RecordError } from './error.js';
import { type ContentLine, contentLines, dateValue, textValue, utcValue } from './icalendar.js';

export interface CalendarOptions {
  /** ISO 8601: when the calendar is written */
  readonly now: string;
}

/**
 * What falls due in a job, as iCalendar (RFC 5545) text: next services that name a day or a span of months, counted from
 * the hand-over and repeated where the words say so, and parts on their way that have a day. Whole-day events; the same
 * item keeps its UID, so that importing again moves it instead of doubling it. What is due after so many hours has no day
 * and is not in it: see `undated`.
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
  const { handOver } = job;
  return (handOver?.nextDue ?? [])
    .filter(({ when }) => !dueDay(when, handOver!.at))
    .map(({ what, when }) => `${what}: ${when}`);
}

interface DueItem {
  readonly uid: string;
  readonly due: DueDay;
  readonly summary: string;
  readonly description: string;
}

function dueItems(job: Job): DueItem[] {
  return [...serviceItems(job), ...partItems(job)];
}

function serviceItems(job: Job): DueItem[] {
  const seen = new Map<string, number>();
  const { handOver } = job;
  return (handOver?.nextDue ?? []).flatMap(({ what, when }) => {
    const due = dueDay(when, handOver!.at);
    if (!due) return [];
    const handle = slug(what);
    const times = (seen.get(handle) ?? 0) + 1;
    seen.set(handle, times);
    const uid = `${job.id}-due-${handle}${times > 1 ? `-${times}` : ''}@wristpin`;
    return [{ uid, due, summary: `${what} (tag ${job.tag})`, description: describe(job, `Due ${when}.`) }];
  });
}

function partItems(job: Job): DueItem[] {
  const awaited = [...job.parts.values()].filter(
    (part) => part.state === 'ordered' || part.state === 'wanted',
  );
  return awaited.flatMap((part) => {
    if (!part.due) return [];
    const due = { day: part.due };
    const from = part.supplier ? ` from ${part.supplier}` : '';
    const summary = `Part due: ${part.name} (tag ${job.tag})`;
    const description = describe(job, `${part.count} × ${part.name}${from}, ${part.state}.`);
    return [{ uid: `${job.id}-part-${part.part}@wristpin`, due, summary, description }];
  });
}

function describe(job: Job, words: string): string {
  const invented = job.invented ? '\nInvented, for demonstration.' : '';
  return `${words}\nTag ${job.tag}: ${job.title}${invented}`;
}

function slug(words: string): string {
  const plain = words
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');
  return plain || 'service';
}

function eventLines({ uid, due, summary, description }: DueItem, stamp: Date): ContentLine[] {
  return [
    { name: 'BEGIN', value: 'VEVENT' },
    { name: 'UID', value: uid },
    { name: 'DTSTAMP', value: utcValue(stamp) },
    { name: 'DTSTART;VALUE=DATE', value: dateValue(due.day) },
    ...(due.everyMonths ? [{ name: 'RRULE', value: every(due.everyMonths) }] : []),
    { name: 'SUMMARY', value: textValue(summary) },
    { name: 'DESCRIPTION', value: textValue(description) },
    { name: 'TRANSP', value: 'TRANSPARENT' },
    { name: 'END', value: 'VEVENT' },
  ];
}

/** A recurrence (RFC 5545, 3.3.10). */
function every(months: number): string {
  const [freq, interval] = months % 12 === 0 ? ['YEARLY', months / 12] : ['MONTHLY', months];
  return `FREQ=${freq}${interval > 1 ? `;INTERVAL=${interval}` : ''}`;
}
