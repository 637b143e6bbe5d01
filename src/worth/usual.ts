import { type BillAsked, billFor } from './bill.js';
import { drawCosts } from './draw.js';

/**
 * What these repairs take by the list, minutes: each once, with what comes off for several taken off once, at the
 * middle pace. The same bill as a quote stands on, so that what is charged and what was quoted are one.
 */
export function usualMinutes(asked: Omit<BillAsked, 'off' | 'wanted'>, faults: readonly string[]): number {
  const bill = billFor({ ...asked, off: new Set(), wanted: new Set(faults) }, faults);
  const { likely } = bill.pace;
  const plain = {
    ...bill,
    pace: { from: likely, likely, to: likely },
    faults: bill.faults.map((f) => ({ ...f, minutesTo: f.minutes, scrap: 0 })),
  };
  const all = faults.map((_, place) => place);
  return drawCosts(plain, [{ quoted: all, whole: all }], 1).quoted.minutes[0]!;
}
