const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** "2025-11-25T14:31:00-05:00" → "November 25, 2025": the day as it was where it was written. */
export function dayWords(iso: string): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})/.exec(iso);
  const month = match && months[Number(match[2]) - 1];
  return match && month ? `${month} ${Number(match[3])}, ${match[1]}` : iso;
}

/** "2025-11-25" → "Nov 25, 2025", for narrow columns */
export function shortDay(iso: string): string {
  return dayWords(iso).replace(/^([A-Z][a-z]{2})[a-z]+ /, '$1 ');
}

/** "2025-11-25T14:31:00-05:00" → "November 25, 2025, 14:31"; a time of no place says that it is UTC */
export function timeWords(iso: string): string {
  const clock = /T(\d{2}:\d{2})/.exec(iso)?.[1];
  return clock ? `${dayWords(iso)}, ${clock}${iso.endsWith('Z') ? ' UTC' : ''}` : dayWords(iso);
}

/** "1 bolt", "8 bolts" */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** "a, b and c" */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** For a place with room for one line; cut between signs, never within one. */
export function cutShort(text: string, most: number): string {
  const signs = [...text];
  return signs.length <= most
    ? text
    : `${signs
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`;
}

/** A long title up to its first explanation: "Leak-down, shaft held at firing top" → "Leak-down". */
export function briefTitle(title: string, at: RegExp = /[:(,]/): string {
  const cut = title.search(at);
  return title.length > 34 && cut > 0 ? title.slice(0, cut).trimEnd() : title;
}

/** "head-bolts" → "head bolts": for handles that have no better name */
export function handleWords(handle: string): string {
  return handle.replaceAll(/[-.]/g, ' ');
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** One line of text with a full stop, whatever the person wrote at the end. */
export function sentence(text: string): string {
  const trimmed = text.trim();
  return /[.!?…”"]$/.test(trimmed) || trimmed === '' ? trimmed : `${trimmed}.`;
}

/** Joins the parts that say something. */
export function joined(parts: readonly (string | undefined)[], by = ' · '): string {
  return parts.filter((part) => part?.trim()).join(by);
}
