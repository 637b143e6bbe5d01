export const monthNames =
  'January February March April May June July August September October November December'.split(' ');

export const dayNames = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;

const isoDay = /^(\d{4})-(\d{2})-(\d{2})/;

/** "2025-11-25T14:31:00-05:00" → "November 25, 2025": the day as it was where it was written; else as it came */
export function dayWords(iso: string): string {
  const match = isoDay.exec(iso);
  const month = match && monthNames[Number(match[2]) - 1];
  return match && month ? `${month} ${Number(match[3])}, ${match[1]}` : iso;
}

/** "2025-11-25" → "Nov 25, 2025", for narrow columns */
export const shortDay = (iso: string): string => dayWords(iso).replace(/^([A-Z][a-z]{2})[a-z]+ /, '$1 ');

/** "when it is here, due 2025-11-25" → "when it is here, due Nov 25, 2025": each day that stands in a text */
export const shortDays = (text: string): string => text.replaceAll(/\b\d{4}-\d{2}-\d{2}\b/g, shortDay);

/** "2025-11-25T14:31:00-05:00" → "November 25, 2025, 14:31"; a time of no place says that it is UTC */
export function timeWords(iso: string): string {
  const clock = /T(\d{2}:\d{2})/.exec(iso)?.[1];
  return clock ? `${dayWords(iso)}, ${clock}${iso.endsWith('Z') ? ' UTC' : ''}` : dayWords(iso);
}

/**
 * "2025-11-25" → "Tue Nov 25"; else as it came. Held against a day of another year it names its own: "Tue Nov 25, 2025",
 * so that nobody reads a promise of last year as one that is still to be kept.
 */
export function weekDay(iso: string, today?: string): string {
  const at = new Date(`${iso.slice(0, 10)}T00:00:00Z`);
  if (Number.isNaN(at.getTime())) return iso;
  const day = `${dayNames[at.getUTCDay()]} ${monthNames[at.getUTCMonth()]!.slice(0, 3)} ${at.getUTCDate()}`;
  return today === undefined || iso.slice(0, 4) === today.slice(0, 4) ? day : `${day}, ${iso.slice(0, 4)}`;
}

/** Dates inside a sentence as they are said at the bench, with the year where it is not this one. */
export const withDays = (words: string, today?: string): string =>
  words.replace(/\d{4}-\d\d-\d\d/g, (iso) => weekDay(iso, today));
