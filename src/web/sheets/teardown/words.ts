import type { StepFastener } from '../../../job/index.js';

/** "6 to 10 × 5/16-18 bolt, two or three lengths" */
export function fastenerWords(f: StepFastener): string {
  const count = f.count === undefined ? '' : f.countTo ? `${f.count} to ${f.countTo} × ` : `${f.count} × `;
  const size = [f.size, f.length].filter(Boolean).join(' × ');
  return [`${count}${[size, f.what].filter(Boolean).join(' ')}`, f.hole, f.note].filter(Boolean).join(', ');
}

/** "24 min", "1 h 20 min" */
export function minutesWords(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 90) return `${whole} min`;
  const rest = whole % 60;
  return `${Math.floor(whole / 60)} h${rest > 0 ? ` ${rest} min` : ''}`;
}

/** "a, b and c" */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

export const counted = (n: number, one: string, many = `${one}s`) => `${n} ${n === 1 ? one : many}`;
