import { useEffect, useRef, useState } from 'react';
import type { Seen, SightStep } from '../../sight/index.js';
import { seeBeside } from '../work/see-beside.js';
import type { SightAsked } from '../work/sight-worker.js';

/** How far the reading of one photograph has come. */
export interface Reading {
  readonly step?: SightStep | 'open';
  readonly seen?: Seen;
  readonly wrong?: string;
}

export interface Sight extends Reading {
  readonly read: (asked: SightAsked) => Promise<void>;
  readonly stop: () => void;
}

/** Reads a photograph beside the page; another one, or leaving the page, stops it. */
export function useSight(onSeen?: (seen: Seen) => void): Sight {
  const [reading, setReading] = useState<Reading>({});
  const stopper = useRef<AbortController>(undefined);
  const stop = () => {
    stopper.current?.abort();
    setReading({});
  };
  useEffect(() => () => stopper.current?.abort(), []);
  const read = async (asked: SightAsked) => {
    stopper.current?.abort();
    const own = new AbortController();
    stopper.current = own;
    const { signal } = own;
    setReading({ step: 'open' });
    try {
      const seen = await seeBeside(asked, {
        signal,
        onStep: (step) => !signal.aborted && setReading({ step }),
      });
      setReading({ seen });
      onSeen?.(seen);
    } catch (error) {
      if (!signal.aborted) setReading({ wrong: error instanceof Error ? error.message : String(error) });
    }
  };
  return { ...reading, read, stop };
}
