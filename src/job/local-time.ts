/**
 * An instant as ISO 8601 with the offset of this device's clock: the log says what the clock on the wall said.
 *
 * Example: 14:05 in New York in winter → "2026-01-20T14:05:00.000-05:00".
 */
export const localTime = (date: Date): string => withOffset(date, -date.getTimezoneOffset());

/** The same by a clock that is `minutes` ahead of Coordinated Universal Time. */
export function withOffset(date: Date, minutes: number): string {
  const wall = new Date(date.getTime() + minutes * 60_000).toISOString().slice(0, -1);
  const two = (n: number) => String(Math.trunc(n)).padStart(2, '0');
  const size = Math.abs(minutes);
  return `${wall}${minutes < 0 ? '-' : '+'}${two(size / 60)}:${two(size % 60)}`;
}
