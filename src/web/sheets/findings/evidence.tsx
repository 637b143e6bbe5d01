import { useState } from 'react';
import { byId } from '../../../catalog/index.js';
import { type EvidenceLine, timesWords } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { Button } from '../../parts/act.js';

const shownAtFirst = 6;
const mostFaults = 4;

/** All that was seen and decided, the latest first, with what each line weighs. */
export function Evidence(props: { lines: readonly EvidenceLine[]; onLog: (check: string) => void }) {
  const { lines, onLog } = props;
  const [all, setAll] = useState(false);
  const catalog = useCatalog();
  if (lines.length === 0) return null;
  const shown = all ? lines : lines.slice(0, shownAtFirst);
  return (
    <section className="section stack tight" aria-labelledby="evidence">
      <h2 id="evidence">Evidence so far</h2>
      <p className="soft">
        × 4: with this line the odds of the fault are four times what they would be without it; ÷ 4: a
        quarter.
      </p>
      <ul className="lines evidence">
        {shown.map((l) => (
          <Line
            key={l.entry}
            line={l}
            note={noteOn(l, byId(catalog.checks).get(l.check ?? '')?.note)}
            onLog={onLog}
          />
        ))}
      </ul>
      {lines.length > shownAtFirst && (
        <Button look="quiet" onClick={() => setAll(!all)}>
          {all ? 'Only the latest' : `${lines.length - shownAtFirst} earlier`}
        </Button>
      )}
    </section>
  );
}

/** Why a line weighs little or nothing, as far as it is known. */
function noteOn(line: EvidenceLine, note: string | undefined): string | undefined {
  if (line.decided || line.usual || line.says.length > 0) return undefined;
  if (line.silent) return line.silent;
  return `moves no fault by much on this engine${note ? `. ${note}` : ''}`;
}

function Line(props: { line: EvidenceLine; note: string | undefined; onLog: (check: string) => void }) {
  const { line: l, note, onLog } = props;
  const { check } = l;
  return (
    <li>
      <div>
        <span>
          {l.title}
          {l.value && (
            <>
              : <b>{l.value}</b>
            </>
          )}
        </span>{' '}
        {l.doubtful && <span className="verdict cannot-decide">doubtful</span>}
        {l.detail && <div className="soft">{l.detail}</div>}
        {l.repairedSince.length > 0 && (
          <div className="soft">before the repair of: {l.repairedSince.join(', ')}</div>
        )}
        {l.usual && <div className="soft">{l.usual}</div>}
        {note && <div className="soft">{note}</div>}
        {l.says.length > 0 && (
          <div className="chips">
            {l.says.slice(0, mostFaults).map((s) => (
              <span className="chip" key={s.id}>
                {s.times >= 1 ? '▲' : '▽'} {s.name} <b>{timesWords(s.times)}</b>
              </span>
            ))}
            {l.says.length > mostFaults && (
              <span className="soft">and {l.says.length - mostFaults} more</span>
            )}
          </div>
        )}
      </div>
      {check !== undefined && (
        <Button look="quiet" aria-label={`Again: ${l.title}`} onClick={() => onLog(check)}>
          Again
        </Button>
      )}
    </li>
  );
}
