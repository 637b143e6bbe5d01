import { type Call, text, WronglyCalled } from '../command.js';

/** The value of `--seconds`, or what is usual. */
export function seconds(call: Call, usual: number): number {
  const given = text(call, 'seconds');
  if (given === undefined) return usual;
  const value = Number(given);
  if (given.trim() !== '' && value > 0 && value <= 3600) return value;
  throw new WronglyCalled(`--seconds takes a number above 0 and up to 3600, not “${given}”.`);
}
