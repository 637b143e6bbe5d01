import type { RunUpLimit } from '../../../job/index.js';
import { show } from '../../../quantity/index.js';

/** "at most 3300 rpm (maker's sheet, page 4)" */
export function limitWords({ kind, min, max, unit, origin }: RunUpLimit): string {
  const say = (si: number) => show({ kind, si, unit });
  const bounds =
    min !== undefined && max !== undefined
      ? `${say(min)} to ${say(max)}`
      : max !== undefined
        ? `at most ${say(max)}`
        : `at least ${say(min!)}`;
  return `${bounds} (${[origin.from, origin.detail].filter(Boolean).join(', ')})`;
}
