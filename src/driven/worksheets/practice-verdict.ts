import type { Decision } from '../../gauge/index.js';
import { type Answer, practice, verdict } from '../../worksheet/index.js';

/** How a figure stands to what the trade goes by: it decides nothing about this machine, whose maker may say otherwise. */
export const practiceVerdict = (id: string, label: string, { stands }: Pick<Decision, 'stands'>): Answer =>
  verdict(
    id,
    label,
    'cannot-decide',
    `common practice only: ${stands} The maker’s own figure decides.`,
    practice,
  );
