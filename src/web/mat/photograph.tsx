import { useEffect, useRef, useState } from 'react';
import type { Seen, SightStep, Thickness } from '../../sight/index.js';
import { useShop } from '../data/queries.js';
import { ReadPhotograph } from '../parts/read-photograph.js';
import { barsOf } from './bars.js';
import { useSight } from './use-sight.js';

const doing: Readonly<Record<SightStep | 'open', string>> = {
  open: 'Opening the picture …',
  mat: 'Looking for the mat …',
  part: 'Telling the part from the paper …',
  edges: 'Measuring its edges …',
};

/** so long after the last key a new thickness is taken, ms */
const typing = 500;

interface Taking {
  readonly as: 'plate' | 'bolts';
  readonly thickness?: Thickness | undefined;
  readonly onSeen: (seen: Seen | undefined) => void;
}

/** Reads a file once it is chosen, and anew when another thickness or other bars make it another reading. */
function useReadingOf(file: File | undefined, { as, thickness, onSeen }: Taking) {
  const bars = barsOf(useShop());
  const sight = useSight((seen) => {
    if (!seen.refused) onSeen(seen);
  });
  const by = JSON.stringify({ as, thickness, scale: bars?.scale });
  const begun = useRef<File>(undefined);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `by` says all that a reading hangs on
  useEffect(() => {
    if (!file) return undefined;
    const begin = () => {
      begun.current = file;
      onSeen(undefined);
      void sight.read({ file, as, ...(thickness && { thickness }), ...(bars && { scale: bars.scale }) });
    };
    const timer = setTimeout(begin, begun.current === file ? typing : 0);
    return () => clearTimeout(timer);
  }, [file, by]);
  return sight;
}

/**
 * Takes or chooses a photograph of the mat and reads it; what was seen goes up, what was refused is said here. What was
 * seen before is taken back while it reads.
 */
export function PhotographOnMat(props: Taking & { label: string }) {
  const [file, setFile] = useState<File>();
  const sight = useReadingOf(file, props);
  return (
    <ReadPhotograph
      label={props.label}
      doing={sight.step && doing[sight.step]}
      refused={sight.seen?.refused}
      wrong={sight.wrong}
      onTake={setFile}
      onStop={sight.stop}
    />
  );
}
