import { useEffect, useRef, useState } from 'react';
import type { Body, Job } from '../../job/index.js';
import type { PageLine } from '../../sight/index.js';
import { writePhotograph } from '../data/outbox.js';
import { ReadPhotograph } from '../parts/read-photograph.js';
import type { PageRead, PageStep } from '../work/read-page.js';
import { readerAway } from '../work/reader-away.js';

/** A page as it was read: the picture of it in the log, and its lines in that picture's pixels. */
export interface KeptPage {
  readonly picture: NonNullable<Body<'photograph'>['picture']>;
  readonly lines: readonly PageLine[];
}

const doing: Readonly<Record<PageStep | 'open' | 'keep', string>> = {
  open: 'Opening the picture …',
  straighten: 'Laying the page straight …',
  read: 'Reading its lines …',
  keep: 'Keeping the picture …',
};

/** Takes or chooses a photograph of a page or plate, keeps it laid straight in the log, and gives up the lines it read. */
export function PhotographPage(props: {
  job: Job;
  label: string;
  caption: string;
  onRead: (page: KeptPage) => void;
}) {
  const reading = usePageReading(props);
  return (
    <ReadPhotograph
      label={props.label}
      doing={reading.step && doing[reading.step]}
      refused={reading.refused}
      wrong={reading.wrong}
      onTake={(photograph) => void reading.read(photograph)}
      onStop={reading.stop}
    />
  );
}

/** It weighs as much as the rest of the application: it comes when it is first asked. */
async function fetchReader() {
  try {
    return (await import('../work/read-page.js')).readPage;
  } catch {
    throw new Error(readerAway);
  }
}

interface State {
  readonly step?: PageStep | 'open' | 'keep';
  readonly refused?: PageRead['refused'];
  readonly wrong?: string;
}

function usePageReading({ job, caption, onRead }: Parameters<typeof PhotographPage>[0]) {
  const [state, setState] = useState<State>({});
  const stopper = useRef<AbortController>(undefined);
  useEffect(() => () => stopper.current?.abort(), []);
  const stop = () => {
    stopper.current?.abort();
    setState({});
  };
  const read = async (photograph: File) => {
    stopper.current?.abort();
    const own = new AbortController();
    stopper.current = own;
    setState({ step: 'open' });
    try {
      const readPage = await fetchReader();
      const onStep = (step: PageStep) => !own.signal.aborted && setState({ step });
      const page = await readPage(photograph, { signal: own.signal, onStep });
      own.signal.throwIfAborted();
      if (page.refused) return setState({ refused: page.refused });
      setState({ step: 'keep' });
      const line = await writePhotograph(job.id, page.file, { caption, stage: 'intake', when: 'during' });
      const { picture } = line.body as Body<'photograph'>;
      if (picture) onRead({ picture, lines: page.lines });
      setState({});
    } catch (error) {
      if (!own.signal.aborted) setState({ wrong: error instanceof Error ? error.message : String(error) });
    }
  };
  return { ...state, read, stop };
}
