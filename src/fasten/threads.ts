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

function inch(
  series: Series,
  size: string,
  majorIn: number,
  threadsPerInch: number,
  usualDrill: string,
  wrench?: string,
): StandardThread {
  return {
    name: `${size}-${threadsPerInch}`,
    system: 'inch',
    series: [series],
    majorMm: majorIn * mmPerInch,
    pitchMm: mmPerInch / threadsPerInch,
    threadsPerInch,
    usualDrill,
    ...(wrench && { wrench }),
  };
}

function metric(
  series: Series | readonly Series[],
  majorMm: number,
  pitchMm: number,
  usualDrill: string,
  wrench?: string,
): StandardThread {
  return {
    name: `M${majorMm}×${pitchMm}`,
    system: 'metric',
    series: typeof series === 'string' ? [series] : series,
    majorMm,
    pitchMm,
    usualDrill: `${usualDrill} mm`,
    ...(wrench && { wrench }),
  };
}

/**
 * Unified coarse and fine #4 to 1/2, metric coarse and fine M3 to M14, and the spark plug threads.
 *
 * Sizes and pitches: ASME B1.1 and ISO 261. Numbered sizes follow d = 0.060 in + 0.013 in × number.
 * Usual drills: the trade's tables (from memory); the percent-of-thread rule gives them again, see tap-drill.ts.
 * Wrench sizes: ASME B18.2.1 hex cap screws, ISO 4014 hexagon bolts (from memory); small machine screws have no one size.
 */
export const threads: readonly StandardThread[] = [
  inch('UNC', '#4', 0.112, 40, '#43'),
  inch('UNC', '#5', 0.125, 40, '#38'),
  inch('UNC', '#6', 0.138, 32, '#36'),
  inch('UNC', '#8', 0.164, 32, '#29'),
  inch('UNC', '#10', 0.19, 24, '#25'),
  inch('UNC', '#12', 0.216, 24, '#16'),
  inch('UNC', '1/4', 0.25, 20, '#7', '7/16 in'),
  inch('UNC', '5/16', 0.3125, 18, 'F', '1/2 in'),
  inch('UNC', '3/8', 0.375, 16, '5/16 in', '9/16 in'),
  inch('UNC', '7/16', 0.4375, 14, 'U', '5/8 in (nut 11/16 in)'),
  inch('UNC', '1/2', 0.5, 13, '27/64 in', '3/4 in'),
  inch('UNF', '#4', 0.112, 48, '#42'),
  inch('UNF', '#5', 0.125, 44, '#37'),
  inch('UNF', '#6', 0.138, 40, '#33'),
  inch('UNF', '#8', 0.164, 36, '#29'),
  inch('UNF', '#10', 0.19, 32, '#21'),
  inch('UNF', '#12', 0.216, 28, '#14'),
  inch('UNF', '1/4', 0.25, 28, '#3', '7/16 in'),
  inch('UNF', '5/16', 0.3125, 24, 'I', '1/2 in'),
  inch('UNF', '3/8', 0.375, 24, 'Q', '9/16 in'),
  inch('UNF', '7/16', 0.4375, 20, '25/64 in', '5/8 in (nut 11/16 in)'),
  inch('UNF', '1/2', 0.5, 20, '29/64 in', '3/4 in'),
  metric('metric coarse', 3, 0.5, '2.5', '5.5 mm'),
  metric('metric coarse', 3.5, 0.6, '2.9', '6 mm'),
  metric('metric coarse', 4, 0.7, '3.3', '7 mm'),
  metric('metric coarse', 5, 0.8, '4.2', '8 mm'),
  metric('metric coarse', 6, 1, '5', '10 mm'),
  metric('metric coarse', 7, 1, '6', '11 mm'),
  metric('metric coarse', 8, 1.25, '6.8', '13 mm'),
  metric('metric coarse', 10, 1.5, '8.5', '16 mm (17 mm on older bolts)'),
  metric('metric coarse', 12, 1.75, '10.2', '18 mm (19 mm on older bolts)'),
  metric('metric coarse', 14, 2, '12', '21 mm (22 mm on older bolts)'),
  metric('metric fine', 4, 0.5, '3.5', '7 mm'),
  metric('metric fine', 5, 0.5, '4.5', '8 mm'),
  metric('metric fine', 6, 0.75, '5.2', '10 mm'),
  metric('metric fine', 8, 1, '7', '13 mm'),
  metric(['metric fine', 'spark plug'], 10, 1, '9', '16 mm (5/8 in) on a plug'),
  metric('metric fine', 10, 1.25, '8.8', '16 mm (17 mm on older bolts)'),
  metric('metric fine', 12, 1, '11', '18 mm (19 mm on older bolts)'),
  metric(['metric fine', 'spark plug'], 12, 1.25, '10.8', '16 or 18 mm on a plug'),
  metric('metric fine', 12, 1.5, '10.5', '18 mm (19 mm on older bolts)'),
  metric('metric fine', 14, 1.5, '12.5', '21 mm (22 mm on older bolts)'),
  metric('spark plug', 14, 1.25, '12.8', '13/16 in (20.8 mm), 3/4 in or 5/8 in (16 mm) on a plug'),
  metric('spark plug', 18, 1.5, '16.5', '13/16 in (20.8 mm) or 7/8 in on a plug'),
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
