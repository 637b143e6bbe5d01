import type { StepFastener } from '../../../job/index.js';

/** "6 to 10 × 5/16-18 bolt, two or three lengths" */
export function fastenerWords(f: StepFastener): string {
  const count = f.count === undefined ? '' : f.countTo ? `${f.count} to ${f.countTo} × ` : `${f.count} × `;
  const size = [f.size, f.length].filter(Boolean).join(' × ');
  return [`${count}${[size, f.what].filter(Boolean).join(' ')}`, f.hole, f.note].filter(Boolean).join(', ');
}
