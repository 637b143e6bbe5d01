import type { LastMove, Moved } from '../../../job/index.js';
import { percent } from '../../../phrase/index.js';

const shown = 4;

/** What the last line changed: which faults rose, which fell, and why. */
export function Moves({ move }: { move: LastMove | undefined }) {
  if (!move) return null;
  const rest = move.faults.slice(shown);
  return (
    <section className="moves" aria-label="What the last line changed" aria-live="polite">
      <h2>What changed</h2>
      <p className="soft">{move.line}</p>
      <ul className="plain">
        {move.faults.slice(0, shown).map((m) => (
          <MoveLine key={m.id} moved={m} />
        ))}
      </ul>
      {rest.length > 0 && (
        <details>
          <summary>{rest.length} more moved</summary>
          <ul className="plain">
            {rest.map((m) => (
              <MoveLine key={m.id} moved={m} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function MoveLine({ moved: m }: { moved: Moved }) {
  const up = m.to > m.from;
  return (
    <li>
      <span aria-hidden="true">{up ? '▲' : '▽'}</span>
      <span>
        <b>{m.name}</b> {up ? 'rose' : 'fell'}
        {m.why && <span className="soft">: {m.why}</span>}
      </span>
      <span className="figures">
        {percent(m.from)} → <b>{percent(m.to)}</b>
      </span>
    </li>
  );
}
