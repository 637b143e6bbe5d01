import { counted } from '../../../phrase/index.js';

/** A job that nobody touched for so many days is told of before it is gone on with. */
export const restDays = 7;

/** Whole days from one moment to another; never below zero. */
export const daysBetween = (from: string, to: string): number =>
  Math.max(0, Math.floor((Date.parse(to) - Date.parse(from)) / 86_400_000));

/** "today", "5 days", "7 weeks", "12 months", "2 years": to what is worth telling apart */
export function restWords(days: number): string {
  if (days < 1) return 'less than a day';
  if (days < 21) return counted(days, 'day');
  if (days < 92) return counted(Math.round(days / 7), 'week');
  if (days < 700) return counted(Math.round(days / 30.44), 'month');
  return counted(Math.round(days / 365.25), 'year');
}
