import { lowerFirst } from '../../phrase/index.js';
import type { Stage } from '../entry.js';
import type { Answers } from './answers.js';

/** Something that is to be looked at when its time has come. */
export interface Bell {
  /** the same for as long as it is the same wait */
  readonly key: string;
  /** milliseconds since 1970 */
  readonly at: number;
  /** "carburetor bowl: its soak is over" */
  readonly words: string;
  readonly stage: Stage;
}

/** What will ring for a job by its log alone: soaks, drying, and the cooling before a piece that must not come off warm. */
export const bellsOf = (answers: Answers): Bell[] => [...baths(answers), ...cooling(answers)];

const baths = ({ cleanings }: Answers): Bell[] =>
  cleanings.flatMap(({ cleaning, until }): Bell[] =>
    until === undefined
      ? []
      : [
          {
            key: `${cleaning.state} ${cleaning.entry}`,
            at: until,
            words: `${lowerFirst(cleaning.title)}: ${cleaning.state === 'soaking' ? 'its soak is over' : 'it is dry'}`,
            stage: 'measure',
          },
        ],
  );

/** One for all pieces that wait for the same cold engine: the longest of their waits. */
function cooling({ engine, components, stepsToCome }: Answers): Bell[] {
  const { ranAt } = engine.state;
  const minutes = stepsToCome.flatMap(({ components: pieces }) =>
    pieces.flatMap((id) => components.get(id)?.cool?.minutes ?? []),
  );
  if (ranAt === undefined || minutes.length === 0) return [];
  const at = Date.parse(ranAt) + Math.max(...minutes) * 60_000;
  return [{ key: `cool ${ranAt}`, at, words: 'the engine is cold enough to go on', stage: 'teardown' }];
}
