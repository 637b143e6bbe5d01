import { amountOf, decisionHandle, type Job, type WorkedFigure } from '../../../job/index.js';
import { show } from '../../../quantity/index.js';
import { useCatalog } from '../../data/answers.js';
import { useUnits } from '../../data/queries.js';
import { NumberWithOrigin } from '../../parts/number.js';
import type { Deciding } from './decide-reading.js';
import { DecideRow, decisionAbout } from './reading-line.js';
import { VerdictWord } from './verdict-word.js';

/** Wear, taper, flatness: the figure, its bound with its origin, the verdict, and what would settle it. */
export function WorkedLine(props: {
  job: Job;
  figure: WorkedFigure;
  /** how it was worked out, for its origin */
  how: string;
  /** what it is of: "Bore", "Head face" */
  of: string;
  reasons: readonly string[];
  /** an earlier state, shown and not decided about */
  past?: boolean;
  onDecide: (about: Deciding) => void;
}) {
  const { job, figure, how, of, reasons, past = false, onDecide } = props;
  const system = useUnits();
  const { title, where, quantity, limit, decision, settled, note, measure } = figure;
  const which = decisionHandle(useCatalog(), measure);
  const made = past ? undefined : decisionAbout(job, which);
  const value = show(quantity, system);
  const bound = limit && show(amountOf(limit.max, quantity.unit), system);
  return (
    <li className="reading">
      <div className="reading-head">
        <div>
          {title}{' '}
          <NumberWithOrigin
            what={`${of}, ${title.toLowerCase()}`}
            quantity={{ ...quantity, origin: { from: 'computed', detail: how } }}
          />
          {bound && <span className="soft">, limit {bound}</span>}
        </div>
        {decision ? <VerdictWord decision={decision} /> : <span className="soft">no limit</span>}
      </div>
      <div className="soft">{[where, note, originWords(limit)].filter(Boolean).join(' · ')}</div>
      {limit?.ofClass && (
        <p className="of-class">
          The limit is a figure of the class, not of this engine ({limit.origin.detail?.split('; ').at(-1)}).
        </p>
      )}
      {settled && !past && <p>{settled.words}</p>}
      <DecideRow
        made={made}
        open={decision !== undefined && decision.verdict !== 'pass' && !past}
        about={title.toLowerCase()}
        onDecide={() =>
          onDecide({
            which,
            title: `${of}, ${title.toLowerCase()}`,
            value,
            says: decision!.words,
            reasons,
          })
        }
      />
    </li>
  );
}

const originWords = (limit: WorkedFigure['limit']) =>
  limit && !limit.ofClass && [limit.origin.from, limit.origin.detail].filter(Boolean).join(', ');
