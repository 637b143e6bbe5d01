/** "24 min", "1 h 20 min"; hours from one and a half on */
export function minutesWords(minutes: number): string {
  const whole = Math.round(minutes);
  return whole < 90 ? `${whole} min` : hoursAndMinutes(whole);
}

/** "2 h 30 min", to the next ten minutes */
export const roughHours = (minutes: number): string => hoursAndMinutes(Math.round(minutes / 10) * 10);

function hoursAndMinutes(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}
