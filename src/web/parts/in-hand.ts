import { useEffect } from 'react';
import type { Stage } from '../../job/index.js';

/** What a picture shows when it is taken on a sheet that has nothing in hand. */
const onSheet: Readonly<Record<Stage, string>> = {
  intake: 'as it came in',
  findings: 'what was found',
  'worth-it': 'for the owner to see',
  parts: 'the part',
  teardown: 'before it comes apart',
  measure: 'what was measured',
  assembly: 'as it went together',
  'run-up': 'as it runs',
  'hand-over': 'as it leaves',
};

let now: string | undefined;

/** A sheet names what is in hand on it: a picture that is taken meanwhile is of that, until somebody says otherwise. */
export function useInHand(words: string | undefined): void {
  useEffect(() => {
    now = words;
    return () => {
      now = undefined;
    };
  }, [words]);
}

export const inHandOn = (stage: Stage): string => now ?? onSheet[stage];
