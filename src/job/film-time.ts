/** "83.5", "1:23.5", "0:01:23,5" → seconds. Minutes and seconds past 59 are a slip, not a time. */
export function filmSeconds(text: string): number | undefined {
  const match = /^(?:(?:(\d+):)?(\d{1,3}):)?(\d+(?:[.,]\d+)?)$/.exec(text.trim());
  if (!match) return undefined;
  const [hours, minutes, seconds] = [match[1], match[2], match[3]?.replace(',', '.')].map((part) =>
    Number(part ?? 0),
  );
  const isClock = match[2] !== undefined;
  if ((isClock && seconds! >= 60) || (match[1] !== undefined && minutes! >= 60)) return undefined;
  return hours! * 3600 + minutes! * 60 + seconds!;
}

/**
 * How many minutes of film still go on a card: its free space over the bit rate.
 *
 * Method: free GB × 8000 / (Mb/s) seconds, with GB = 10⁹ bytes as cards and cameras count, Mb = 10⁶ bits. Sound and the
 * file's own order are part of a bit rate that was worked out from a film (its size over its length); a rate out of a
 * camera's menu is of the picture alone and is met only on average: its makers' published times lie within a tenth of this.
 *
 * Example: 16 GB at 17 Mb/s → 125 minutes.
 *
 * @returns undefined where either is no number above zero
 */
export function filmMinutesLeft(freeGb: number, megabitsPerSecond: number): number | undefined {
  const minutes = (freeGb * 8000) / megabitsPerSecond / 60;
  return freeGb > 0 && megabitsPerSecond > 0 && Number.isFinite(minutes) ? minutes : undefined;
}
