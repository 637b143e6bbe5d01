import { FastenError } from './error.js';
import { sources } from './sources.js';
import type { ThreadForm } from './thread-form.js';
import { findThread, isPlugThread, threadWords } from './threads.js';

export const plugSeats = ['new gasket', 'used gasket', 'conical'] as const;
export type PlugSeat = (typeof plugSeats)[number];
export const headMetals = ['aluminum', 'iron'] as const;
export type HeadMetal = (typeof headMetals)[number];

interface PlugRow {
  readonly thread: string;
  readonly seat: 'gasket' | 'conical';
  readonly head: HeadMetal;
  /** N·m */
  readonly lowNm: number;
  readonly highNm: number;
}

/** Printed in ft-lb (14 mm gasket plug into aluminum: 18.0 to 21.6); round in N·m. */
const rows: readonly PlugRow[] = [
  { thread: 'M10×1', seat: 'gasket', head: 'iron', lowNm: 10, highNm: 15 },
  { thread: 'M10×1', seat: 'gasket', head: 'aluminum', lowNm: 10, highNm: 12 },
  { thread: 'M12×1.25', seat: 'gasket', head: 'iron', lowNm: 15, highNm: 25 },
  { thread: 'M12×1.25', seat: 'gasket', head: 'aluminum', lowNm: 15, highNm: 20 },
  { thread: 'M14×1.25', seat: 'gasket', head: 'iron', lowNm: 25, highNm: 35 },
  { thread: 'M14×1.25', seat: 'gasket', head: 'aluminum', lowNm: 25, highNm: 30 },
  { thread: 'M18×1.5', seat: 'gasket', head: 'iron', lowNm: 35, highNm: 45 },
  { thread: 'M18×1.5', seat: 'gasket', head: 'aluminum', lowNm: 35, highNm: 45 },
  { thread: 'M14×1.25', seat: 'conical', head: 'iron', lowNm: 15, highNm: 25 },
  { thread: 'M14×1.25', seat: 'conical', head: 'aluminum', lowNm: 10, highNm: 20 },
  { thread: 'M18×1.5', seat: 'conical', head: 'iron', lowNm: 20, highNm: 30 },
  { thread: 'M18×1.5', seat: 'conical', head: 'aluminum', lowNm: 20, highNm: 30 },
];

/** What small-engine manuals print for the 14 mm plug: from 95 to 264 in-lb, 180 in-lb the commonest. */
export const smallEngine14mm = { lowNm: 10.7, usualNm: 20.3, highNm: 29.8 } as const;

/** Turns past finger tight. Gasket: ½ new, ⅛ to ¼ used; conical: 1/16. Sources: makers' fitting notes. */
const turns: Readonly<
  Record<PlugSeat, { readonly low: number; readonly high: number; readonly words: string }>
> = {
  'new gasket': { low: 1 / 2, high: 1 / 2, words: '½ turn past finger tight' },
  'used gasket': { low: 1 / 8, high: 1 / 4, words: '⅛ to ¼ turn past finger tight' },
  conical: { low: 1 / 16, high: 1 / 16, words: '1/16 turn past finger tight' },
};

export interface PlugTorque {
  readonly turns: { readonly low: number; readonly high: number; readonly words: string };
  readonly lowNm: number;
  readonly highNm: number;
  readonly source: string;
}

/**
 * How tight a spark plug goes in: the turn past finger tight, and the printed torque of that thread, seat and head.
 *
 * Clean dry threads, plug started by hand in a cold engine. The engine's own figure goes first: small engines
 * print less than the plug chart, 180 in-lb (20.3 N·m) being common for 14 mm.
 * Throws FastenError for a thread that is no plug thread, or a seat that the thread is not made with.
 * Example: M14×1.25, new gasket, aluminum: ½ turn, 25 to 30 N·m.
 */
export function plugTorque(form: ThreadForm, seat: PlugSeat, head: HeadMetal): PlugTorque {
  if (!isPlugThread(form)) {
    throw new FastenError(
      `${threadWords(form)} is not a spark plug thread; those are M10×1, M12×1.25, M14×1.25 and M18×1.5`,
      'thread',
    );
  }
  const name = findThread(form)?.name;
  const kind = seat === 'conical' ? 'conical' : 'gasket';
  const row = rows.find((each) => each.thread === name && each.seat === kind && each.head === head);
  if (!row) throw new FastenError(`no ${kind} seat is listed for ${name} in ${head}`, 'seat');
  return { turns: turns[seat], lowNm: row.lowNm, highNm: row.highNm, source: sources.plugChart };
}

/** Least and most torque that is printed anywhere for a plug thread, N·m; undefined for other threads. */
export function plugTorqueExtremes(
  form: ThreadForm,
): { readonly lowNm: number; readonly highNm: number } | undefined {
  const own = rows.filter(({ thread }) => isPlugThread(form) && thread === findThread(form)?.name);
  if (own.length === 0) return undefined;
  return {
    lowNm: Math.min(...own.map((row) => row.lowNm)),
    highNm: Math.max(...own.map((row) => row.highNm)),
  };
}
