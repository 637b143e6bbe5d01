import type { MachineFacts } from './case.js';

/** The catalog's question whether one valve is lifted slightly at pull speed. */
export const releaseVariant = 'automatic-release';

/**
 * Squeeze as felt or gauged at pull speed, with outcomes that are usual where a release is fitted. Spinning it backward,
 * leak-down and the rise after oil are not touched by it.
 */
const usualWithRelease: Readonly<Record<string, readonly string[]>> = {
  'compression-dry': ['down-twenty-percent', 'down-forty-percent'],
  'slow-pull': ['soft'],
};

/** How likely a healthy engine of which it is not known shows such a reading because a release is fitted. */
const unknownShare = 0.4;

/** What a weak squeeze says of the milder outcomes: 0 that they are ruled out, 1 that they are as likely. */
export function releaseLeaves(check: string, outcome: string, facts: MachineFacts): number {
  if (!usualWithRelease[check]?.includes(outcome) || facts.architecture === 'two-stroke') return 0;
  const fitted = facts.variants?.[releaseVariant];
  return fitted === undefined ? unknownShare : fitted ? 1 : 0;
}
