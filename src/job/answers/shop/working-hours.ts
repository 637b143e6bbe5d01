import { dayNames } from '../../../phrase/index.js';
/** When someone stands at the bench. Days as 0 Sunday to 6 Saturday; minutes of the day. */
export interface WorkingHours {
  readonly days: ReadonlySet<number>;
  readonly from: number;
  readonly to: number;
}

/** Taken until the shop says otherwise: Monday to Friday, eight to five. */
export const usualHours: WorkingHours = { days: new Set([1, 2, 3, 4, 5]), from: 8 * 60, to: 17 * 60 };

/**
 * The hours as the shop writes them: "Mon-Fri 08:00-17:00", "Tue,Thu,Sat 09:00-14:00", or "08:00-17:00" for Monday
 * to Friday. Nothing for what cannot be read so.
 */
export function readHours(text: string): WorkingHours | undefined {
  const found = /^(?:([A-Za-z,\s-]+?)\s+)?(\d{1,2}):(\d{2})\s*[-–]\s*(\d{1,2}):(\d{2})$/.exec(text.trim());
  if (!found) return undefined;
  const [, daysText, h1, m1, h2, m2] = found;
  const [from, to] = [clock(h1!, m1!), clock(h2!, m2!)];
  const days = daysText === undefined ? usualHours.days : readDays(daysText);
  if (from === undefined || to === undefined || from >= to || !days) return undefined;
  return { days, from, to };
}

function clock(hours: string, minutes: string): number | undefined {
  const [h, m] = [Number(hours), Number(minutes)];
  return h * 60 + m <= 24 * 60 && m < 60 ? h * 60 + m : undefined;
}

function readDays(text: string): Set<number> | undefined {
  const days = new Set<number>();
  for (const span of text.split(',')) {
    const ends = span.trim().split(/\s*-\s*/);
    const [first, last = first] = ends.map((name) =>
      dayNames.findIndex((day) => day.toLowerCase() === name.slice(0, 3).toLowerCase()),
    );
    if (first === undefined || last === undefined || first < 0 || last < 0 || ends.length > 2)
      return undefined;
    for (let day = first; ; day = (day + 1) % 7) {
      days.add(day);
      if (day === last) break;
    }
  }
  return days.size > 0 ? days : undefined;
}

/** "Mon-Fri 08:00-17:00" */
export function hoursText({ days, from, to }: WorkingHours): string {
  const at = (minute: number) =>
    `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
  return `${daysText(days)} ${at(from)}-${at(to)}`;
}

function daysText(days: ReadonlySet<number>): string {
  const week = [1, 2, 3, 4, 5, 6, 0];
  const runs: number[][] = [];
  for (const day of week) {
    if (!days.has(day)) continue;
    const last = runs.at(-1);
    if (last && week.indexOf(last.at(-1)!) === week.indexOf(day) - 1) last.push(day);
    else runs.push([day]);
  }
  return runs
    .map((run) =>
      run.length > 2
        ? `${dayNames[run[0]!]}-${dayNames[run.at(-1)!]}`
        : run.map((d) => dayNames[d]).join(','),
    )
    .join(',');
}

/** Wall-clock time without a zone: a shop's bench keeps the shop's time. Minutes from a fixed day; a clock change is not counted. */
export const wallMinute = (local: string): number =>
  Math.floor(Date.parse(`${local.slice(0, 16)}:00Z`) / 60_000);

/** The date and time of a wall-clock minute: "2026-11-27T08:00". */
export const wallTime = (minute: number): string => new Date(minute * 60_000).toISOString().slice(0, 16);

const weekday = (minute: number): number => new Date(minute * 60_000).getUTCDay();

const day = 24 * 60;

/** The spans from `origin` on, for so many days, in which nobody is at the bench; minutes from `origin`. */
export function closedSpans(
  { days, from, to }: WorkingHours,
  origin: number,
  count: number,
): { from: number; to: number }[] {
  const midnight = Math.floor(origin / day) * day;
  const spans: { from: number; to: number }[] = [];
  let closedFrom = midnight;
  for (let d = 0; d < count; d += 1) {
    const at = midnight + d * day;
    if (!days.has(weekday(at))) continue;
    spans.push({ from: closedFrom, to: at + from });
    closedFrom = at + to;
  }
  spans.push({ from: closedFrom, to: midnight + count * day });
  return spans
    .map((span) => ({ from: Math.max(0, span.from - origin), to: span.to - origin }))
    .filter((span) => span.to > span.from);
}
