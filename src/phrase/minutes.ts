/** "24 min", "1 h 20 min"; hours from one and a half on */
export function minutesWords(minutes: number): string {
  const whole = Math.round(minutes);
  return whole < 90 ? `${whole} min` : hoursAndMinutes(whole);
}

/** "2 h 30 min", to the next ten minutes */
export const roughHours = (minutes: number): string => hoursAndMinutes(Math.round(minutes / 10) * 10);

/** "4 to 5 h", "40 min to 1 h 20 min"; one figure where both ends are the same */
export function roughSpan(from: number, to: number): string {
  const [low, high] = [roughHours(from), roughHours(to)];
  if (low === high) return low;
  const [unit] = /(min|h)$/.exec(high)!;
  const alike = [low, high].every((words) => new RegExp(`^\\d+ ${unit}$`).test(words));
  return `${alike ? low.slice(0, -unit.length - 1) : low} to ${high}`;
}

function hoursAndMinutes(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** "0:07", "1:32": how long something plays, to the next second */
export function clockWords(seconds: number): string {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}
