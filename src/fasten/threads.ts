import { parseThread } from '../quantity/index.js';
import { mmPerInch, type ThreadForm } from './thread-form.js';

export const series = ['UNC', 'UNF', 'metric coarse', 'metric fine', 'spark plug'] as const;
export type Series = (typeof series)[number];

/** A thread of the standard lists. */
export interface StandardThread extends ThreadForm {
  /** as it is marked: "5/16-18", "M8×1.25" */
  readonly name: string;
  readonly series: readonly Series[];
  readonly threadsPerInch?: number;
  /** the drill most shop tables print for it */
  readonly usualDrill: string;
  /** wrench that fits the standard hexagon head, in words; left out where no one size is standard */
  readonly wrench?: string;
}

/** The form as its marking gives it, the pitch of a named or coarse series from the one table of pitches. */
function listed(marking: string, drill: string, wrench?: string, series?: readonly Series[]): StandardThread {
  const { name, system, majorMm, pitchMm, threadsPerInch, pitchFrom = 'metric fine' } = parseThread(marking);
  return {
    name,
    system,
    series: series ?? [pitchFrom === 'ISO 261 coarse' ? 'metric coarse' : pitchFrom],
    majorMm,
    pitchMm,
    ...(threadsPerInch && { threadsPerInch }),
    usualDrill: system === 'inch' ? drill : `${drill} mm`,
    ...(wrench && { wrench }),
  };
}

const finePlug = ['metric fine', 'spark plug'] as const;

/**
 * Unified coarse and fine #4 to 1/2, metric coarse and fine M3 to M14, and the spark plug threads.
 *
 * Sizes and pitches: ASME B1.1 and ISO 261. Numbered sizes follow d = 0.060 in + 0.013 in × number.
 * Usual drills: the trade's tables (from memory); the percent-of-thread rule gives them again, see tap-drill.ts.
 * Wrench sizes: ASME B18.2.1 hex cap screws, ISO 4014 hexagon bolts (from memory); small machine screws have no one size.
 */
export const threads: readonly StandardThread[] = [
  listed('#4 UNC', '#43'),
  listed('#5 UNC', '#38'),
  listed('#6 UNC', '#36'),
  listed('#8 UNC', '#29'),
  listed('#10 UNC', '#25'),
  listed('#12 UNC', '#16'),
  listed('1/4 UNC', '#7', '7/16 in'),
  listed('5/16 UNC', 'F', '1/2 in'),
  listed('3/8 UNC', '5/16 in', '9/16 in'),
  listed('7/16 UNC', 'U', '5/8 in (nut 11/16 in)'),
  listed('1/2 UNC', '27/64 in', '3/4 in'),
  listed('#4 UNF', '#42'),
  listed('#5 UNF', '#37'),
  listed('#6 UNF', '#33'),
  listed('#8 UNF', '#29'),
  listed('#10 UNF', '#21'),
  listed('#12 UNF', '#14'),
  listed('1/4 UNF', '#3', '7/16 in'),
  listed('5/16 UNF', 'I', '1/2 in'),
  listed('3/8 UNF', 'Q', '9/16 in'),
  listed('7/16 UNF', '25/64 in', '5/8 in (nut 11/16 in)'),
  listed('1/2 UNF', '29/64 in', '3/4 in'),
  listed('M3', '2.5', '5.5 mm'),
  listed('M3.5', '2.9', '6 mm'),
  listed('M4', '3.3', '7 mm'),
  listed('M5', '4.2', '8 mm'),
  listed('M6', '5', '10 mm'),
  listed('M7', '6', '11 mm'),
  listed('M8', '6.8', '13 mm'),
  listed('M10', '8.5', '16 mm (17 mm on older bolts)'),
  listed('M12', '10.2', '18 mm (19 mm on older bolts)'),
  listed('M14', '12', '21 mm (22 mm on older bolts)'),
  listed('M4×0.5', '3.5', '7 mm'),
  listed('M5×0.5', '4.5', '8 mm'),
  listed('M6×0.75', '5.2', '10 mm'),
  listed('M8×1', '7', '13 mm'),
  listed('M10×1', '9', '16 mm (5/8 in) on a plug', finePlug),
  listed('M10×1.25', '8.8', '16 mm (17 mm on older bolts)'),
  listed('M12×1', '11', '18 mm (19 mm on older bolts)'),
  listed('M12×1.25', '10.8', '16 or 18 mm on a plug', finePlug),
  listed('M12×1.5', '10.5', '18 mm (19 mm on older bolts)'),
  listed('M14×1.5', '12.5', '21 mm (22 mm on older bolts)'),
  listed('M14×1.25', '12.8', '13/16 in (20.8 mm), 3/4 in or 5/8 in (16 mm) on a plug', ['spark plug']),
  listed('M18×1.5', '16.5', '13/16 in (20.8 mm) or 7/8 in on a plug', ['spark plug']),
];

/** The row of the list with this diameter and pitch, if it is a standard thread. */
export function findThread({ system, majorMm, pitchMm }: ThreadForm): StandardThread | undefined {
  return threads.find(
    (thread) =>
      thread.system === system &&
      Math.abs(thread.majorMm - majorMm) < 0.005 &&
      Math.abs(thread.pitchMm - pitchMm) < 0.002,
  );
}

export function isPlugThread(form: ThreadForm): boolean {
  return findThread(form)?.series.includes('spark plug') ?? false;
}

/** "5/16-18", "M8×1.25"; for a thread outside the list, its diameter and pitch. */
export function threadWords(form: ThreadForm): string {
  const { system, majorMm, pitchMm } = form;
  const listed = findThread(form)?.name;
  if (listed) return listed;
  return system === 'inch'
    ? `${Number((majorMm / mmPerInch).toFixed(4))}-${Number((mmPerInch / pitchMm).toFixed(2))}`
    : `M${majorMm}×${pitchMm}`;
}
